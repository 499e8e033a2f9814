// A traced outline as a recipe: what is the matter with it, and the text of its piece. Where it lay in the picture no longer counts:
// the piece is laid at the top left of the table with its grain running straight down.
import { statementWords } from "../../grammar/statements.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { crossingsWithRay, selfCrossingsOfLoop } from "../../kernel/geometry/intersect.ts";
import { distance, minus, type Point } from "../../kernel/geometry/point.ts";
import { rotated } from "../../kernel/geometry/rotate.ts";
import { angleOf, toDegrees } from "../../kernel/geometry/trig.ts";
import { millimetresIn, plainNumber } from "../../kernel/units.ts";
import type { Fault } from "./fault.ts";
import { lengthWritten, type PaperUnits } from "./length-written.ts";
import { loopOf, type Stretch, stretchesOf, type TracedEdge, type TracedPoint, tracedEdges } from "./traced-edges.ts";

/** A piece as it was traced; its points in mm of paper. */
export interface TracedPiece {
  readonly name: string;
  readonly outline: readonly TracedPoint[];
  /** Which line of the paper was traced. */
  readonly line: "cutting" | "sewing";
  /** The allowance of every edge that has none of its own, as written. */
  readonly allowance: string;
  /** A straight edge that the grain runs along; empty where it runs down the picture. A fold is the grain of its piece. */
  readonly grainAlong: string;
  readonly units: PaperUnits;
}

/** Everything that keeps a piece from becoming a recipe, in the order of the work. */
export const faultsOf = (piece: TracedPiece): Fault[] => {
  const outline = outlineFaults(piece);
  return outline.length > 0 ? outline : [...edgeFaults(piece), ...recipeFaults(piece)];
};

/** The words that no piece and no edge may be called, beside those that begin statements: they say where a place is. */
export const placeWordsOfRecipes = [
  "at",
  "toward",
  "left",
  "right",
  "up",
  "down",
  "bearing",
  "for",
  "end",
  "and",
  "or",
  "not",
];

/** Why a word cannot be a name in a recipe; undefined where it can. */
export const nameFault = (name: string): string | undefined => {
  if (!/^[A-Za-z][A-Za-z0-9]*(?:-[A-Za-z0-9]+)*$/.test(name) || name.length > 60)
    return `${name === "" ? "A name" : `“${name}”`} has to be written in letters and digits, with single hyphens inside.`;
  if (placeWordsOfRecipes.includes(name) || statementWords.includes(name))
    return `“${name}” means something of its own in a recipe, so nothing can be called that.`;
  return undefined;
};

/** The text of the piece, from `piece` to its closing brace. Only for a piece without faults. */
export const pieceText = (piece: TracedPiece): string => {
  const laid = laidStraight(piece);
  const edges = tracedEdges(laid);
  const write = inUnits(piece.units);
  const place = ({ x, y }: Point): string => `(${write(x)}, ${write(y)})`;
  const corner = cornerNames(laid, edges);
  const drawn = edges.flatMap(({ name, stretches: [only, ...others], stretches }) =>
    only && others.length === 0
      ? [stretchLine(name, only, corner, place)]
      : [
          ...stretches.map((stretch, i) => stretchLine(partName(name, i), stretch, corner, place)),
          `join ${name} = ${stretches.map((_, i) => partName(name, i)).join(", ")}`,
        ],
  );
  const allowed = byWidth(piece, edges);
  return [
    `piece ${piece.name} {`,
    ...[
      `# traced from paper: the points lie on the ${piece.line} line`,
      ...[...corner].map(([index, name]) => `point ${name} = ${place(laid[index]!.at)}`),
      ...drawn,
      `outline ${edges.map(({ name }) => name).join(", ")}`,
      ...(piece.line === "cutting"
        ? allowed.flatMap(({ width, names }) => (width > 0 ? [`strip ${names.join(", ")} by ${write(width)}`] : []))
        : []),
      ...edges.flatMap(({ isFold, name }) => (isFold ? [`mark ${name} as fold`] : [])),
      grainLine(piece, laid, edges, place),
      ...allowed.map(({ width, names }) => `allow ${names.join(", ")} by ${write(width)}`),
    ].map((line) => `  ${line}`),
    "}",
  ].join("\n");
};

/** The whole recipe of a piece that lies on the table alone. */
export const recipeText = (piece: TracedPiece): string => {
  const title = piece.name.replaceAll("-", " ");
  return `chalkline 1
recipe "${title.charAt(0).toUpperCase()}${title.slice(1)}, from paper"
units ${piece.units}

${pieceText(piece)}
`;
};

// Two points nearer to one another than this, mm, are a slip of the hand: no curve is drawn through both.
const oneSpot = 0.2;

const outlineFaults = ({ outline }: TracedPiece): Fault[] => {
  if (outline.length < 3)
    return [{ part: "outline", words: `An outline needs 3 points or more, and ${outline.length} of them are set.` }];
  const doubled = outline.findIndex(({ at }, i) => distance(at, outline.at(i - 1)!.at) < oneSpot);
  if (doubled >= 0) {
    const other = doubled === 0 ? outline.length : doubled;
    const words = `Points ${other} and ${doubled + 1} lie on one spot: take one of them away.`;
    return [{ part: "outline", words, spot: outline[doubled]!.at }];
  }
  const stretches = stretchesOf(outline);
  const [crossing] = selfCrossingsOfLoop(loopOf(stretches));
  return crossing ? [{ part: "outline", words: crossingWords(stretches), spot: crossing.point }] : [];
};

const crossingWords = (stretches: readonly Stretch[]): string =>
  `The outline crosses itself where the ring is: ${stretches.length === 1 ? "move" : "put its points in turn, or move"} a point there.`;

const edgeFaults = (piece: TracedPiece): Fault[] => {
  const fault = (words: string): Fault => ({ part: "edges", words });
  const edges = tracedEdges(piece.outline);
  const faults: Fault[] = [];
  const seen = new Set<string>();
  for (const { name } of edges) {
    const unfit = nameFault(name);
    if (unfit !== undefined) faults.push(fault(unfit));
    else if (seen.has(name))
      faults.push(fault(`Two edges apart from one another are called ${name}; only neighbours can be one edge.`));
    seen.add(name);
  }
  if (edges.filter(({ isFold }) => isFold).length > 1)
    faults.push(fault("Two edges are said to be the fold; a piece traced from paper has one."));
  if (lengthWritten(piece.allowance, piece.units) === undefined)
    faults.push(fault("Write how wide the allowance is: a length, or 0 for none."));
  for (const { name, allowance } of edges) {
    if (allowance !== "" && lengthWritten(allowance, piece.units) === undefined)
      faults.push(fault(`The allowance of ${name} is no length: “${allowance}”.`));
  }
  return faults;
};

const recipeFaults = ({ name }: TracedPiece): Fault[] => {
  const unfit = nameFault(name);
  return unfit === undefined ? [] : [{ part: "recipe", words: unfit }];
};

/** The outline laid at the top left of the table, turned by the smallest turn that lets its grain run straight down. */
const laidStraight = (piece: TracedPiece): TracedPoint[] => {
  const along = grainEdge(piece, tracedEdges(piece.outline));
  const turn = along === undefined ? 0 : turnUpright(along);
  const about = { x: 0, y: 0 };
  const turned = piece.outline.map((point) => ({ ...point, at: rotated(point.at, about, turn) }));
  const { left, top } = bounds(stretchesOf(turned).map(({ path }) => path));
  return turned.map((point) => ({ ...point, at: minus(point.at, { x: left, y: top }) }));
};

const grainEdge = ({ grainAlong }: TracedPiece, edges: readonly TracedEdge[]): TracedEdge | undefined =>
  edges.find(({ isFold }) => isFold) ?? edges.find(({ name, isStraight }) => isStraight && name === grainAlong);

const turnUpright = ({ stretches }: TracedEdge): number => {
  const [start, end] = stretches[0]!.points;
  const angle = angleOf(minus(end!, start!));
  return (angle > 0 ? Math.PI / 2 : -Math.PI / 2) - angle;
};

const grainLine = (
  piece: TracedPiece,
  laid: readonly TracedPoint[],
  edges: readonly TracedEdge[],
  place: (p: Point) => string,
): string => {
  const along = grainEdge(piece, edges);
  if (along) return `grain along ${along.name}`;
  const loop = loopOf(stretchesOf(laid));
  const { left, right, top } = bounds([loop]);
  const down = crossingsWithRay(loop, { x: (left + right) / 2, y: top - 1 }, { x: 0, y: 1 }).map(({ point }) => point);
  // Of the stretches of the middle line inside the piece the longest, and of that what lies well inside.
  const inside = down.flatMap((from, i) => (i % 2 === 0 && down[i + 1] ? [{ from, to: down[i + 1]! }] : []));
  const longest = inside.reduce(
    (best, each) => (each.to.y - each.from.y > best.to.y - best.from.y ? each : best),
    inside[0] ?? { from: laid[0]!.at, to: laid[1]!.at },
  );
  const at = (share: number): Point => ({
    x: longest.from.x + (longest.to.x - longest.from.x) * share,
    y: longest.from.y + (longest.to.y - longest.from.y) * share,
  });
  return `grain ${place(at(0.2))} to ${place(at(0.8))}`;
};

/** The corners by their place in the outline, named in order of the edges that begin at them, by names that no edge has. */
const cornerNames = (laid: readonly TracedPoint[], edges: readonly TracedEdge[]): Map<number, string> => {
  const taken = new Set(edges.map(({ name }) => name));
  const stem = [...taken].some((name) => /^corner-\d+$/.test(name)) ? "traced-corner" : "corner";
  const starts = edges.flatMap(({ stretches }) => stretches.map(({ index }) => index)).sort((a, b) => a - b);
  return new Map(starts.filter((index) => laid[index]).map((index, i) => [index, `${stem}-${i + 1}`]));
};

const partName = (edge: string, index: number): string => `${edge}-part-${index + 1}`;

const stretchLine = (
  name: string,
  { index, points, isStraight, heading }: Stretch,
  corner: ReadonlyMap<number, string>,
  place: (p: Point) => string,
): string => {
  const starts = [...corner.keys()];
  const from = corner.get(index)!;
  const to = corner.get(starts[(starts.indexOf(index) + 1) % starts.length]!)!;
  if (isStraight) return `line ${name} = ${from} to ${to}`;
  const angle = heading === undefined ? "" : `${plainNumber(toDegrees(heading), 1)} deg`;
  const ends = angle === "" ? "" : ` leaving ${angle} arriving ${angle}`;
  return `curve ${name} = ${from} to ${to} through ${points.slice(1, -1).map(place).join(", ")}${ends}`;
};

/** The edges that are sewn, those of one width together; a fold has no allowance. */
const byWidth = (piece: TracedPiece, edges: readonly TracedEdge[]): { width: number; names: string[] }[] => {
  const found: { width: number; names: string[] }[] = [];
  for (const { name, isFold, allowance } of edges) {
    if (isFold) continue;
    const width = lengthWritten(allowance === "" ? piece.allowance : allowance, piece.units) ?? 0;
    const alike = found.find((each) => each.width === width);
    if (alike) alike.names.push(name);
    else found.push({ width, names: [name] });
  }
  return found;
};

// A tenth of a millimetre, and a little less in inches: nobody sets a point more exactly than that.
const decimals = new Map<PaperUnits, number>([
  ["cm", 2],
  ["in", 3],
]);

const inUnits =
  (units: PaperUnits) =>
  (millimetres: number): string => {
    const number = plainNumber(millimetres / millimetresIn.get(units)!, decimals.get(units)!);
    return number === "0" ? "0" : `${number} ${units}`;
  };
