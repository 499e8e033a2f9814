// One piece as strokes and texts, in its own coordinates: lines first, then marks, then writing where there is room left.
import { cuttingLine } from "../cloth/allowances/cutting-line.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { flattened } from "../geometry/area.ts";
import { bounds } from "../geometry/bounds.ts";
import { endDirection, endOf, startDirection, startOf } from "../geometry/path.ts";
import { minus, type Point, plus, times, unit } from "../geometry/point.ts";
import { angleOf } from "../geometry/trig.ts";
import { withoutHidden } from "../hidden-names.ts";
import { boundary, walked } from "../outline.ts";
import type { Edge, Garment, Piece } from "../working.ts";
import { allowanceWidths } from "./allowance-widths.ts";
import { arrowhead } from "./arrowhead.ts";
import { beforeLines } from "./before-lines.ts";
import { readable } from "./beside.ts";
import { type Line, rim } from "./box.ts";
import { dartMarks } from "./dart-marks.ts";
import type { Group, Mark, Stroke, StrokeKind, Text } from "./drawing.ts";
import { drillMarks } from "./drill-marks.ts";
import { edgeNames } from "./edge-names.ts";
import { foldBracket } from "./fold-bracket.ts";
import { foldOf, grainLine } from "./grain-line.ts";
import { fittedLabel, labelBlockAt, wholeLabel } from "./label-block.ts";
import { boxOf } from "./lettering.ts";
import { notchMarks } from "./notch-marks.ts";
import { pieceInWords } from "./piece-in-words.ts";
import { noRemarks, type Remarks } from "./remarks.ts";
import { takeUpMarks } from "./take-up-marks.ts";

/** A piece of a garment, drawn where it lies. */
export const pieceGroup = (garment: Garment, piece: Piece, remarks: Remarks = noRemarks): Group => {
  const lines = [...beforeLines(piece), ...edgeLines(piece), ...cuttingLines(piece)];
  const brackets = boundary(piece)
    ? walked(piece)
        .filter(isFold)
        .map((part) => foldBracket(piece, part))
    : [];
  const taken = piece.takeUps.map((takeUp) => ({ takeUp, ...takeUpMarks(piece, takeUp, garment.units) }));
  const marks = [
    ...brackets.flatMap(({ strokes }) => strokes),
    ...grainMarks(piece),
    ...piece.notches.flatMap((notch) => notchMarks(piece, notch)),
    ...piece.drills.flatMap(({ point, drawnBy }) =>
      linesOf({ kind: "drill", name: "drill", drawnBy }, drillMarks(point)),
    ),
    ...[...piece.darts.values()].flatMap((dart) =>
      linesOf({ kind: "dart", name: withoutHidden(dart.name), drawnBy: dart.drawnBy }, dartMarks(piece, dart)),
    ),
    ...taken.flatMap(({ takeUp, strokes }) =>
      linesOf({ kind: "take-up", name: takeUp.edge, drawnBy: takeUp.drawnBy }, strokes),
    ),
  ];
  const strokes = [...lines, ...marks];
  return {
    of: "piece",
    name: piece.name,
    words: pieceInWords(garment, piece),
    strokes,
    texts: writing(
      garment,
      piece,
      remarks,
      strokes,
      [...brackets, ...taken].flatMap(({ texts }) => texts),
    ),
  };
};

const linesOf = (of: Mark, strokes: readonly Stroke[]): Stroke[] => strokes.map((stroke) => ({ ...stroke, of }));

const isFold = ({ edge }: { readonly edge: Edge }): boolean => edge.role === "fold";

/** Sewing lines where they are not the cutting line too, and inner lines. */
const edgeLines = (piece: Piece): Stroke[] => {
  const cut = cuttingLine(piece);
  const outer = walked(piece)
    .filter((_, index) => !cut || cut.stretches[index]!.width > 0)
    .map(({ edge, path }): Stroke => ({ kind: kindOf(edge, "sewing-line"), path }));
  const names = new Set(piece.outline.map(({ edge }) => edge));
  const inner = [...piece.edges.values()]
    .filter(({ name }) => !names.has(name))
    .map(
      (edge): Stroke => ({
        kind: kindOf(edge, edge.role === "opening" ? "cutting-line" : "inner-line"),
        path: edge.path,
      }),
    );
  return [...outer, ...inner];
};

const kindOf = ({ role }: Edge, otherwise: StrokeKind): StrokeKind => {
  if (role === "fold") return "fold";
  return role === "hem" ? "hem-line" : otherwise;
};

const cuttingLines = (piece: Piece): Stroke[] =>
  (cuttingLine(piece)?.stretches ?? [])
    // Where two allowances meet before it, nothing is left of a stretch but a spot.
    .filter(({ path }) => pathLength(path) > 0)
    .map(({ fold, path }) => ({ kind: fold ? "fold" : "cutting-line", path }));

// Length of an arrowhead, mm, and how far it goes beyond the line, whose blunt end would stick out of its tip otherwise.
const arrowSize = 10;
const tipBeyond = 0.7;

const grainMarks = (piece: Piece): Stroke[] => {
  const grain = grainLine(piece);
  const drawnBy = piece.grain?.drawnBy ?? foldOf(piece)?.drawnBy;
  if (!grain || !drawnBy) return [];
  const size = Math.min(arrowSize, pathLength(grain) / 4);
  const tip = (end: Point, direction: Point): Stroke => ({
    kind: "arrowhead",
    path: arrowhead(plus(end, times(direction, tipBeyond)), direction, size),
  });
  return linesOf({ kind: "grain", name: "grain", drawnBy }, [
    { kind: "grain", path: grain },
    tip(startOf(grain), times(startDirection(grain), -1)),
    tip(endOf(grain), endDirection(grain)),
  ]);
};

// How near, in mm, the lines that writing keeps clear of follow the strokes.
const keptClear = 0.5;

const writing = (
  garment: Garment,
  piece: Piece,
  remarks: Remarks,
  strokes: readonly Stroke[],
  fixed: readonly Text[],
): Text[] => {
  const bent = (kept: readonly Stroke[]): Line[] => kept.map(({ path }) => flattened(path, keptClear));
  const clear = bent(strokes.filter(({ kind }) => kind !== "before"));
  const quiet = bent(strokes.filter(({ kind }) => kind === "before"));
  const { units } = garment;
  const widths = allowanceWidths(piece, units, [...clear, ...quiet, ...rims(fixed)]);
  const told = new Set(widths.keys());
  const placed = [...fixed, ...placedLabels(piece), ...widths.values()];
  const drawn = [...clear, ...rims(placed)];
  const loop = boundary(piece);
  const names = edgeNames(piece, units, drawn, quiet, told);
  if (!loop) return [...placed, ...names, ...labelBlockAt(garment, piece, middleOf(strokes), remarks)];
  const whole = wholeLabel(garment, piece, loop, [...drawn, ...quiet, ...rims(names)], remarks);
  if (whole) return [...placed, ...names, ...whole];
  // In a small piece the names of its edges give way: their lengths stand in the report, and what to cut only here.
  const label = fittedLabel(garment, piece, loop, [...drawn, ...quiet], grainTurn(piece), remarks);
  return [...placed, ...edgeNames(piece, units, [...drawn, ...rims(label)], quiet, told), ...label];
};

const rims = (texts: readonly Text[]): Line[] => texts.map((text) => rim(boxOf(text)));

const grainTurn = (piece: Piece): number => {
  const grain = grainLine(piece);
  return grain ? readable(angleOf(unit(minus(endOf(grain), startOf(grain))))) : 0;
};

const middleOf = (strokes: readonly Stroke[]): Point => {
  if (strokes.length === 0) return { x: 0, y: 0 };
  const { left, top, right, bottom } = bounds(strokes.map(({ path }) => path));
  return { x: (left + right) / 2, y: (top + bottom) / 2 };
};

const labelSize = 5.5;
const labelLeading = 1.35;

/** Labels that the recipe gave a place. */
const placedLabels = ({ labels }: Piece): Text[] =>
  labels.flatMap(({ text, at }) =>
    at
      ? text.split(/\r\n|\r|\n/).map(
          (line, index): Text => ({
            text: line,
            at: { x: at.x, y: at.y + index * labelSize * labelLeading },
            size: labelSize,
            turn: 0,
            align: "middle",
            weight: "plain",
          }),
        )
      : [],
  );
