// What `hang --json` prints: every hem as it hangs, in mm. Fields are only ever added; anything else makes a new schema number.
import type { HangFindings } from "../cloth/hang/hang-findings.ts";
import type { HungRound } from "../cloth/hang/hang-sheet.ts";
import type { Hung, HungPiece } from "../cloth/hang/hung.ts";
import type { Point } from "../geometry/point.ts";
import { hangFindingsJson } from "./hang-findings-json.ts";
import type { Json } from "./json.ts";

const schema = 1;

/** A hung garment as JSON data; `folds` are those of the first round that has any. */
export const hangJson = ({ pieces, assumptions }: Hung, rounds: readonly HungRound[], findings: HangFindings): Json => {
  const first = rounds.find(({ figures }) => figures.some(({ folds }) => folds > 0)) ?? rounds[0];
  return {
    schema,
    pieces: pieces.map((piece) => pieceOf(piece, deepestOver(piece.name, rounds))),
    folds: first ? foldsOf(first) : null,
    rounds: rounds.map((each) => ({
      pieces: [...new Set(each.round.turns.map(({ piece }) => piece))],
      around: each.round.around,
      folds: foldsOf(each),
    })),
    findings: hangFindingsJson(findings),
    assumptions,
  };
};

/** The hem all round as it is seen from below: how long a fold is, how many there are, and the line itself. */
const foldsOf = ({ round, figures }: HungRound): Json => {
  const below = figures.find(({ from }) => from === "below");
  const hem = below?.shapes.flatMap((shape) => (shape.kind === "rim" ? [shape.along] : []))[0];
  return {
    wavelength: round.wavelength,
    count: below?.folds ?? 0,
    width: below?.width ?? null,
    hipWidth: below?.hipWidth ?? null,
    crests: below?.crests.map(({ at, depth, piece }) => ({ at: spot(at), depth, piece })) ?? [],
    plan: hem?.map(spot) ?? [],
  };
};

/** The depth of the deepest fold that is drawn in the round of a piece, mm; null where it goes round nothing. */
const deepestOver = (name: string, rounds: readonly HungRound[]): number | null => {
  const own = rounds.find(({ round }) => round.turns.some(({ piece }) => piece === name));
  return own ? Math.max(0, ...own.figures.flatMap(({ crests }) => crests.map(({ depth }) => depth))) : null;
};

const pieceOf = ({ name, hem, folds, settled, warnings }: HungPiece, depth: number | null): Json => ({
  name,
  hem: {
    flat: hem.flat,
    hung: hem.hung,
    slack: hem.slack,
    slackCentre: spot(hem.center),
    points: hem.places.map(({ flat, hung, slack }) => ({ flat: spot(flat), hung: spot(hung), slack })),
  },
  stretch: settled?.stretch ?? null,
  steps: settled?.steps ?? null,
  converged: settled?.converged ?? null,
  warnings,
  folds: { wavelength: folds.wavelength, count: folds.count, depth },
});

const spot = ({ x, y }: Point): readonly number[] => [x, y];
