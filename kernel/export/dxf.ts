// A drawing as plain DXF for laser cutters and drawing programs: release 2000 (AC1015), a layer for each kind of line and one
// for the labels, in every size of a nest its own. Curves are bent lines within 0.05 mm, and an outline is one closed line.
// It is ASCII throughout and holds no date, no name of a person and no handle that changes.
import type { Drawing, Group, Stroke, StrokeKind, Text } from "../drawing/drawing.ts";
import { strokeKinds } from "../drawing/drawing.ts";
import { sizesIn, styleOf } from "../drawing/line-style.ts";
import { bentLineOf } from "./bent-line.ts";
import { entity, framed, type Handle, handles, type Layer } from "./dxf-frame.ts";
import { lettering } from "./dxf-lettering.ts";
import { spot, type Tag, tagText } from "./dxf-tags.ts";
import { dxfNames } from "./dxf-text.ts";
import { penLines } from "./pen-lines.ts";

/** The plain DXF of a drawing; 1 unit is 1 mm. */
export const dxf = (drawing: Drawing): string => {
  const layers = layersOf(drawing);
  const handle = handles();
  const entities = [
    ...drawing.groups.flatMap((group) => groupEntities(group, layers, handle)),
    ...textEntity({ ...note, at: { x: drawing.paper.left, y: drawing.paper.bottom } }, "0", handle),
  ];
  return tagText(framed(entities, drawing.paper, [...layers.values()], handle));
};

/** Whoever opens the file in a program that asks for units finds the answer in it. */
const note: Omit<Text, "at"> = { text: "1 unit = 1 mm", size: 6, turn: 0, align: "start", weight: "plain" };

/** What is drawn on one layer: a kind of stroke or the labels, in one size; no size's name holds a line end. */
const layerKey = (kind: StrokeKind | "label", size: string | undefined): string =>
  size === undefined ? kind : `${kind}\n${size}`;

/** The layers that a drawing needs, by what is on them, in the order they are laid on the paper. */
const layersOf = (drawing: Drawing): ReadonlyMap<string, Layer> => {
  const sizes = sizesIn(drawing);
  const wanted = [...new Set([undefined, ...sizes])].flatMap((size) => {
    const groups = drawing.groups.filter((group) => group.size === size);
    const kinds = strokeKinds.filter((kind) =>
      groups.some(({ strokes }) => strokes.some((stroke) => stroke.kind === kind)),
    );
    const looks = kinds.map((kind) => ({
      key: layerKey(kind, size),
      color: colors[kind],
      ...styleOf(kind, size, sizes),
    }));
    const hasTexts = groups.some(({ texts }) => texts.length > 0);
    return hasTexts ? [...looks, { key: layerKey("label", size), color: labelColor, dashes: [], width: 0.25 }] : looks;
  });
  const names = dxfNames(wanted.map(({ key }) => key));
  return new Map(
    wanted.map(({ key, color, dashes, width }) => [
      key,
      { name: names.get(key)!, color, dashes, weight: weightOf(width) },
    ]),
  );
};

// Programs for cutters sort lines by colour, so that what is cut, what is only marked and what is neither are three; a choice
// of our own. 1 red, 5 blue, 7 black or white, 8 grey (AutoCAD colour index).
const colors: Readonly<Record<StrokeKind, number>> = {
  before: 8,
  "inner-line": 5,
  "dart-center": 5,
  "sewing-line": 5,
  "hem-line": 5,
  fold: 5,
  "fold-bracket": 7,
  "cutting-line": 1,
  grain: 7,
  notch: 1,
  drill: 5,
  arrowhead: 7,
  "scale-square": 7,
  frame: 7,
};
const labelColor = 7;

// The line weights of the format, hundredths of a mm (DXF reference, group code 370).
const weights = [5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100];

const weightOf = (width: number): number =>
  weights.reduce((best, each) => (Math.abs(each - width * 100) < Math.abs(best - width * 100) ? each : best));

const groupEntities = ({ size, strokes, texts }: Group, layers: ReadonlyMap<string, Layer>, handle: Handle): Tag[] => [
  ...strokeKinds.flatMap((kind) =>
    penLines(strokes.filter((stroke) => stroke.kind === kind)).flatMap((line) =>
      lineEntity(line, layers.get(layerKey(kind, size))!.name, handle),
    ),
  ),
  ...texts.flatMap((text) => textEntity(text, layers.get(layerKey("label", size))!.name, handle)),
];

const lineEntity = ({ path }: Stroke, layer: string, handle: Handle): Tag[] => {
  const { points, closed } = bentLineOf(path);
  // A line that is no longer than what is written is none.
  if (points.length < 2) return [];
  return [
    ...entity("LWPOLYLINE", layer, handle),
    [100, "AcDbPolyline"],
    [90, String(points.length)],
    // Dashes run on round the corners (128).
    [70, closed ? "129" : "128"],
    [43, "0.0"],
    ...points.flatMap((point) => spot(10, point)),
  ];
};

const textEntity = (text: Text, layer: string, handle: Handle): Tag[] => {
  const letters = lettering(text);
  return letters ? [...entity("TEXT", layer, handle), [100, "AcDbText"], ...letters, [100, "AcDbText"]] : [];
};
