// Seams that changed as a section: two rows a seam, and whether it fits still, again, or no longer.
import type { ChangedSeam, SeamFit } from "../compare/comparison.ts";
import type { Units } from "../working.ts";
import { headOf, type Review, type Section } from "./compare-told.ts";
import { shortLength } from "./compare-words.ts";
import { amount, type Cell, words } from "./table.ts";

/** Whether nothing is wrong with a seam. */
export const fits = ({ verdict }: SeamFit): boolean => verdict === "pass" || verdict === "accepted";

/** The section of all seams that changed. */
export const seamSection = ({ comparison: { seams }, units }: Review): Section => ({
  heading: "Seams",
  remark: "",
  rows:
    seams.length === 0
      ? []
      : [
          headOf("sewn together", "before", "after", "longer by", "fit"),
          ...seams.flatMap((seam) => seamRows(seam, units)),
        ],
  sentences: [],
});

const seamRows = ({ name, before, after }: ChangedSeam, units: Units): Cell[][] => {
  const [first, second] = name.split(" with ") as [string, string];
  const length = (fit: SeamFit | null, which: "firstLength" | "secondLength"): Cell =>
    fit ? amount(shortLength(fit[which], units)) : words("none", "quiet");
  return [
    [words(first), length(before, "firstLength"), length(after, "firstLength")],
    [
      words(`  with ${second}`),
      length(before, "secondLength"),
      length(after, "secondLength"),
      longerBy(before, after, units),
      fitInWords(before, after),
    ],
  ];
};

/** By how much the first list is longer: "2.5 cm", or "0 to 0.3 cm" where that changed. */
const longerBy = (before: SeamFit | null, after: SeamFit | null, units: Units): Cell => {
  const [was, is] = [before, after].map((fit) => (fit ? shortLength(fit.difference, units) : undefined));
  if (was !== undefined && is !== undefined && was !== is) return words(`${was} to ${is}`);
  return words(is ?? was ?? "");
};

const fitInWords = (before: SeamFit | null, after: SeamFit | null): Cell => {
  if (!after) return words("no longer sewn", "warning");
  const now = fits(after);
  if (!before) return now ? words("new, fits", "good") : words("new, does not fit", "bad");
  if (fits(before)) return now ? words("still fits", "good") : words("no longer fits", "bad");
  return now ? words("fits now", "good") : words("does not fit, as before", "warning");
};
