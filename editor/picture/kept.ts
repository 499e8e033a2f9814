// Keeps on the table what a broken line took away: of a piece that is missing or doubtful now, the last good drawing stays.
import type { Picture, PictureOfPiece } from "./picture.ts";

/** The latest picture, with the last good drawing in place of each piece that a failed line spoiled. */
export const keptPicture = (latest: Picture, before: Picture | undefined): Picture => {
  if (latest.complete || !before) return latest;
  const good = new Map(
    before.pieces.filter((piece) => piece.kept || !isSpoiled(piece)).map((piece) => [piece.name, piece]),
  );
  const now = latest.pieces.map((piece) => (isSpoiled(piece) ? (asLeft(good.get(piece.name)) ?? piece) : piece));
  const there = new Set(now.map(({ name }) => name));
  const gone = [...good.values()].filter(({ name }) => !there.has(name));
  return { ...latest, pieces: [...now, ...gone.map((piece) => ({ ...piece, kept }))] };
};

const kept = true as const;

const isSpoiled = ({ doubtful, shape }: PictureOfPiece): boolean => doubtful || shape === "";

const asLeft = (piece: PictureOfPiece | undefined): PictureOfPiece | undefined => piece && { ...piece, kept };
