// Reads a drawing that was made elsewhere from its file.
import type { Unreadable } from "../../kernel/sources.ts";
import type { DrawingKind } from "../bring-in/drawing-kinds.ts";
import { drawingLimits } from "../bring-in/drawing-limits.ts";
import { type DrawingFile, drawingIn, drawingTooLarge } from "./drawing-in.ts";
import { readBytes } from "./read-text.ts";

/** The drawing at a path, or why it cannot be read; its kind is told by its name and its beginning where nobody says it. */
export const readDrawing = (path: string, kind?: DrawingKind): DrawingFile | Unreadable => {
  const read = readBytes(path, path, { most: drawingLimits.fileBytes, tooLarge: drawingTooLarge(path) });
  return "problem" in read ? read : drawingIn(read.bytes, path, kind);
};
