// Whether two workings of a recipe come to the same garment: what a change that only rewrites the text is held to.
import type { Path } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import type { Piece } from "../../kernel/working.ts";

// The last digits of a sum may differ where a value is worked out in another order.
const rounding = 1e-9;

/** What came of a change that should have changed nothing, in words; undefined where the garment is the same. */
export const whatChanged = (before: Outcome, after: Outcome): string | undefined => {
  if (isSameGarment(before, after)) return undefined;
  const known = new Set(before.findings.map(({ code, message }) => `${code} ${message}`));
  const finding = after.findings.find(({ code, message }) => !known.has(`${code} ${message}`));
  return finding?.message ?? `${after.tree.file} would no longer come to the same garment.`;
};

/** Whether the pieces are the same, whatever they and their parts are called, and the same things are said of them. */
export const isSameGarment = (before: Outcome, after: Outcome): boolean => {
  const [old, now] = [[...before.garment.pieces.values()], [...after.garment.pieces.values()]];
  const { seams, cuts, accepts } = before.garment;
  return (
    codesOf(before) === codesOf(after) &&
    before.untold === after.untold &&
    seams.length === after.garment.seams.length &&
    cuts.length === after.garment.cuts.length &&
    accepts.length === after.garment.accepts.length &&
    old.length === now.length &&
    old.every((piece, index) => isSamePiece(piece, now[index]!))
  );
};

/** Everything that is said, by what it is about. */
const codesOf = ({ findings }: Outcome): string =>
  findings
    .map(({ code, where }) => `${where.file} ${code}`)
    .sort()
    .join("\n");

const isSamePiece = (before: Piece, after: Piece): boolean =>
  before.outline.length === after.outline.length &&
  before.darts.size === after.darts.size &&
  before.notches.length === after.notches.length &&
  before.allowances.size === after.allowances.size &&
  before.outline.every(({ edge, turned }, index) => {
    const other = after.outline[index]!;
    const [old, now] = [before.edges.get(edge), after.edges.get(other.edge)];
    return turned === other.turned && old !== undefined && now !== undefined && isSamePath(old.path, now.path);
  });

const isSamePath = (before: Path, after: Path): boolean => {
  const [old, now] = [pointsOf(before), pointsOf(after)];
  return old.length === now.length && old.every((point, index) => isNear(point, now[index]!));
};

const pointsOf = (path: Path): Point[] =>
  path.flatMap((span) =>
    span.kind === "line" ? [span.start, span.end] : [span.start, span.startHandle, span.endHandle, span.end],
  );

const isNear = (a: Point, b: Point): boolean => Math.abs(a.x - b.x) <= rounding && Math.abs(a.y - b.y) <= rounding;
