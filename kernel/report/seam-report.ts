// The seams of a garment as a table, two rows a seam: what is sewn, and what to.
import type { Outcome } from "../kernel.ts";
import { lengthIn } from "../units.ts";
import type { Units, Verdict } from "../working.ts";
import { differenceIn } from "./amounts.ts";
import { type MeasuredSeam, measuredSeams } from "./measured-seam.ts";
import { type SaidLine, strong, type Tone } from "./said.ts";
import { aligned, amount, type Cell, empty, words } from "./table.ts";

/** The heading and the table; nothing where nothing is sewn. */
export const seamReport = (outcome: Outcome): SaidLine[] => {
  const seams = measuredSeams(outcome);
  if (seams.length === 0) return [];
  const head = ["sewn together", "length", "longer by", "ease", "verdict"].map((text) => words(text, "quiet"));
  return [[strong("Seams")], ...aligned([head, ...seams.flatMap((seam) => rowsOf(seam, outcome.garment.units))])];
};

const rowsOf = (
  { first, second, firstLength, secondLength, difference, ease, verdict }: MeasuredSeam,
  units: Units,
): Cell[][] => {
  const told = verdictInWords(verdict);
  return [
    [words(first.join(", ")), amount(lengthIn(firstLength, units))],
    [
      words(`  with ${second.join(", ")}`),
      amount(lengthIn(secondLength, units)),
      amount(differenceIn(difference, units)),
      ease === 0 ? empty : amount(lengthIn(ease, units)),
      told,
    ],
  ];
};

const verdictInWords = (verdict: Verdict | undefined): Cell => {
  const [text, tone]: readonly [string, Tone] =
    verdict === undefined
      ? ["not judged", "quiet"]
      : verdict === "pass"
        ? ["fits", "good"]
        : verdict === "accepted"
          ? ["accepted", "warning"]
          : ["does not fit", "bad"];
  return words(text, tone);
};
