// For whoever carries everything on a piece: what becomes of a field that is new to Piece is asked for by the compiler.
import type { Piece } from "../working.ts";

/** Every field of a piece but those that are named because they stay, or are seen to elsewhere in the same file. */
export type AllBut<Stays extends keyof Piece> = Required<Omit<Piece, Stays>>;
