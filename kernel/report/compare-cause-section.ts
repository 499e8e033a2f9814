// Edited lines as a section: each with what it was, and what taking it back alone would undo.
import type { Cause, Fact } from "../compare/comparison.ts";
import { factsOf } from "../compare/facts-of.ts";
import { listed, plainly, type Review, type Section } from "./compare-told.ts";
import { counted } from "./verdict.ts";

/** The section of all causes. */
export const causeSection = ({ causes, comparison }: Review): Section => {
  const all = factsOf(comparison).length;
  return {
    heading: "Edited lines, and what taking each one back would undo",
    remark: "",
    rows: [],
    sentences: [
      ...causes.causes.flatMap((cause): Section["sentences"] => [
        { text: `${cause.file}:${cause.line}: ${cause.text === "" ? "taken out" : cause.text}`, tone: "strong" },
        plainly(cause.was === "" ? "was not there" : `was: ${cause.was}`),
        plainly(effectOf(cause, all)),
      ]),
      ...(causes.untried === 0
        ? []
        : [plainly(`${counted(causes.untried, "more edit")} not tried: this many are read as one.`)]),
    ],
  };
};

const effectOf = ({ undoes, eases, isBound }: Cause, all: number): string => {
  if (isBound && undoes.length + eases.length === 0) return "cannot be taken back alone: the recipe would not work";
  const most = (facts: readonly Fact[]): string =>
    listed(facts.filter(({ kind }) => kind !== "value").map(factInWords));
  const undone = undoes.length === 0 ? [] : [`undoes ${undoes.length} of ${counted(all, "change")}: ${most(undoes)}`];
  const eased = eases.length === 0 ? [] : [`makes less of ${eases.length}: ${most(eases)}`];
  return `${isBound ? "taken back together, as none can be alone: " : ""}${[...undone, ...eased].join("; ")}`;
};

const factInWords = ({ kind, name }: Fact): string => {
  if (kind === "edge" || kind === "check" || kind === "piece") return name;
  if (kind === "area") return `the cloth of ${name}`;
  if (kind !== "mark") return `${kind} ${name}`;
  // A mark is told as "sleeve allowance wrist": its piece, what it is, and what it lies on.
  const allowance = /^(\S+) allowance (\S+)$/.exec(name);
  return allowance ? `the allowance of ${allowance[1]}.${allowance[2]}` : name.replace(" ", ": ");
};
