// Which of the lines on a sheet are outlines of pieces: closed ones, told as such or outermost.
import { limits } from "../../grammar/limits.ts";
import { signedArea } from "../../kernel/geometry/area.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { endOf, line, type Path, startOf } from "../../kernel/geometry/path.ts";
import { distance, type Point } from "../../kernel/geometry/point.ts";
import { type Chain, chained, endsMeetWithin } from "./chained.ts";
import { closedAlong } from "./closed-along.ts";
import { drawingLimits } from "./drawing-limits.ts";
import { Inside } from "./inside.ts";
import type { OutlineLine } from "./pieces-on.ts";
import { Refused } from "./refused.ts";
import type { DrawnLine, Meaning, Sheet } from "./sheet.ts";

/** The outlines on a sheet, in the order in which they were drawn, and what is none. */
export interface Outlines {
  readonly outlines: readonly Chain[];
  /** Lines that are no outlines: open ones, and closed ones inside an outline. */
  readonly rest: readonly Chain[];
  /** Spots of outlines at which an edge ends, though the line may run on smoothly. */
  readonly joints: readonly { readonly at: Point; readonly chain: Chain }[];
  /** Whether the file draws cutting and sewing lines. */
  readonly isBoth: boolean;
}

/** The outlines, at least one; a sheet without any, or with more than a recipe may have, is refused. */
export const outlinesOn = (lines: readonly DrawnLine[], sheet: Sheet, along: OutlineLine): Outlines => {
  const told = (means: Meaning | undefined): DrawnLine[] => lines.filter((each) => each.means === means);
  const folds = told("fold");
  const other = along === "cutting" ? "sewing" : "cutting";
  const unwanted = closedOf(told(other), folds);
  const { closed, open, joints } =
    along === "sewing"
      ? filledUp(closedOf(told(along), folds), unwanted.closed)
      : { ...closedOf(told(along), folds), joints: [] };
  const asked = new Inside();
  // A sewing line that closes inside another is a dart, and no piece.
  const isDart = (chain: Chain): boolean =>
    along === "sewing" && closed.some((each) => each !== chain && asked.isInside(each.path, chain.path));
  const wanted = { closed: closed.filter((chain) => !isDart(chain)), open: [...open, ...closed.filter(isDart)] };
  const untold = closedOf(told(undefined), folds);
  const inner = closedOf(told("inner"), []);
  // Lines that are drawn far too small close on one spot, whatever they are told as.
  const small = [...wanted.closed, ...unwanted.closed].filter(({ path }) => isTooSmall(path));
  const outlines: Chain[] = wanted.closed.filter((chain) => !small.includes(chain));
  const rest: Chain[] = [...wanted.open, ...unwanted.open, ...untold.open, ...inner.closed, ...inner.open, ...small];
  // What is told as the other line is an outline too where the piece has no line of the wanted kind.
  for (const chain of unwanted.closed) {
    if (small.includes(chain)) continue;
    const isOther = wanted.closed.some(
      (each) => asked.isRoundAbout(each.path, chain.path) || asked.isRoundAbout(chain.path, each.path),
    );
    (isOther ? rest : outlines).push(chain);
  }
  const byArea = [...untold.closed].sort((a, b) => Math.abs(signedArea(b.path)) - Math.abs(signedArea(a.path)));
  const outermost: Chain[] = [...outlines];
  for (const chain of byArea) {
    const isInner = outermost.some((each) => asked.isInside(each.path, chain.path)) || isTooSmall(chain.path);
    if (!isInner) outermost.push(chain);
    else rest.push(chain);
  }
  if (outermost.length === 0) throw nothingClosed(rest, sheet);
  if (outermost.length > limits.pieces)
    throw new Refused(
      `There are ${outermost.length} closed outlines, and a recipe has at most ${limits.pieces} pieces.`,
    );
  const inOrder = outermost.sort((a, b) => a.line - b.line);
  return { outlines: inOrder, rest, joints, isBoth: wanted.closed.length > 0 && unwanted.closed.length > 0 };
};

/** Sewing lines with those closed that lie open at edges without an allowance, where the cutting line is the sewing line too. */
const filledUp = (
  { closed, open }: { readonly closed: readonly Chain[]; readonly open: readonly Chain[] },
  cutting: readonly Chain[],
): { readonly closed: readonly Chain[]; readonly open: readonly Chain[]; readonly joints: Outlines["joints"] } => {
  const asked = new Inside();
  const bare = cutting.filter((around) => !closed.some((each) => asked.isRoundAbout(around.path, each.path)));
  const filled = bare.flatMap((around) => closedAlong(open, around) ?? []);
  const used = new Set(filled.flatMap(({ of }) => of));
  return {
    closed: [...closed, ...filled.map(({ chain }) => chain)],
    open: open.filter((chain) => !used.has(chain)),
    joints: filled.flatMap(({ chain, joints }) => joints.map((at) => ({ at, chain }))),
  };
};

/** Closed chains, those of one group first, and what stays open; a chain that ends on a fold line is closed along it. */
const closedOf = (lines: readonly DrawnLine[], folds: readonly DrawnLine[]): { closed: Chain[]; open: Chain[] } => {
  const groups = new Map<string, DrawnLine[]>();
  for (const each of lines) {
    const group = groups.get(each.group);
    if (group) group.push(each);
    else groups.set(each.group, [each]);
  }
  const inGroups = [...groups.values()].flatMap((group) => chained(group));
  const all = [
    ...inGroups.filter(({ isClosed }) => isClosed),
    ...chained(inGroups.filter(({ isClosed }) => !isClosed)),
  ];
  if (all.length > drawingLimits.lines) throw new Refused(`There are more than ${drawingLimits.lines} separate lines.`);
  const closed: Chain[] = [];
  const open: Chain[] = [];
  for (const chain of all) {
    if (chain.isClosed) {
      closed.push(chain);
      continue;
    }
    const fold = folds.find(({ path }) => ends(chain.path).every((p) => nearest(path, p).distance <= endsMeetWithin));
    if (fold)
      closed.push({ ...chain, path: [...chain.path, line(endOf(chain.path), startOf(chain.path))], isClosed: true });
    else open.push(chain);
  }
  return { closed, open };
};

const ends = (path: Path): readonly Point[] => [startOf(path), endOf(path)];

// A closed line that lies on less than a square centimetre is a mark and no piece; mm2. Its box is asked and not its area, which
// an outline that crosses itself may have none of.
const smallestPiece = 100;

const isTooSmall = (path: Path): boolean => {
  const { left, top, right, bottom } = bounds([path]);
  return (right - left) * (bottom - top) < smallestPiece;
};

/** What to say where no line is closed: how near the nearest of them comes to it. */
const nothingClosed = (rest: readonly Chain[], { lines, spots, words }: Sheet): Refused => {
  if (lines.length === 0) {
    const others = spots.length + words.length > 0 ? " besides points and texts" : "";
    return new Refused(`There is no line in this drawing that a recipe could hold${others}.`);
  }
  if (rest.some(({ isClosed }) => isClosed))
    return new Refused("No closed line in this drawing is as large as a square centimetre, and a piece is larger.", {
      hint: "Look whether the units are right; --units and --scale change them.",
    });
  const open = rest.filter(({ isClosed, path }) => !isClosed && path.length > 1);
  const nearestEnds = [...open].sort((a, b) => gapOf(a) - gapOf(b))[0];
  if (!nearestEnds) return new Refused("No line in this drawing is closed, so there is no outline to trace.");
  const gap = gapOf(nearestEnds).toFixed(1);
  return new Refused(`No line in this drawing is closed. The one that begins here lacks ${gap} mm between its ends.`, {
    line: nearestEnds.line,
    hint: `Close it in the drawing; ends within ${endsMeetWithin} mm count as meeting.`,
  });
};

const gapOf = ({ path }: Chain): number => distance(startOf(path), endOf(path));
