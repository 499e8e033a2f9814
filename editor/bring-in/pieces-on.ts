// The pieces on a sheet: which closed lines are outlines, and what of all else belongs to which of them.
import type { Path } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { drawnOnce } from "./chained.ts";
import { atEdge, clusters, farFromEdge, middleOf, PiecesInHand } from "./marks-on-pieces.ts";
import { outlinesOn } from "./outlines-on.ts";
import type { DrawnLine, DrawnSpot, LeftOut, Meaning, Sheet } from "./sheet.ts";

/** One piece as it was drawn, mm, where it lay on the sheet. */
export interface PieceOnSheet {
  readonly called: string | undefined;
  /** Which line the file says this is; undefined where it says nothing. */
  readonly along: "cutting" | "sewing" | undefined;
  /** Closed, clockwise on the page. */
  readonly outline: Path;
  /** The cutting line that was drawn round a sewing line; undefined where there is none, or it is the outline itself. */
  readonly cutting: Path | undefined;
  /** The straight lines that lie on the fold of the cloth. */
  readonly folds: readonly Path[];
  readonly inner: readonly Path[];
  readonly notches: readonly Point[];
  readonly drills: readonly Point[];
  readonly grain: { readonly from: Point; readonly to: Point } | undefined;
  readonly words: readonly { readonly text: string; readonly at: Point }[];
  /** What the file says of the piece: how many, of which cloth. */
  readonly remarks: readonly string[];
  /** Corners and points of a curve, as far as the file names them. */
  readonly spots: readonly DrawnSpot[];
}

/** Which of two told lines becomes the outline. */
export type OutlineLine = "cutting" | "sewing";

/** The pieces in the order in which they were drawn, and what belongs to none of them. */
export const piecesOn = (
  sheet: Sheet,
  along: OutlineLine,
): {
  readonly pieces: readonly PieceOnSheet[];
  readonly leftOut: readonly LeftOut[];
  readonly notes: readonly string[];
} => {
  const { once, twice } = drawnOnce(sheet.lines);
  const told = (means: Meaning): DrawnLine[] => once.filter((each) => each.means === means);
  const found = outlinesOn(once, sheet, along);
  const inHand = new PiecesInHand(found.outlines);
  const other = along === "cutting" ? "sewing" : "cutting";
  for (const { at, chain } of found.joints)
    inHand.spot({ at, means: "turn", group: chain.group, called: undefined, line: chain.line });
  for (const chain of found.rest) {
    if (along === "sewing" && chain.means === "cutting" && inHand.cutting(chain)) continue;
    if (chain.means === other) inHand.leaveOut(`${other} lines (--line ${other} makes them the outline)`, chain.line);
    else inHand.inner(chain);
  }
  for (const each of told("grain")) inHand.grain(each);
  for (const each of told("notch")) inHand.notchStroke(each, found.isBoth ? farFromEdge : atEdge);
  for (const each of sheet.spots) inHand.spot(each);
  for (const cluster of clusters(told("drill"))) inHand.drill(middleOf(cluster), cluster[0]!);
  for (const each of sheet.words) inHand.words(each);
  const notes =
    twice > 0 ? [`${twice === 1 ? "1 line was" : `${twice} lines were`} drawn twice, and counted once.`] : [];
  return { pieces: inHand.pieces(told("fold")), leftOut: inHand.leftOut(), notes };
};
