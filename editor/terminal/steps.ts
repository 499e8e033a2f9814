// chalkline steps: the reference, whole or for one name.
import { didYouMean } from "../../grammar/nearest.ts";
import { known } from "./known.ts";
import type { Paper } from "./paper.ts";
import { referenceFor, referenceList, referenceNames } from "./reference.ts";
import { exitCode, refusal } from "./told.ts";

/** Prints the list of all names, or the entry of one. */
export const steps = (name: string | undefined, out: Paper, err: Paper): number => {
  if (name === undefined) {
    out.say(referenceList(known, out.width));
    return exitCode.clean;
  }
  const entry = referenceFor(name, known, out.width);
  if (entry.length === 0) {
    err.say(
      refusal(
        `There is no step, statement, function or check called ${name}.`,
        didYouMean(name, referenceNames(known)) ?? "chalkline steps lists them all.",
      ),
    );
    return exitCode.unreadable;
  }
  out.say(entry);
  return exitCode.clean;
};
