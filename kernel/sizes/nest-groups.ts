// One piece in all its sizes, laid on one another: for each size its cutting line, darts and marks, and once for all of them
// the grain, the fold and the label. Sewing lines along the edges are left out, as is the custom where sizes are nested (common
// practice, no source): between the cutting lines of two sizes nobody could tell whose they are. The label and the names of the
// edges say what the allowances are.
import { cuttingLine } from "../cloth/allowances/cutting-line.ts";
import type { Line } from "../drawing/box.ts";
import { rim } from "../drawing/box.ts";
import type { Group, Stroke, Text } from "../drawing/drawing.ts";
import { edgeNames } from "../drawing/edge-names.ts";
import { foldBracket } from "../drawing/fold-bracket.ts";
import { fittedLabel, wholeLabel } from "../drawing/label-block.ts";
import { boxOf } from "../drawing/lettering.ts";
import { pieceGroup } from "../drawing/piece-group.ts";
import { pieceInWords } from "../drawing/piece-in-words.ts";
import type { Remarks } from "../drawing/remarks.ts";
import { flattened, signedArea } from "../geometry/area.ts";
import { mapped, type Path } from "../geometry/path.ts";
import { minus, type Point, plus } from "../geometry/point.ts";
import { samePath } from "../geometry/same-path.ts";
import { boundary, outward, walked } from "../outline.ts";
import type { Piece } from "../working.ts";
import { nestPlace } from "./nest-places.ts";
import { type SizeToName, sizeLabels } from "./size-labels.ts";
import type { SizedGarment } from "./size-tables.ts";

/** One piece in all its sizes. */
export interface Nest {
  readonly name: string;
  /** Those of the sizes first; the base size lies where it was drafted. */
  readonly groups: readonly Group[];
  /** How the sizes are laid on one another, in words; undefined where nothing that is drawn differs between them. */
  readonly about: string | undefined;
}

/** The piece of this name in the sizes that have it. */
export const nestOf = (name: string, sized: readonly SizedGarment[], remarks: Remarks, nestAt?: string): Nest => {
  const { laid, about } = laidOnOneAnother(name, sized, nestAt);
  const base = laid.find((each) => each.base) ?? laid[0]!;
  if (laid.every((each) => isSame(each, base)))
    return { name, groups: [oneForAll(laid, base, remarks)], about: undefined };
  const names = sizeLabels(laid.map(toName));
  const sizes = laid.map(({ size, garment, piece, strokes }, index): Group => {
    const words = `Size ${size}: ${pieceInWords(garment, piece)}`;
    const { strokes: leaders, texts } = names[index]!;
    return { of: "piece", name, size, words, strokes: [...strokes, ...leaders], texts };
  });
  const written = names.flatMap(({ texts }) => texts.map((text) => rim(boxOf(text))));
  const leading = names.flatMap(({ strokes }) => strokes.map(({ path }) => flattened(path, keptClear)));
  const taken = [...laid.flatMap(linesOf), ...written, ...leading];
  return { name, groups: [...sizes, sharedGroup(laid, base, remarks, taken)], about };
};

/** One size of the piece in the nest. */
interface Laid extends SizedGarment {
  readonly piece: Piece;
  /** How far it is moved, mm; its strokes have been. */
  readonly shift: Point;
  readonly strokes: readonly Stroke[];
}

const laidOnOneAnother = (
  name: string,
  sized: readonly SizedGarment[],
  nestAt: string | undefined,
): { readonly laid: readonly Laid[]; readonly about: string } => {
  const own = sized.flatMap((each) => {
    const piece = each.garment.pieces.get(name);
    return piece ? [{ ...each, piece }] : [];
  });
  const staying = own.findIndex(({ base }) => base);
  const { shifts, about } = nestPlace(
    own.map(({ piece }) => piece),
    Math.max(0, staying),
    nestAt,
  );
  const laid = own.map((each, index) => {
    const shift = shifts[index]!;
    const strokes = pieceGroup(each.garment, each.piece).strokes.filter(isOfTheSize);
    return { ...each, shift, strokes: strokes.map((stroke) => ({ ...stroke, path: moved(stroke.path, shift) })) };
  });
  return { laid, about };
};

/** The only group of a piece that is the same in every size. */
const oneForAll = (laid: readonly Laid[], base: Laid, remarks: Remarks): Group => {
  const shared = sharedGroup(laid, base, remarks, linesOf(base));
  return {
    ...shared,
    words: `All sizes: ${pieceInWords(base.garment, base.piece)}`,
    strokes: [...base.strokes, ...shared.strokes],
  };
};

/** Cutting lines, folds, inner lines and marks; not what runs along the edges to be sewn, and not what is drawn once for all. */
const isOfTheSize = ({ kind, of }: Stroke): boolean => {
  if (kind === "before" || kind === "fold-bracket" || of?.kind === "grain") return false;
  return of !== undefined || (kind !== "sewing-line" && kind !== "hem-line" && kind !== "arrowhead");
};

const moved = (path: Path, by: Point): Path => mapped(path, (p) => plus(p, by));

/** Whether nothing that is drawn differs. */
const isSame = (one: Laid, other: Laid): boolean =>
  one.strokes.length === other.strokes.length &&
  one.strokes.every(({ kind, path }, index) => {
    const { kind: otherKind, path: otherPath } = other.strokes[index]!;
    return kind === otherKind && samePath(path, otherPath, unseen);
  });

// Nobody sees or cuts a difference of so many mm.
const unseen = 0.01;

// How near, in mm, the lines that writing keeps clear of follow the strokes.
const keptClear = 0.5;

const linesOf = ({ strokes }: Laid): Line[] => strokes.map(({ path }) => flattened(path, keptClear));

const toName = (laid: Laid): SizeToName => ({
  size: laid.size,
  lines: linesOf(laid),
  stretches: (cuttingLine(laid.piece)?.stretches ?? [])
    .filter(({ fold }) => !fold)
    .map(({ path }) => moved(path, laid.shift)),
  outward: (travel) => outward(laid.piece, travel),
});

/** Grain, fold and writing, laid in the smallest size, so that they lie in every one. */
const sharedGroup = (laid: readonly Laid[], base: Laid, remarks: Remarks, lines: readonly Line[]): Group => {
  const sizes = laid.map(({ size }) => size);
  const smallest = laid.reduce((least, each) => (areaOf(each) < areaOf(least) ? each : least), base);
  const { garment, piece, shift } = smallest;
  const strokes = pieceGroup(garment, piece).strokes.filter(({ of }) => of?.kind === "grain");
  const brackets = boundary(piece)
    ? walked(piece)
        .filter(({ edge }) => edge.role === "fold")
        .map((part) => foldBracket(piece, part))
    : [];
  const drawn = [...strokes, ...brackets.flatMap((bracket) => bracket.strokes)];
  const written = brackets.flatMap(({ texts }) => texts);
  const taken = [
    ...lines.map((line) => line.map((p) => minus(p, shift))),
    ...drawn.map(({ path }) => flattened(path, keptClear)),
    ...written.map((text) => rim(boxOf(text))),
  ];
  // A long list breaks anywhere, and the legend has it whole.
  const listed = sizes.length > mostListed ? `${sizes[0]} TO ${sizes.at(-1)}` : sizes.join(" ");
  const said = { text: `SIZES ${listed}`, drawnBy: piece.drawnBy };
  // A label that the recipe gave a place would lie over the lines of some size.
  const labels = [said, ...base.piece.labels.map(({ text, drawnBy }) => ({ text, drawnBy }))];
  const labelled = { ...base.piece, labels, doubtful: laid.some((each) => each.piece.doubtful) };
  return {
    of: "piece",
    name: piece.name,
    words: `${piece.name}, sizes ${sizes.join(", ")} laid on one another.`,
    strokes: drawn.map((stroke) => ({ ...stroke, path: moved(stroke.path, shift) })),
    texts: [...written, ...writing(smallest, labelled, remarks, taken)].map((text) => ({
      ...text,
      at: plus(text.at, shift),
    })),
  };
};

const mostListed = 4;

const areaOf = ({ piece }: Laid): number => {
  const loop = boundary(piece);
  return loop ? Math.abs(signedArea(loop)) : Number.POSITIVE_INFINITY;
};

/** The label, and the edges' names with their allowances, where one size has room for them. */
const writing = ({ garment, piece }: Laid, labelled: Piece, remarks: Remarks, taken: readonly Line[]): Text[] => {
  const loop = boundary(piece);
  if (!loop) return [];
  const label =
    wholeLabel(garment, labelled, loop, taken, remarks) ?? fittedLabel(garment, labelled, loop, taken, 0, remarks);
  return [...label, ...edgeNames(piece, garment.units, [...taken, ...label.map((text) => rim(boxOf(text)))], [])];
};
