// The section of a comparison that says how much cloth is needed before and after.
import { boughtInWords } from "../cloth/lay/cloth-in-words.ts";
import type { ClothNeed, ComparedCloth } from "../compare/compare-cloth.ts";
import { lengthIn } from "../units.ts";
import type { Units } from "../working.ts";
import { headOf, type Review, type Section } from "./compare-told.ts";
import { amount, type Cell, words } from "./table.ts";

/** A row a cloth, and why one cannot be cut. */
export const clothSection = ({ cloth = [], units }: Review): Section => ({
  heading: "Cloth to buy",
  remark: cloth.length === 0 ? "" : "by the quick look, opened flat; small differences may be chance",
  rows:
    cloth.length === 0
      ? []
      : [
          headOf("cloth", "before", "after", "pieces take", "then"),
          ...cloth.map(({ fabric, before, after }) => [
            words(fabric),
            bought(before, units),
            bought(after, units),
            taken(before, units),
            taken(after, units),
          ]),
        ],
  sentences: cloth.flatMap(({ before, after }) =>
    (after?.because ?? [])
      .filter((because) => !before?.because.includes(because))
      .map((text) => ({ text, tone: "bad" as const })),
  ),
});

/** "shell takes 1.9 m instead of 1.8 m", for each cloth of which more or less is bought. */
export const clothSummary = ({ cloth = [], units }: Review): string[] =>
  cloth.flatMap(({ fabric, before, after }: ComparedCloth) => {
    const [was, is] = [before?.lengthToBuy ?? null, after?.lengthToBuy ?? null];
    if (was === null || is === null || was === is) return [];
    return [`buy ${boughtInWords(is, units)} of ${fabric} instead of ${boughtInWords(was, units)}`];
  });

const bought = (need: ClothNeed | null, units: Units): Cell => {
  if (need === null) return words("none", "quiet");
  return need.lengthToBuy === null ? words("cannot be cut", "bad") : amount(boughtInWords(need.lengthToBuy, units));
};

const taken = (need: ClothNeed | null, units: Units): Cell =>
  need === null || need.length === null ? words("") : amount(lengthIn(need.length, units));
