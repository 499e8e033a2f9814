// What `hang --json` prints: every hem as it hangs, in mm. Fields are only ever added; anything else makes a new schema number.
import type { Hung, HungPiece } from "../cloth/hang/hung.ts";
import type { Point } from "../geometry/point.ts";
import type { Json } from "./json.ts";

const schema = 1;

/** A hung garment as JSON data. */
export const hangJson = ({ pieces, assumptions }: Hung): Json => ({ schema, pieces: pieces.map(pieceOf), assumptions });

const pieceOf = ({ name, hem, folds, settled, warnings }: HungPiece): Json => ({
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
  folds: { wavelength: folds.wavelength, count: folds.count, depth: folds.depth },
});

const spot = ({ x, y }: Point): readonly number[] => [x, y];
