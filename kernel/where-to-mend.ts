// Which line of which recipe a finding about an edge should point at.
import type { Where } from "../grammar/diagnostic.ts";
import type { Edge, Piece } from "./working.ts";

/** The line that drew the edge; where that stands in another recipe, which others may use too, the piece's own line. */
export const whereToMend = (piece: Piece, edge: Edge): Where =>
  edge.drawnBy.file === piece.drawnBy.file ? edge.drawnBy : piece.drawnBy;
