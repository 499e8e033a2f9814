// All sizes of a garment on one paper, piece by piece laid on one another; a group for each size, so that every format can
// give it lines and a layer of its own.
import type { Drawings } from "../drawing/draw.ts";
import type { Drawing, Group } from "../drawing/drawing.ts";
import { extentOf, paperAround } from "../drawing/paper.ts";
import type { Remarks } from "../drawing/remarks.ts";
import { scaleSquareBeside } from "../drawing/scale-square-beside.ts";
import { sheetOf } from "../drawing/sheet.ts";
import { titleColumn } from "../drawing/title-column.ts";
import type { Garment } from "../working.ts";
import { type Nest, nestOf } from "./nest-groups.ts";
import { canLieAt } from "./nest-places.ts";
import { narrowLegend, sizeLegend } from "./size-legend.ts";
import type { SizedGarment } from "./size-tables.ts";

/** The drawings of a nest. */
export interface NestedDrawings extends Drawings {
  readonly nests: readonly Nest[];
}

/**
 * Every piece in all its sizes, and one sheet with all pieces; laid on one another at a place or the upper end of an edge, and
 * where none is named or a piece has none of that name at the upper end of its fold, of its grain line, or as drafted.
 */
export const nested = (sized: readonly SizedGarment[], remarks: Remarks, nestAt?: string): NestedDrawings => {
  const base = (sized.find((each) => each.base) ?? sized[0])?.garment;
  if (!base) throw new RangeError("A nest needs a size.");
  const sizes = sized.map(({ size }) => size);
  const names = [...new Set(sized.flatMap(({ garment }) => [...garment.pieces.keys()]))];
  const nests = names.map((name) => nestOf(name, sized, remarks, nestAt));
  const title = `${base.title}, ${sizes.length === 1 ? `size ${sizes[0]}` : `sizes ${sizes[0]} to ${sizes[sizes.length - 1]}`}`;
  const alone = (nest: Nest): Drawing => {
    const square = scaleSquareBeside(bundled(nest.groups), base.units);
    const { left, bottom } = extentOf([...nest.groups, square]);
    const legend = sizeLegend(sizes, [nest], { x: left, y: bottom + gap });
    return drawingOf(`${nest.name}, ${title}`, [...nest.groups, square, ...legend]);
  };
  const kinds = new Set(
    nests.flatMap(({ groups }) => groups.flatMap(({ strokes }) => strokes.map(({ kind }) => kind))),
  );
  const column = titleColumn({ ...base, title }, kinds, remarks);
  return {
    nests,
    column: [column, ...sizeLegend(sizes, nests, { x: 0, y: extentOf([column]).bottom + gap / 2 }, narrowLegend)],
    pieces: new Map(nests.map((nest) => [nest.name, alone(nest)])),
    sheet: sheetWith({ ...base, title }, nests, remarks, (x, y) => sizeLegend(sizes, nests, { x, y })),
  };
};

/** Whether some piece has, in every size that has the piece, a place or an edge of this name to nest it at. */
export const canNestAt = (sized: readonly SizedGarment[], name: string): boolean => {
  const names = new Set(sized.flatMap(({ garment }) => [...garment.pieces.keys()]));
  return [...names].some((piece) =>
    canLieAt(
      sized.flatMap(({ garment }) => garment.pieces.get(piece) ?? []),
      name,
    ),
  );
};

// Between what is drawn and the legend, mm.
const gap = 12;

const drawingOf = (title: string, groups: readonly Group[]): Drawing => ({
  title,
  words: groups.map(({ words }) => words).join(" "),
  paper: paperAround(groups),
  groups,
});

/** The sheet, which lays a piece's groups as one, with the legend of the sizes beside the title block. */
const sheetWith = (
  garment: Garment,
  nests: readonly Nest[],
  remarks: Remarks,
  legendAt: (x: number, y: number) => Group[],
): Drawing => {
  const sheet = sheetOf(
    garment,
    nests.map(({ groups }) => bundled(groups)),
    remarks,
  );
  const pieces = nests.flatMap(({ groups }, index) => unbundled(groups, sheet.groups[index]!));
  const others = sheet.groups.slice(nests.length);
  const { right, top } = extentOf(others);
  const groups = [...pieces, ...others, ...legendAt(right + gap, top)];
  return { ...sheet, groups, paper: paperAround(groups) };
};

/** The groups of one piece as one. */
const bundled = (groups: readonly Group[]): Group => ({
  ...groups[groups.length - 1]!,
  strokes: groups.flatMap(({ strokes }) => strokes),
  texts: groups.flatMap(({ texts }) => texts),
});

/** The groups again out of their bundle, which was laid somewhere else. */
const unbundled = (groups: readonly Group[], { strokes, texts }: Group): Group[] => {
  let [stroke, text] = [0, 0];
  return groups.map((group) => {
    const own = {
      ...group,
      strokes: strokes.slice(stroke, stroke + group.strokes.length),
      texts: texts.slice(text, text + group.texts.length),
    };
    stroke += group.strokes.length;
    text += group.texts.length;
    return own;
  });
};
