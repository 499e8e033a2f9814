// Runs the checks over a finished garment, and lays the recipe's acceptances over what they found.
import type { Diagnostic } from "../grammar/diagnostic.ts";
import type { Check } from "./check.ts";
import { endOf, startOf } from "./geometry/path.ts";
import { type Point, sameSpot } from "./geometry/point.ts";
import type { Acceptance, Garment, Judged, Judgement, Piece } from "./working.ts";

/** Everything the checks judged, in their order, with what the recipe accepts; then the acceptances that waived nothing. */
export const inspect = (garment: Garment, checks: readonly Check[]): Judged[] => {
  const used = new Set<Acceptance>();
  const waivers = garment.accepts.map((acceptance) => waiverOf(acceptance, garment));
  const judged = checks.flatMap((check) =>
    [...check.judge(garment)].map((judgement) => weighed(judgement, check, waivers, used)),
  );
  const unused = garment.accepts.filter((acceptance) => !used.has(acceptance) && !isDoubtful(acceptance, garment));
  return [...judged, ...unused.map((acceptance) => waivesNothing(acceptance, judged))];
};

/** What of it the pattern maker must see: one finding for each warning and each error. */
export const findingsFrom = (judged: readonly Judged[]): Diagnostic[] =>
  judged.flatMap(({ check, verdict, where, message, hint, related }) =>
    verdict === "warning" || verdict === "error"
      ? [{ code: check, severity: verdict, where, message, ...(hint && { hint }), ...(related && { related }) }]
      : [],
  );

/** An acceptance with the spot it names, where it names a place and not a piece or an edge. */
interface Waiver {
  readonly acceptance: Acceptance;
  readonly spot?: { readonly piece: Piece; readonly point: Point };
}

const waiverOf = (acceptance: Acceptance, garment: Garment): Waiver => {
  const piece = garment.pieces.get(pieceOf(acceptance.on));
  const point = piece?.places.get(acceptance.on.slice(pieceOf(acceptance.on).length + 1))?.point;
  return piece && point ? { acceptance, spot: { piece, point } } : { acceptance };
};

const weighed = (judgement: Judgement, check: Check, waivers: readonly Waiver[], used: Set<Acceptance>): Judged => {
  const found: Judged = { ...judgement, check: check.name };
  if (judgement.verdict === "pass") return found;
  const edges = namesIn(judgement.on);
  const fitting = waivers.filter(
    (waiver) => waiver.acceptance.check === check.name && concerns(waiver, judgement.on, edges),
  );
  const [first] = fitting;
  if (first === undefined) return found;
  for (const { acceptance } of fitting) used.add(acceptance);
  return { ...found, verdict: "accepted", because: first.acceptance.because };
};

// An acceptance names the whole thing judged, one edge of it, the piece if no other piece is concerned, or the place where
// the edges judged meet.
const concerns = ({ acceptance: { on }, spot }: Waiver, judged: string, edges: readonly string[]): boolean => {
  if (on === judged || edges.includes(on)) return true;
  if (spot) return meetThere(edges, spot.piece, spot.point);
  return edges.every((edge) => edge === on || edge.startsWith(`${on}.`));
};

// "front.hem with back.hem at front.side" names three edges.
const namesIn = (judged: string): string[] => judged.split(/ with | at |, /);

// "front.hem" belongs to front; "front" is the piece itself.
const pieceOf = (name: string): string => (name.includes(".") ? name.slice(0, name.lastIndexOf(".")) : name);

const meetThere = (edges: readonly string[], piece: Piece, point: Point): boolean => {
  const own = edges.filter((edge) => edge.startsWith(`${piece.name}.`));
  const endsThere = (edge: string): boolean => {
    const path = piece.edges.get(edge.slice(piece.name.length + 1))?.path;
    return path !== undefined && (sameSpot(startOf(path), point) || sameSpot(endOf(path), point));
  };
  return own.length > 1 && own.every(endsThere);
};

// Of a piece with a failed line nothing is judged, so nothing there can be waived either.
const isDoubtful = ({ on }: Acceptance, garment: Garment): boolean =>
  namesIn(on).some((name) => garment.pieces.get(pieceOf(name))?.doubtful);

// That the check exists was settled when the line was read.
const waivesNothing = ({ check, on, drawnBy }: Acceptance, judged: readonly Judged[]): Judged => {
  const still = judged.find((each) => each.check === check && each.verdict !== "pass" && each.verdict !== "accepted");
  return {
    check: "accept-unused",
    on,
    verdict: "warning",
    found: 0,
    wanted: 1,
    where: drawnBy,
    message: `This line waives ${check} on ${on}, but there is nothing to waive.`,
    hint: still
      ? `Take it out, or write \`on ${namesIn(still.on)[0]}\`, where the check does find something.`
      : "Take it out.",
  };
};
