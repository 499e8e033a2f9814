// All sizes of a garment on one paper, piece by piece laid on one another; a group for each size, so that every format can
// give it lines and a layer of its own.
import type { Drawings } from "../drawing/draw.ts";
import type { Drawing, Group } from "../drawing/drawing.ts";
import { extentOf, paperAround } from "../drawing/paper.ts";
import type { Remarks } from "../drawing/remarks.ts";
import { scaleSquareBeside } from "../drawing/scale-square-beside.ts";
import { sheetOf } from "../drawing/sheet.ts";
import type { Garment } from "../working.ts";
import { nestGroups } from "./nest-groups.ts";
import { namedSpot } from "./nest-places.ts";
import { sizeLegend } from "./size-legend.ts";
import type { SizedGarment } from "./size-tables.ts";

/**
 * Every piece in all its sizes, and one sheet with all pieces; laid on one another at a place or the upper end of an edge, and
 * where none is named or a piece has none of that name at the upper end of its fold, of its grain line, or as drafted.
 */
export const nested = (sized: readonly SizedGarment[], remarks: Remarks, nestAt?: string): Drawings => {
  const base = (sized.find((each) => each.base) ?? sized[0])?.garment;
  if (!base) throw new RangeError("A nest needs a size.");
  const sizes = sized.map(({ size }) => size);
  const names = [...new Set(sized.flatMap(({ garment }) => [...garment.pieces.keys()]))];
  const nests = names.map((name) => ({ name, groups: nestGroups(name, sized, remarks, nestAt) }));
  const title = `${base.title}, ${sizes.length === 1 ? `size ${sizes[0]}` : `sizes ${sizes[0]} to ${sizes[sizes.length - 1]}`}`;
  const legendAt = (x: number, y: number): Group[] => sizeLegend(sizes, nestAt ?? usually, { x, y });
  const alone = (groups: readonly Group[], name: string): Drawing => {
    const square = scaleSquareBeside(bundled(groups), base.units);
    const { left, bottom } = extentOf([...groups, square]);
    return drawingOf(`${name}, ${title}`, [...groups, square, ...legendAt(left, bottom + gap)]);
  };
  return {
    pieces: new Map(nests.map(({ name, groups }) => [name, alone(groups, name)])),
    sheet: sheetWith(
      { ...base, title },
      nests.map(({ groups }) => groups),
      remarks,
      legendAt,
    ),
  };
};

/** Whether some piece has, in every size that has the piece, a place or an edge of this name to nest it at. */
export const canNestAt = (sized: readonly SizedGarment[], name: string): boolean => {
  const names = new Set(sized.flatMap(({ garment }) => [...garment.pieces.keys()]));
  return [...names].some((piece) => {
    const own = sized.flatMap(({ garment }) => garment.pieces.get(piece) ?? []);
    return own.every((each) => namedSpot(each, name) !== undefined);
  });
};

const usually = "the upper end of the fold or the grain";

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
  nests: readonly (readonly Group[])[],
  remarks: Remarks,
  legendAt: (x: number, y: number) => Group[],
): Drawing => {
  const sheet = sheetOf(garment, nests.map(bundled), remarks);
  const pieces = nests.flatMap((groups, index) => unbundled(groups, sheet.groups[index]!));
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
