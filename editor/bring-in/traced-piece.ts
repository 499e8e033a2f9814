// A piece on the sheet as the lines of a recipe: corners, edges, outline and marks, laid at the top left of the table.
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { endOf, isStraight, mapped, type Path, startOf } from "../../kernel/geometry/path.ts";
import { distance, type Point } from "../../kernel/geometry/point.ts";
import { lengthIn, plainNumber } from "../../kernel/units.ts";
import { type Break, breaksOf, type PointsTold } from "./breaks.ts";
import { withoutDust } from "./dust.ts";
import { type EdgeParts, edgeParts } from "./edge-parts.ts";
import { liesOnFold } from "./lies-on-fold.ts";
import { drawnEdge, type Part } from "./parts.ts";
import { Names } from "./piece-names.ts";
import type { PieceOnSheet } from "./pieces-on.ts";
import type { RecipeUnits } from "./recipe-units.ts";
import type { DrawnSpot } from "./sheet.ts";

/** A piece as text, and what is to be said of it. */
export interface TracedPiece {
  readonly name: string;
  /** From `piece` to its closing brace. */
  readonly text: string;
  readonly edges: readonly string[];
  /** How far, in mm, the written edges and inner lines stray from what was drawn. */
  readonly straying: number;
  /** How far the piece was moved on the table. */
  readonly moved: Point;
}

/** Writes one piece; `drawnIn` is how wide an allowance its cutting line has, mm, where that was said. */
export const tracedPiece = (
  name: string,
  found: PieceOnSheet,
  units: RecipeUnits,
  drawnIn: number | undefined,
): TracedPiece => {
  const { left, top } = bounds([found.outline]);
  // By whole written steps, so that moving rounds nothing.
  const moved = units.round({ x: -left, y: -top });
  const laid = (p: Point): Point => ({ x: p.x + moved.x, y: p.y + moved.y });
  const told = pointsTold(found.spots, laid);
  const edges = outlineEdges(mapped(found.outline, laid), told, units);
  const names = new Names();
  const named = edges.map((edge) => ({ ...edge, name: names.take(undefined, "edge") }));
  const inner = found.inner
    .map((path) => innerLine(mapped(path, laid), units))
    .filter(({ parts }) => parts.length > 0)
    .map((line) => ({ ...line, name: names.take(undefined, "inner") }));
  const places = placeNames(named, told, names, units);
  const writer = new PieceText(units, places);
  const size = bounds([drawnEdge(named.flatMap(({ parts }) => parts))]);
  const folds = found.folds.map((path) => mapped(path, laid));
  const onFold = named.filter(({ parts }) => isOnFold(parts, folds));
  const sewn = named.filter((edge) => !onFold.includes(edge));
  const lines = [
    ...(found.remarks.length > 0 ? [`# ${found.remarks.join("; ")}`] : []),
    ...(found.along === "cutting" && sewn.length > 0 && drawnIn === undefined
      ? [`# this is the cutting line: where an allowance is drawn in, strip ${listed(sewn)} by its width`]
      : []),
    ...writer.points(),
    ...named.flatMap((edge) => writer.edge(edge.name, edge.parts, sideOf(edge.parts, size))),
    `outline ${named.map((edge) => edge.name).join(", ")}`,
    ...onFold.map((edge) => `mark ${edge.name} as fold`),
    ...(found.grain ? grainLine(laid(found.grain.from), laid(found.grain.to), units) : []),
    ...notchLines(found.notches.map(laid), named, units),
    ...inner.flatMap((line) => writer.edge(line.name, line.parts, "inside")),
    ...found.drills.map((p) => `drill ${units.place(laid(p))}`),
    ...found.words.map(({ text, at }) => `label ${quoted(text)} at ${units.place(laid(at))}`),
    // Last, since notches are told along the line that was drawn, and go in with it.
    ...(found.along !== "sewing" && sewn.length > 0 && drawnIn !== undefined
      ? [`strip ${listed(sewn)} by ${units.length(drawnIn)}`, `allow ${listed(sewn)} by ${units.length(drawnIn)}`]
      : []),
  ];
  return {
    name,
    text: [`piece ${name} {`, ...lines.map((line) => `  ${line}`), "}"].join("\n"),
    edges: named.map((edge) => edge.name),
    straying: Math.max(...[...edges, ...inner].map((edge) => edge.straying)),
    moved,
  };
};

interface NamedEdge {
  readonly name: string;
  readonly parts: readonly Part[];
}

interface ToldPoints extends PointsTold {
  readonly named: readonly { readonly at: Point; readonly name: string }[];
}

/** Points that the file has told of, found again by where they lie, to a hundredth of a millimetre. */
const pointsTold = (spots: readonly DrawnSpot[], laid: (p: Point) => Point): ToldPoints => {
  const key = ({ x, y }: Point): string => `${x.toFixed(2)} ${y.toFixed(2)}`;
  // A place that lies between two hundredths is found from both.
  const keys = (p: Point): string[] =>
    [-0.004, 0.004].flatMap((x) => [-0.004, 0.004].map((y) => key({ x: p.x + x, y: p.y + y })));
  const all = (means: DrawnSpot["means"]): ReadonlySet<string> =>
    new Set(spots.flatMap((spot) => (spot.means === means ? keys(laid(spot.at)) : [])));
  const [turns, onCurve] = [all("turn"), all("curve")];
  return {
    isTurn: (p) => turns.has(key(p)),
    isOnCurve: (p) => onCurve.has(key(p)),
    named: spots.flatMap(({ at, called, means }) =>
      called === undefined || means === "curve" ? [] : [{ at: laid(at), name: called }],
    ),
  };
};

/** The edges clockwise, from the corner at the top left. */
const outlineEdges = (outline: Path, told: PointsTold, units: RecipeUnits): EdgeParts[] => {
  const path = withoutDust(outline, told);
  const breaks = breaksOf(path, true, told);
  const corners = indexesOf(breaks, "corner");
  // Without a corner the edge begins at a bend, or else where a line and a curve meet, at the top.
  const starts = corners.length > 0 ? corners : [topmost(path, indexesOf(breaks, "bend"))];
  const first = starts.reduce(
    (best, i) => (cornerRank(path[i]!.start) < cornerRank(path[best]!.start) ? i : best),
    starts[0]!,
  );
  const turn = <T>(all: readonly T[]): T[] => [...all.slice(first), ...all.slice(0, first)];
  const [spans, kinds] = [turn(path), turn(breaks)];
  const begins = starts.map((i) => (i - first + path.length) % path.length).sort((a, b) => a - b);
  const edges = begins.map((from, i) => {
    const to = begins[i + 1] ?? spans.length;
    return edgeParts(spans.slice(from, to), kinds.slice(from, to), told, units.round);
  });
  // Two corners on one spot have no edge between them.
  return edges.filter(({ parts }) => parts.length > 0);
};

/** An inner line as one edge, whatever its corners. */
const innerLine = (line: Path, units: RecipeUnits): EdgeParts => {
  const nothingTold: PointsTold = { isTurn: () => false, isOnCurve: () => false };
  const path = withoutDust(line, nothingTold);
  return edgeParts(path, breaksOf(path, false, nothingTold), nothingTold, units.round);
};

const indexesOf = (breaks: readonly Break[], kind: Break): number[] =>
  breaks.flatMap((each, i) => (each === kind ? [i] : []));

const topmost = (path: Path, among: readonly number[]): number => {
  const all = among.length > 0 ? among : path.map((_, i) => i);
  return all.reduce((best, i) => (path[i]!.start.y < path[best]!.start.y ? i : best), all[0]!);
};

/** Small at the top left; of two as near to it the higher one comes first. */
const cornerRank = ({ x, y }: Point): number => x + y * 1.0001;

/** Names for the places where edges begin, by how they are written: those of the file, else corner-1, corner-2 … */
const placeNames = (
  edges: readonly NamedEdge[],
  told: ToldPoints,
  names: Names,
  units: RecipeUnits,
): ReadonlyMap<string, { readonly name: string; readonly at: Point }> => {
  const places = new Map<string, { name: string; at: Point }>();
  const calledAt = new Map(told.named.map(({ at, name }) => [units.place(units.round(at)), name]));
  for (const { parts } of edges) {
    const at = parts[0]!.points[0]!;
    const place = units.place(at);
    if (!places.has(place)) places.set(place, { name: names.take(calledAt.get(place), "corner"), at });
    calledAt.delete(place);
  }
  for (const { at } of told.named) {
    const place = units.place(units.round(at));
    const called = calledAt.get(place);
    if (called !== undefined && !places.has(place))
      places.set(place, { name: names.take(called, "point"), at: units.round(at) });
  }
  return places;
};

/** Writes the points, lines and curves of a piece. */
class PieceText {
  private readonly units: RecipeUnits;
  private readonly places: ReadonlyMap<string, { readonly name: string; readonly at: Point }>;

  constructor(units: RecipeUnits, places: ReadonlyMap<string, { readonly name: string; readonly at: Point }>) {
    this.units = units;
    this.places = places;
  }

  /** Each corner from the one before it where it lies straight beside, over or under it. */
  points(): string[] {
    const { length, place } = this.units;
    let before: { readonly name: string; readonly at: Point } | undefined;
    return [...this.places.values()].map((here) => {
      const { name, at } = here;
      const from = before;
      before = here;
      const [x, y] = from ? [at.x - from.at.x, at.y - from.at.y] : [0, 0];
      if (!from || (length(x) !== "0" && length(y) !== "0")) return `point ${name} = ${place(at)}`;
      const way = length(y) === "0" ? (x > 0 ? "right" : "left") : y > 0 ? "down" : "up";
      return `point ${name} = ${from.name} ${way} ${length(Math.abs(length(y) === "0" ? x : y))}`;
    });
  }

  /** The lines that draw one edge; where it lies and how long it is stands behind the last. */
  edge(name: string, parts: readonly Part[], side: string): string[] {
    const note = `  # ${side}, ${lengthIn(pathLength(drawnEdge(parts)), this.units.units)}`;
    const [only] = parts;
    if (parts.length === 1) return [`${this.part(name, only!, undefined)}${note}`];
    const called = parts.map((_, i) => `${name}-part-${i + 1}`);
    return [
      ...parts.map((part, i) => this.part(called[i]!, part, called[i - 1])),
      `join ${name} = ${called.join(", ")}${note}`,
    ];
  }

  private part(name: string, part: Part, before: string | undefined): string {
    const { place, length } = this.units;
    const [start, ...others] = part.points;
    const from = before === undefined ? this.place(start!) : `${before}.end`;
    const ends = `${from} to ${this.place(others.at(-1)!)}`;
    const inner = others.slice(0, -1);
    switch (part.kind) {
      case "line":
        return `line ${name} = ${ends}${inner.length > 0 ? ` through ${inner.map((p) => this.place(p)).join(", ")}` : ""}`;
      case "arc":
        return `arc ${name} = ${ends} radius ${length(part.radius)} bulging ${part.bulging}`;
      case "handles":
        return `curve ${name} = ${ends} handles ${part.handles.map(place).join(", ")}`;
      case "fair": {
        const passed = inner.map((p, i) => {
          const heading = part.headings[i];
          return `${this.place(p)}${heading === undefined ? "" : ` heading ${direction(heading)}`}`;
        });
        const through = passed.length > 0 ? ` through ${passed.join(", ")}` : "";
        const leaving = part.leaving === undefined ? "" : ` leaving ${direction(part.leaving)}`;
        const arriving = part.arriving === undefined ? "" : ` arriving ${direction(part.arriving)}`;
        return `curve ${name} = ${ends}${through}${leaving}${arriving}`;
      }
    }
  }

  private place(p: Point): string {
    const written = this.units.place(p);
    return this.places.get(written)?.name ?? written;
  }
}

const direction = (degrees: number): string =>
  new Map([
    [0, "right"],
    [90, "down"],
    [-90, "up"],
    [180, "left"],
    [-180, "left"],
  ]).get(degrees) ?? `${plainNumber(degrees, 2)} deg`;

/** Where an edge lies on its piece, in words. */
const sideOf = (parts: readonly Part[], box: ReturnType<typeof bounds>): string => {
  const path = drawnEdge(parts);
  if (distance(startOf(path), endOf(path)) < 1e-9) return "all round";
  const { x, y } = pointAt(path, pathLength(path) / 2);
  const across = (x - (box.left + box.right) / 2) / (box.right - box.left);
  const down = (y - (box.top + box.bottom) / 2) / (box.bottom - box.top);
  const high = down < -0.2 ? "top" : down > 0.2 ? "bottom" : "";
  const wide = across < -0.2 ? "left" : across > 0.2 ? "right" : "";
  return [high, wide].filter((word) => word !== "").join(" ") || "middle";
};

const isOnFold = (parts: readonly Part[], folds: readonly Path[]): boolean => {
  const path = drawnEdge(parts);
  return (
    isStraight(path, 0.1) && distance(startOf(path), endOf(path)) > 1 && liesOnFold(startOf(path), endOf(path), folds)
  );
};

const grainLine = (from: Point, to: Point, { place }: RecipeUnits): string[] => {
  const [start, end] = [place(from), place(to)];
  return start === end ? [] : [`grain ${start} to ${end}`];
};

/** Each notch as a length along its edge; two close together are a double one. */
const notchLines = (notches: readonly Point[], edges: readonly NamedEdge[], { length }: RecipeUnits): string[] => {
  const paths = edges.map(({ name, parts }) => ({ name, path: drawnEdge(parts) }));
  const found = notches.map((p) => {
    const feet = paths.map((edge) => ({ ...edge, ...nearest(edge.path, p) }));
    return feet.reduce((best, foot) => (foot.distance < best.distance ? foot : best));
  });
  return paths.flatMap(({ name, path }) => {
    const own = found.filter((foot) => foot.name === name).map(({ at }) => at);
    const along = own.sort((a, b) => a - b);
    const whole = pathLength(path);
    const lines: string[] = [];
    for (let i = 0; i < along.length; i += 1) {
      const [at, next] = [along[i]!, along[i + 1]];
      const isDouble = next !== undefined && next - at <= doubleWithin && !(along[i + 2]! - next <= doubleWithin);
      const middle = isDouble ? (at + next) / 2 : at;
      if (isDouble) i += 1;
      const where =
        middle < 0.01 ? `${name}.start` : middle > whole - 0.02 ? `${name}.end` : `${name} at ${length(middle)}`;
      lines.push(`notch ${where}${isDouble ? " double" : ""}`);
    }
    return lines;
  });
};

// Common practice, no source: the two snips of a double notch are 6 to 10 mm apart.
const doubleWithin = 10.5;

const listed = (edges: readonly NamedEdge[]): string => edges.map(({ name }) => name).join(", ");

const quoted = (text: string): string => `"${text.replace(/[\\"]/g, "\\$&")}"`;
