// Which numbers of the text govern a spot on the table, and how: found by turning each a little and looking where the spot goes.
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { minus, type Point, size, times } from "../../kernel/geometry/point.ts";
import type { Garment } from "../../kernel/working.ts";
import { linesOf } from "../picture/lines-of.ts";
import { type Dial, dials, dialText } from "./dials.ts";
import { edited } from "./text-edit.ts";
import type { WorkedText } from "./worked-text.ts";

/** A spot of a piece: a named place, or an edge at a part of its length from 0 to 1. */
export type Spot =
  | { readonly piece: string; readonly place: string }
  | { readonly piece: string; readonly edge: string; readonly part: number };

/** A number that moves a spot. */
export interface Governing {
  /** Which of the recipe's dials it is. */
  readonly dial: number;
  /** How far the spot goes, mm, when the number grows by one of its unit. */
  readonly slope: Point;
}

// More lines than these behind one spot, the latest first, would make the hand wait.
const mostTried = 12;

/** The numbers that move a spot, those of the line that drew it first; a number that moves nothing is left out. */
export const governing = (worked: WorkedText, spot: Spot): Governing[] => {
  const { outcome, kernel, source, circumstances } = worked;
  const here = spotOn(outcome.garment, spot);
  if (!here) return [];
  const lines = linesOf(outcome);
  const behind = "edge" in spot ? lines.ofEdge(spot.piece, spot.edge) : lines.ofPlace(spot.piece, spot.place);
  const written = [...behind.lines, ...behind.inside.map(({ line }) => line)];
  const all = dials(worked);
  return candidates(all, written, source.text)
    .slice(0, mostTried)
    .flatMap((dial): Governing[] => {
      const turned = all[dial]!;
      const text = edited(source.text, [
        { from: turned.from, to: turned.to, text: dialText(source.text, turned, turned.value + turned.stride) },
      ]);
      const there = spotOn(kernel.draft({ ...source, text }, circumstances).garment, spot);
      if (!there) return [];
      const slope = times(minus(there, here), 1 / turned.stride);
      // Under a hundredth of a millimetre for a whole stride is no more than rounding.
      return size(slope) * turned.stride < 0.01 ? [] : [{ dial, slope }];
    });
};

/** Where a spot lies in its piece, mm; undefined when the piece or the thing is not there. */
export const spotOn = ({ pieces }: Pick<Garment, "pieces">, spot: Spot): Point | undefined => {
  const piece = pieces.get(spot.piece);
  if ("place" in spot) return piece?.places.get(spot.place)?.point;
  const path = piece?.edges.get(spot.edge)?.path;
  return path && pointAt(path, pathLength(path) * spot.part);
};

/** Dials on the lines behind a spot, by line in that order, and params that these lines name. */
const candidates = (all: readonly Dial[], lines: readonly number[], text: string): number[] => {
  const written = text.split("\n");
  const named = (dial: Dial): boolean => {
    const word = new RegExp(
      `(?<![\\p{L}\\p{N}_.-])${dial.label.replace(/[^\p{L}\p{N}_]/gu, "\\$&")}(?![\\p{L}\\p{N}_-])`,
      "u",
    );
    return lines.some((line) => word.test(written[line - 1] ?? ""));
  };
  return [
    ...lines.flatMap((line) => all.flatMap((dial, index) => (dial.line === line && !dial.isParam ? [index] : []))),
    ...all.flatMap((dial, index) => (dial.isParam && named(dial) ? [index] : [])),
  ];
};
