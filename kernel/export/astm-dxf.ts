// The file for cutting rooms after ASTM D6673: a block for each piece in each size, with the standard's layers. What its public
// pages say is followed (scope: DXF, one block a piece, terms); layer numbers and the words of its texts are from memory.
// Written in the form of release 12, which readers of the release 13 that the standard names read too, and which needs no handles.
import type { Text } from "../drawing/drawing.ts";
import { type Bounds, bounds } from "../geometry/bounds.ts";
import { endOf, mapped, type Path, startOf } from "../geometry/path.ts";
import { distance, minus, type Point, plus } from "../geometry/point.ts";
import { angleOf, toDegrees } from "../geometry/trig.ts";
import type { CutGarment, CutNotch, CutPiece } from "./astm-piece.ts";
import { bentLineOf, isSame } from "./bent-line.ts";
import { lettering } from "./dxf-lettering.ts";
import { real, section, spotInSpace, type Tag, tagText, variable } from "./dxf-tags.ts";
import { dxfNames } from "./dxf-text.ts";
import { turnsOf } from "./turns.ts";

/** The file of a garment; 1 unit is 1 mm. */
export const astmDxf = (garment: CutGarment): string => {
  const names = dxfNames(garment.pieces.map(blockOf));
  return tagText([
    ...section("HEADER", [
      ...variable("$ACADVER", [1, "AC1009"]),
      // Both, as programs differ in which of the two they ask (millimetres; metric).
      ...variable("$INSUNITS", [70, "4"]),
      ...variable("$MEASUREMENT", [70, "1"]),
    ]),
    ...section("TABLES", [
      [0, "TABLE"],
      [2, "LAYER"],
      [70, String(layerNames.length)],
      ...layerNames.flatMap(layerEntry),
      [0, "ENDTAB"],
    ]),
    ...section(
      "BLOCKS",
      garment.pieces.flatMap((piece) => block(piece, names.get(blockOf(piece))!)),
    ),
    ...section("ENTITIES", [
      ...garment.pieces.flatMap((piece) => insert(piece, names.get(blockOf(piece))!)),
      ...words(styleWords(garment), layers.boundary, above(garment.pieces)),
      // Whoever opens the file in a program that asks for units finds the answer in it.
      ...words(["1 unit = 1 mm"], "0", plus(above(garment.pieces), { x: 0, y: -rowHeight })),
    ]),
    [0, "EOF"],
  ]);
};

/** Layers by what is on them (ASTM D6673; from memory, handbook of the trade 9.2). */
const layers = {
  boundary: "1",
  turn: "2",
  curve: "3",
  notch: "4",
  mirror: "6",
  grain: "7",
  inner: "8",
  cutout: "11",
  drill: "13",
  sewing: "14",
  text: "15",
} as const;

type Content = keyof typeof layers;

const layerNames = ["0", ...Object.values(layers)];

const layerEntry = (name: string): Tag[] => [
  [0, "LAYER"],
  [2, name],
  [70, "0"],
  [62, "7"],
  [6, "CONTINUOUS"],
];

// No name holds a line end, so that no piece is taken for another one's size.
const blockOf = ({ name, size }: CutPiece): string => (size === undefined ? name : `${name}\n${size}`);

const block = (piece: CutPiece, name: string): Tag[] => {
  const lines: readonly (readonly [Content, readonly Path[]])[] = [
    ["cutout", piece.cutouts],
    ["inner", piece.inner],
    ["sewing", piece.sewing],
  ];
  return [
    [0, "BLOCK"],
    [8, layers.boundary],
    [2, name],
    [70, "0"],
    ...spotInSpace(10, { x: 0, y: 0 }),
    [3, name],
    ...outline(piece.boundary),
    ...piece.notches.flatMap(notch),
    ...piece.mirror.flatMap((path) => straightLine("mirror", path)),
    ...piece.grain.flatMap((path) => straightLine("grain", path)),
    ...lines.flatMap(([what, paths]) => paths.flatMap((path) => bentLine(what, path))),
    ...piece.drills.flatMap((at) => point("drill", at)),
    ...words(pieceWords(piece), layers.boundary, below([{ ...piece, laid: { x: 0, y: 0 } }])),
    ...piece.texts.flatMap((text) => written(layers.text, text)),
    [0, "ENDBLK"],
    [8, layers.boundary],
  ];
};

/** The boundary, closed, with its turn points and curve points. */
const outline = (paths: readonly Path[]): Tag[] => {
  if (paths.length === 0) return [];
  const stretches = paths.map((path) => bentLineOf(path).points);
  const all = stretches.flat();
  const once = all.filter((p, index) => !isSame(p, all[(index + 1) % all.length]!));
  return [...polyline(layers.boundary, once, true), ...paths.flatMap((path) => pointsOn(path, false))];
};

const bentLine = (what: Content, path: Path): Tag[] => {
  const { points, closed } = bentLineOf(path);
  return points.length < 2 ? [] : [...polyline(layers[what], points, closed), ...pointsOn(path, true)];
};

/** A point at every corner of a bent line: on one layer where the line turns or ends, on another where it only bends. */
const pointsOn = (path: Path, withEnd: boolean): Tag[] => {
  const turns = turnsOf(path);
  const { points } = bentLineOf(path);
  const shown = withEnd ? points : points.filter((p, index) => index === 0 || !isSame(p, endOf(path)));
  return shown.flatMap((p) => point(turns.some((turn) => isSame(turn, p)) ? "turn" : "curve", p));
};

const polyline = (on: string, points: readonly Point[], closed: boolean): Tag[] => [
  [0, "POLYLINE"],
  [8, on],
  [66, "1"],
  ...spotInSpace(10, { x: 0, y: 0 }),
  [70, closed ? "1" : "0"],
  ...points.flatMap((p): Tag[] => [[0, "VERTEX"], [8, on], ...spotInSpace(10, p)]),
  [0, "SEQEND"],
  [8, on],
];

const straightLine = (what: Content, path: Path): Tag[] => [
  [0, "LINE"],
  [8, layers[what]],
  ...spotInSpace(10, startOf(path)),
  ...spotInSpace(11, endOf(path)),
];

const point = (what: Content, at: Point, ...more: readonly Tag[]): Tag[] => [
  [0, "POINT"],
  [8, layers[what]],
  ...spotInSpace(10, at),
  ...more,
];

/** A notch is a point at the edge: its depth is the point's thickness, and its angle says which way it is snipped (from memory). */
const notch = ({ at, to }: CutNotch): Tag[] => {
  const degrees = -toDegrees(angleOf(minus(to, at)));
  return point("notch", at, [39, real(distance(at, to))], [50, real(degrees < 0 ? degrees + 360 : degrees)]);
};

/** What is said of a piece, in the words of the standard (from memory). */
const pieceWords = ({ name, size, quantity, material, boundary }: CutPiece): string[] => [
  `Piece Name: ${name}`,
  ...(size === undefined ? [] : [`Size: ${size}`]),
  ...(quantity === 0 ? [] : [`Quantity: ${quantity}`]),
  ...(material === "" ? [] : [`Material: ${material}`]),
  ...(boundary.length === 0 ? ["Annotation: not fit to cut, the outline stands open"] : []),
];

/** What is said of the whole garment (from memory); there is no date in it, as the same recipe gives the same file. */
const styleWords = ({ title, sampleSize }: CutGarment): string[] => [
  `Style Name: ${title}`,
  ...(sampleSize === undefined ? [] : [`Sample Size: ${sampleSize}`]),
  "Units: METRIC",
];

const rowHeight = 10;
const wordSize = 7;

/** Texts in rows downward from a place. */
const words = (rows: readonly string[], on: string, from: Point): Tag[] =>
  rows.flatMap((text, row) =>
    written(on, {
      text,
      at: { x: from.x, y: from.y + (row + 1) * rowHeight },
      size: wordSize,
      turn: 0,
      align: "start",
      weight: "plain",
    }),
  );

/** The box around all that is cut, as it is laid; a spot where there is nothing. */
const boxAround = (pieces: readonly CutPiece[]): Bounds => {
  const lines = pieces.flatMap(({ boundary, sewing, inner, laid }) =>
    [...boundary, ...sewing, ...inner].map((path) => mapped(path, (p) => plus(p, laid))),
  );
  return lines.length === 0 ? { left: 0, top: 0, right: 0, bottom: 0 } : bounds(lines);
};

/** Where texts begin that stand under the lower left of all that is cut, and over the upper left of it. */
const below = (pieces: readonly CutPiece[]): Point => {
  const { left, bottom } = boxAround(pieces);
  return { x: left, y: bottom + rowHeight };
};

const above = (pieces: readonly CutPiece[]): Point => {
  const { left, top } = boxAround(pieces);
  return { x: left, y: top - 5 * rowHeight };
};

const written = (on: string, text: Text): Tag[] => {
  const letters = lettering(text);
  return letters ? [[0, "TEXT"], [8, on], ...letters] : [];
};

const insert = ({ laid }: CutPiece, name: string): Tag[] => [
  [0, "INSERT"],
  [8, layers.boundary],
  [2, name],
  ...spotInSpace(10, laid),
];
