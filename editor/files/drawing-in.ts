// The drawing that the bytes of a file hold: what kind it is, and its letters, which older programs wrote in another alphabet than
// UTF-8. Where the bytes come from, a disk or a hand that drops them on the page, is not its concern.
import type { Unreadable } from "../../kernel/sources.ts";
import { type DrawingKind, drawingKinds } from "../bring-in/drawing-kinds.ts";
import { drawingLimits } from "../bring-in/drawing-limits.ts";
import { unreadable } from "./unreadable.ts";

/** A drawing as it stands in its file. */
export interface DrawingFile {
  readonly kind: DrawingKind;
  readonly text: string;
}

/** The drawing that these bytes hold; `called` is how messages name it. */
export const drawingIn = (bytes: Uint8Array, called: string, kind?: DrawingKind): DrawingFile | Unreadable => {
  if (bytes.length > drawingLimits.fileBytes) return drawingTooLarge(called);
  if (isBinaryDxf(bytes))
    return unreadable("drawing-binary", `${called} is a binary DXF file.`, {
      hint: "Save it as DXF in text (ASCII) form.",
    });
  const text = lettersIn(bytes);
  if (text.includes("\0")) return unreadable("file-not-text", `${called} holds bytes that no text has.`);
  const found = kind ?? kindOf(called, text);
  if (found === undefined)
    return unreadable("drawing-kind", `${called} is none of the kinds of drawing that can be traced.`, {
      hint: `It takes a file ending in ${drawingKinds.map((each) => `.${each}`).join(", ")}; --as says which kind another one is.`,
    });
  return { kind: found, text };
};

/** What is said of a file that is too large to be a drawing. */
export const drawingTooLarge = (called: string): Unreadable =>
  unreadable(
    "drawing-too-large",
    `${called} is larger than ${drawingLimits.fileBytes / 1024 / 1024} MiB, and no pattern is.`,
  );

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
  return /^\s*(?:0\s*\r?\n\s*SECTION|999\s*\r?\n)/.test(text.slice(0, 1000)) ? "dxf" : undefined;
};
