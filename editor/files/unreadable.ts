// Why a file is not there to be read, in words.
import type { Unreadable } from "../../kernel/sources.ts";

/** A reason under its code, with what to try. */
export const unreadable = (code: string, message: string, more: { readonly hint?: string } = {}): Unreadable => ({
  problem: { code, message, ...more },
});
