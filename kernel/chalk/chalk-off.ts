// A piece chalked straight on the cloth with a tape: the points of its sewing line in the order a hand goes round, and its marks.
// Allowances are added with the tape along the chalked line, so the points are those of the sewing line.
import { allowanceWidth } from "../cloth/allowances/cutting-line.ts";
import { endOf, isStraight, reversed, startOf } from "../geometry/path.ts";
import { type Point, sameSpot } from "../geometry/point.ts";
import { withoutHidden } from "../hidden-names.ts";
import { boundary, type Walked, walked } from "../outline.ts";
import type { Garment, Piece, Units } from "../working.ts";
import { type ChalkFrame, chalkFrame, type Taped, tapedIn, untaped } from "./chalk-frame.ts";
import { fewestPoints } from "./fewest-points.ts";

/** A point of the outline; lengths in mm, in whole steps of the tape. */
export interface ChalkedPoint extends Taped {
  /** From 1 on round the piece. */
  readonly number: number;
  /** How far the ruled line to the next point and the true line are apart at most, mm. */
  readonly off: number;
}

/** An edge of the outline, from its first point to the next edge's first. */
export interface ChalkedEdge {
  readonly name: string;
  readonly straight: boolean;
  /** Width of the allowance to be added outside it, mm. */
  readonly allowance: number;
  /** Without the point that the next edge begins with. */
  readonly points: readonly ChalkedPoint[];
  /** The number of that point. */
  readonly to: number;
  /** The worst of its points, mm. */
  readonly off: number;
}

export interface ChalkedMark extends Taped {
  readonly kind: "notch" | "double notch" | "drill hole" | "dart leg" | "dart tip";
  /** The edge of a notch, the name of a dart; empty for a drill hole. */
  readonly name: string;
}

export interface ChalkedPiece {
  readonly name: string;
  readonly frame: ChalkFrame;
  readonly edges: readonly ChalkedEdge[];
  readonly marks: readonly ChalkedMark[];
  /** How far the chalked line and the true one are apart at most, mm. */
  readonly off: number;
  /** What that was to stay under, mm. */
  readonly within: number;
}

export interface ChalkedOff {
  readonly pieces: readonly ChalkedPiece[];
  /** Pieces whose outline is not closed yet. */
  readonly open: readonly string[];
}

/** What a tape is read to, mm: an eighth of an inch, or 2 mm. */
export const tapeStep = (units: Units): number => (units === "in" ? 25.4 / 8 : 2);

/**
 * How near the chalked line is to keep, mm: one step of the tape. Two lengths read to a step are off by half a step each, and so
 * a corner by 0.71 of a step at most.
 */
export const chalkedWithin = (units: Units): number => tapeStep(units);

/** All pieces of a garment that can be chalked off. */
export const chalkOff = ({ pieces, units }: Garment): ChalkedOff => {
  const all = [...pieces.values()];
  return {
    pieces: all.filter((piece) => boundary(piece)).map((piece) => chalkedPiece(piece, units)),
    open: all.filter((piece) => !boundary(piece)).map(({ name }) => name),
  };
};

const chalkedPiece = (piece: Piece, units: Units): ChalkedPiece => {
  const frame = chalkFrame(piece);
  const onTape = (p: Point): Taped => inSteps(tapedIn(frame, p), tapeStep(units));
  const within = chalkedWithin(units);
  const parts = asAHandGoes(piece, frame);
  const ruled = parts.map(({ path }, index) => {
    // Where two edges meet there is one point, on whichever side of half a step either of them ends.
    const next = startOf(parts[(index + 1) % parts.length]!.path);
    return fewestPoints(path, (p) => untaped(frame, onTape(sameSpot(p, next) ? next : p)), within);
  });
  let number = 0;
  const edges = parts.map((part, index): ChalkedEdge => {
    const { points, off } = ruled[index]!;
    const chalked = points.slice(0, -1).map((point, i): ChalkedPoint => {
      number += 1;
      return { ...inSteps(tapedIn(frame, point), tapeStep(units)), number, off: off[i]! };
    });
    return {
      name: part.edge.name,
      straight: isStraight(part.path, straightWithin),
      allowance: allowanceWidth(piece, part),
      points: chalked,
      to: index === parts.length - 1 ? 1 : number + 1,
      off: Math.max(...off),
    };
  });
  return {
    name: piece.name,
    frame,
    edges,
    marks: marksOf(piece).map(({ point, ...mark }) => ({ ...mark, ...onTape(point) })),
    off: Math.max(...edges.map(({ off }) => off)),
    within,
  };
};

// A line that strays less than this, in mm, is straight to a chalk line's width.
const straightWithin = 0.5;

const inSteps = ({ down, across }: Taped, step: number): Taped => ({
  down: wholeSteps(down, step),
  across: wholeSteps(across, step),
});

// Never -0, which would be written as it is.
const wholeSteps = (value: number, step: number): number => Math.round(value / step) * step + 0;

/** The outline's edges from where the tape begins, and back along the line that is measured from. */
const asAHandGoes = (piece: Piece, frame: ChalkFrame): readonly Walked[] => {
  const parts = walked(piece);
  const base = parts.find((part) => part.edge.name === frame.edge);
  if (base) {
    const inOrder = sameSpot(endOf(base.path), frame.origin) ? parts : backward(parts);
    return startingWith(inOrder.findIndex((part) => part.edge === base.edge) + 1, inOrder);
  }
  const downs = parts.map(({ path }) => tapedIn(frame, startOf(path)).down);
  return startingWith(downs.indexOf(Math.min(...downs)), parts);
};

const startingWith = (first: number, parts: readonly Walked[]): Walked[] => [
  ...parts.slice(first),
  ...parts.slice(0, first),
];

const backward = (parts: readonly Walked[]): Walked[] =>
  parts.map((part) => ({ ...part, turned: !part.turned, path: reversed(part.path) })).reverse();

interface Mark {
  readonly kind: ChalkedMark["kind"];
  readonly name: string;
  readonly point: Point;
}

const marksOf = ({ notches, darts, drills }: Piece): Mark[] => [
  ...notches.map(({ edge, point, double }): Mark => ({ kind: double ? "double notch" : "notch", name: edge, point })),
  ...[...darts.values()].flatMap(({ name: named, first, second, tip, lower }): Mark[] => {
    const name = withoutHidden(named);
    return [
      { kind: "dart leg", name, point: first },
      { kind: "dart leg", name, point: second },
      ...[tip, ...(lower ? [lower] : [])].map((point): Mark => ({ kind: "dart tip", name, point })),
    ];
  }),
  ...drills.map(({ point }): Mark => ({ kind: "drill hole", name: "", point })),
];
