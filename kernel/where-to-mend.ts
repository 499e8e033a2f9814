// Which line of which recipe a finding about a part of a piece should point at.
import type { Where } from "../grammar/diagnostic.ts";
import type { Piece } from "./working.ts";

/** The line that drew the part; where that stands in another recipe, which others may use too, the piece's own line. */
export const whereToMend = (piece: Piece, part: { readonly drawnBy: Where }): Where =>
  part.drawnBy.file === piece.drawnBy.file ? part.drawnBy : piece.drawnBy;
