// A garment as it stands round the body: the cloth of every level laid on an ellipse and, where it is fuller than the body is
// round, thrown into folds that are as long as the cloth is. Indicative: the sheet knows how much slack there is and where, the
// cloth's stiffness how many folds it makes, and nobody just how they fall.
import type { Point } from "../../geometry/point.ts";
import { finer, levelsOf, placeAt, topOf } from "./column-levels.ts";
import { foldingOf } from "./folding.ts";
import { laidRound } from "./laid-round.ts";
import { stretchesOf } from "./level-stretches.ts";
import type { HungPlace } from "./slack.ts";

/** A stretch of a garment's round: cloth in columns that hang straight down, each from its support to the hem. */
export interface Panel {
  readonly piece: string;
  readonly columns: readonly (readonly HungPlace[])[];
}

/** Panels in their order round the body, from the middle of the side that one looks at and to the right; the last meets the first. */
export interface Round {
  readonly panels: readonly Panel[];
  /** How deep the body is for its width. */
  readonly depth: number;
  /** Length of cloth in one fold at the hem, mm. */
  readonly wavelength: number;
}

/** A spot in the room, mm: to the right, down, and toward whoever looks. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A column of cloth in the room. */
export interface Line {
  /** Which panel it is of, from 0. */
  readonly panel: number;
  /** From its support to the hem. */
  readonly spots: readonly Spot[];
  /** At each spot, how far the fold that it is in stands out at its crest, mm. */
  readonly depths: readonly number[];
  readonly isCrest: boolean;
}

/** The columns of a garment in the room, in their order round it. */
export const standing = (round: Round): Line[] => {
  const columns = finer(round.panels.flatMap(({ columns: own }, panel) => own.map((places) => ({ panel, places }))));
  const levels = levelsOf(columns);
  const rows = levels.map((y) => columns.map((column) => placeAt(column, y)));
  const ends = columns.flatMap(({ panel }, index) => (panel === columns[index + 1]?.panel ? [] : [index + 1]));
  const stretches = rows.map((row) => stretchesOf(row, ends));
  const folding = foldingOf(stretches.at(-1)!, round.wavelength);
  // Above the underarm the round has gaps; there the body is as wide as at the first level that has none.
  const closed = levels.findIndex((y) => columns.every((column) => topOf(column) <= y + aHair));
  const laid = stretches.map((level, index) =>
    laidRound(level, stretches[Math.max(index, closed)]!, folding, round.depth),
  );
  return columns.map((column, index) => {
    const top = topOf(column);
    const from = Math.max(
      1,
      levels.findIndex((y) => y > top + aHair),
    );
    const share = (top - levels[from - 1]!) / (levels[from]! - levels[from - 1]!);
    const [before, after] = [laid[from - 1]![index]!, laid[from]![index]!];
    const below = laid.slice(from).map((level) => level[index]!);
    return {
      panel: column.panel,
      spots: [
        { x: before.x + (after.x - before.x) * share, y: top, z: before.z + (after.z - before.z) * share },
        ...below.map(({ x, z }, at) => ({ x, y: rows[from + at]![index]!.hung.y, z })),
      ],
      depths: [0, ...below.map(({ depth }) => depth)],
      isCrest: folding.crests.has(index),
    };
  });
};

/**
 * The hem of a garment in the room, seen from below: a closed line, as long as the cloth, round the middle of the body. As in
 * the view from below that stands under a front view (ISO 5456-2, third angle; from memory), right stays right and the side
 * that one looks at lies at the top.
 */
export const hemSeenFromBelow = (lines: readonly Line[]): Point[] =>
  lines.map(({ spots }) => ({ x: spots.at(-1)!.x, y: -spots.at(-1)!.z }));

const aHair = 1e-6;
