// The hem of one piece as the formula hangs it, worked out once a piece: what is found out about a hang is read off this.
import type { Hang, Piece } from "../../working.ts";
import { columnsByFormula } from "./columns.ts";
import { coarse, hangerOf, stationsOf } from "./hanger.ts";
import { type HungPlace, type Slack, slackAlong, withoutGaps } from "./slack.ts";
import type { Holding } from "./supports.ts";

export interface HungHem {
  /** The piece as it hangs: a facing that is folded back is gone. */
  readonly piece: Piece;
  readonly holding: Holding;
  /** Along the hem in outline order. */
  readonly hem: Slack;
  /** From what holds it down to each place of the hem. */
  readonly columns: readonly (readonly HungPlace[])[];
}

/** The hem of a piece as it hangs; undefined where it has no one hem that hangs from something. */
export const hungHem = (piece: Piece, hang?: Hang): HungHem | undefined => {
  const known = made.get(piece);
  if (known && known.hang === hang) return known.hung;
  const hung = hungHemOf(piece, hang);
  made.set(piece, { hang, hung });
  return hung;
};

/** The hem of the piece that this one was copied from, which need not have called it a hem yet. */
export const hungBefore = ({ piece, holding }: HungHem, hang?: Hang): HungHem | undefined => {
  const { source } = piece;
  const edge = source?.edges.get(holding.hem.edge.name);
  if (!source || !edge) return undefined;
  return hungHem(
    edge.role === "hem" ? source : { ...source, edges: new Map(source.edges).set(edge.name, { ...edge, role: "hem" }) },
    hang,
  );
};

// A piece never changes, and several checks ask how it hangs.
const made = new WeakMap<Piece, { readonly hang: Hang | undefined; readonly hung: HungHem | undefined }>();

const hungHemOf = (piece: Piece, hang: Hang | undefined): HungHem | undefined => {
  const hanger = hangerOf(piece, hang);
  if (!hanger) return undefined;
  const stations = stationsOf(hanger, coarse);
  // A hem that nothing of the piece hangs above, as one that lies as high as the waist, has no slack to be found anywhere.
  if (stations.length < 2) return undefined;
  return {
    piece: hanger.piece,
    holding: hanger.holding,
    hem: slackAlong(withoutGaps(stations)),
    columns: columnsByFormula(stations),
  };
};
