// Reads a drawing that was made elsewhere: what kind of file it is, and its letters, which older programs wrote in another
// alphabet than UTF-8.

import type { Unreadable } from "../../kernel/sources.ts";
import { type DrawingKind, drawingKinds } from "../bring-in/brought-in.ts";
import { drawingLimits } from "../bring-in/drawing-limits.ts";
import { readBytes } from "./read-text.ts";
import { unreadable } from "./unreadable.ts";

/** A drawing as it stands in its file. */
export interface DrawingFile {
  readonly kind: DrawingKind;
  readonly text: string;
}

/** The drawing at a path, or why it cannot be read. */
export const readDrawing = (path: string): DrawingFile | Unreadable => {
  const most = drawingLimits.fileBytes;
  const tooLarge = unreadable(
    "drawing-too-large",
    `${path} is larger than ${most / 1024 / 1024} MiB, and no pattern is.`,
  );
  const read = readBytes(path, path, { most, tooLarge });
  if ("problem" in read) return read;
  const { bytes } = read;
  if (isBinaryDxf(bytes))
    return unreadable("drawing-binary", `${path} is a binary DXF file.`, {
      hint: "Save it as DXF in text (ASCII) form.",
    });
  const text = lettersIn(bytes);
  if (text.includes("\0")) return unreadable("file-not-text", `${path} holds bytes that no text has.`);
  const kind = kindOf(path, text);
  if (kind === undefined)
    return unreadable("drawing-kind", `${path} is none of the kinds of drawing that can be traced.`, {
      hint: `It takes a file ending in ${drawingKinds.map((each) => `.${each}`).join(", ")}.`,
    });
  return { kind, text };
};

/** UTF-8 where it is that, else the alphabet of western Windows, which DXF had before it had UTF-8. */
const lettersIn = (bytes: Uint8Array): string => {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
};

// How a DXF file begins that is not written in letters (DXF reference, "Binary DXF files").
const isBinaryDxf = (bytes: Uint8Array): boolean =>
  new TextDecoder("latin1").decode(bytes.subarray(0, 22)) === "AutoCAD Binary DXF\r\n\x1a\0";

/** By the ending of the name, else by how the text begins. */
const kindOf = (path: string, text: string): DrawingKind | undefined => {
  const ending = /\.([A-Za-z]+)$/.exec(path)?.[1]?.toLowerCase();
  const named = drawingKinds.find((kind) => kind === ending);
  if (named) return named;
  if (ending === "tsv" || ending === "txt") return "csv";
  if (/^\s*</.test(text)) return "svg";
  return /^\s*(?:0\s*\r?\n\s*SECTION|999\s*\r?\n)/.test(text) ? "dxf" : undefined;
};
