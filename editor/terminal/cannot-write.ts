// Why a file could not be written, in a sentence; any other fault is the program's own and is passed on.
import { NotSaved, PartlySaved } from "../files/not-saved.ts";
import { whyRefused } from "../files/why-refused.ts";

/** The sentence for an error of saving; `path` is what is said where the error names no file. */
export const cannotWrite = (error: unknown, path: string): string => {
  const why = whyRefused(error);
  if (why === undefined) throw error;
  const cause = error instanceof PartlySaved ? error.cause : error;
  const refused = cause instanceof NotSaved ? cause.path : path;
  const rest =
    error instanceof PartlySaved
      ? `Before that ${error.saved.join(", ")} ${error.saved.length === 1 ? "was" : "were"} saved.`
      : "Nothing there was changed.";
  return `${refused} cannot be written: ${why}. ${rest}`;
};
