// What a line is, by the name of its layer, its class or its id: the trade's words, and those that our own drawings use.
import type { Meaning } from "./sheet.ts";

// No layer that means something to us has a longer one.
const longestName = 200;

/** What a name tells: a meaning, or that the line stands beside the pieces; undefined where it tells nothing. */
export const toldByName = (name: string): Meaning | "aside" | undefined => {
  if (name.length > longestName) return undefined;
  const plain = name
    .toLowerCase()
    // Our layers have the name of the layer in front.
    .replace(/^(?:before|cutting|sewing|marks|labels)_/, "")
    .replace(/[\s_]+/g, "-")
    .replace(/-?\d+$/, "");
  return meanings.get(plain) ?? meanings.get(plain.replace(/-?lines?$|s$/, ""));
};

/** The name of a piece in an id of ours, `piece-back`, or `cutting_piece-back` where layers stand on top. */
export const pieceInId = (id: string): string | undefined => {
  const found = /^(?:[a-z]+(?:_size-[^_]*)?_)?piece-(.+)$/.exec(id)?.[1];
  if (found === undefined) return undefined;
  try {
    return decodeURIComponent(found);
  } catch {
    return found;
  }
};

const named: readonly (readonly [Meaning | "aside", readonly string[]])[] = [
  ["cutting", ["cutting", "cut", "boundary", "outline"]],
  ["sewing", ["sewing", "sew", "stitch", "stitching", "seam", "hem-line"]],
  ["inner", ["inner", "internal", "dart-center", "mark"]],
  ["grain", ["grain", "grainline"]],
  ["notch", ["notch", "notche"]],
  ["drill", ["drill", "drill-hole"]],
  ["fold", ["fold"]],
  // What our own drawings have beside the lines of a piece.
  ["aside", ["before", "fold-bracket", "arrowhead", "scale-square", "frame", "title-block", "size-legend", "page"]],
];

const meanings: ReadonlyMap<string, Meaning | "aside"> = new Map(
  named.flatMap(([meaning, names]) => names.map((name) => [name, meaning] as const)),
);
