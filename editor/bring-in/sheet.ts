// What was found in a file, whatever its format: lines, spots and words on one flat sheet, in mm, y down. Readers make it,
// pieces-on.ts makes pieces of it.
import { limits } from "../../grammar/limits.ts";
import type { Path } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import type { Units } from "../../kernel/working.ts";
import { drawingLimits } from "./drawing-limits.ts";
import { Refused } from "./refused.ts";

/** What a file says a line is, by its layer, class or id. */
export type Meaning = "cutting" | "sewing" | "inner" | "grain" | "notch" | "drill" | "fold";

/** One line as it was drawn. A cubic with a pivot is part of a circle about it. */
export interface DrawnLine {
  readonly path: Path;
  readonly means: Meaning | undefined;
  /** What was drawn together: the same block, the same group of elements. */
  readonly group: string;
  /** What the file calls it, or the group it is in. */
  readonly called: string | undefined;
  /** Whether its joints were measured and stay places of the curve. */
  readonly isMeasured: boolean;
  /** The line of the file, counted from 1. */
  readonly line: number;
}

/** One spot; a turn is a corner of an outline, a curve point lies on a curve of it. */
export interface DrawnSpot {
  readonly at: Point;
  readonly means: Meaning | "turn" | "curve" | undefined;
  readonly group: string;
  /** A name that was written beside it. */
  readonly called: string | undefined;
  readonly line: number;
}

export interface DrawnWords {
  readonly text: string;
  readonly at: Point;
  readonly group: string;
  /** Whether it tells of the piece, and is not written on it. */
  readonly isRemark: boolean;
  readonly line: number;
}

/** Things of one kind that no recipe can hold. */
export interface LeftOut {
  /** In words, in the plural: "pictures". */
  readonly what: string;
  readonly count: number;
  /** The line of the first. */
  readonly line: number;
}

export interface Sheet {
  readonly lines: readonly DrawnLine[];
  readonly spots: readonly DrawnSpot[];
  readonly words: readonly DrawnWords[];
  /** The units that the file is written in, as far as a recipe can show them. */
  readonly units: Units | undefined;
  /** What has to be said of the reading, a sentence each. */
  readonly notes: readonly string[];
  readonly leftOut: readonly LeftOut[];
}

/** A sheet being filled: the only thing here that changes, and it keeps the limits. */
export class SheetInHand {
  readonly lines: DrawnLine[] = [];
  readonly spots: DrawnSpot[] = [];
  readonly words: DrawnWords[] = [];
  readonly notes: string[] = [];
  private readonly tally = new Map<string, { count: number; line: number }>();
  private spans = 0;

  /** A line of no span is not there. */
  line(line: DrawnLine): void {
    if (line.path.length === 0) return;
    this.spans += line.path.length;
    if (this.spans > drawingLimits.spans)
      throw new Refused(`There are more than ${drawingLimits.spans} stretches of line in this drawing.`, line);
    for (const span of line.path) {
      const points = span.kind === "line" ? [span.end] : [span.startHandle, span.endHandle, span.end];
      for (const p of [span.start, ...points]) onTable(p, line.line);
    }
    this.lines.push(line);
  }

  spot(spot: DrawnSpot): void {
    onTable(spot.at, spot.line);
    this.spots.push(spot);
    if (this.spots.length > drawingLimits.elements)
      throw new Refused(`There are more than ${drawingLimits.elements} points in this drawing.`, spot);
  }

  write(words: DrawnWords): void {
    onTable(words.at, words.line);
    const text = plainWords(words.text);
    if (text !== "") this.words.push({ ...words, text });
  }

  leaveOut(what: string, line: number): void {
    const before = this.tally.get(what);
    this.tally.set(what, { count: (before?.count ?? 0) + 1, line: before?.line ?? line });
  }

  finished(units: Units | undefined): Sheet {
    const leftOut = [...this.tally].map(([what, told]) => ({ what, ...told }));
    return { lines: this.lines, spots: this.spots, words: this.words, units, notes: this.notes, leftOut };
  }
}

/** A text of a file as a recipe may hold it: one line, without signs that steer a terminal or turn the reading direction. */
export const plainWords = (text: string): string => {
  const plain = text
    .replace(/[\s\u2028\u2029]+/g, " ")
    .replace(steering, "")
    .replace(/ +/g, " ")
    .trim();
  const letters = [...plain];
  return letters.length <= drawingLimits.letters ? plain : `${letters.slice(0, drawingLimits.letters).join("")}…`;
};

// Controls, halves of characters, signs that stand for none, and those that turn the direction of reading.
const steering = /[\p{Cc}\p{Cs}\p{Noncharacter_Code_Point}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

// Written so that what is no number fails too.
const onTable = ({ x, y }: Point, line: number): void => {
  if (Math.abs(x) <= limits.coordinate && Math.abs(y) <= limits.coordinate) return;
  throw new Refused(`A point here lies more than ${limits.coordinate / 1000} m from the middle of the sheet.`, {
    line,
    hint: "Look whether the units or the scale are right.",
  });
};
