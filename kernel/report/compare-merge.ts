// What a merge made that neither of its parents has, as a table and as data.

import type { Comparison } from "../compare/comparison.ts";
import { type MergedFact, mergedFacts } from "../compare/merged.ts";
import type { Units } from "../working.ts";
import type { Told } from "./compare-told.ts";
import { degrees, shortArea, shortLength } from "./compare-words.ts";
import type { Json } from "./json.ts";
import { amount, type Cell, words } from "./table.ts";
import { counted } from "./verdict.ts";

/** A merge of one recipe: what changed from each parent to what came of both. */
export interface Merge {
  readonly title: string;
  /** How the parents and the merged recipe are called. */
  readonly one: string;
  readonly other: string;
  readonly merged: string;
  readonly units: Units;
  readonly fromOne: Comparison;
  readonly fromOther: Comparison;
  readonly remarks: readonly string[];
}

/** The merge as it is told. */
export const mergeTold = (merge: Merge): Told => {
  const { title, one, other, merged, units, remarks } = merge;
  const facts = factsOf(merge);
  return {
    title,
    before: `${one}, ${other}`,
    after: merged,
    summary:
      facts.length === 0
        ? "Everything in the merged garment is as one of the two has it."
        : `${counted(facts.length, "fact")} of the merged garment ${facts.length === 1 ? "is" : "are"} as neither of the two has it.`,
    remarks,
    sections:
      facts.length === 0
        ? []
        : [
            {
              heading: "As neither has it",
              remark: "",
              rows: [
                ["what", "in the one", "in the other", "merged"].map((text) => words(text, "quiet")),
                ...facts.map((fact) => [
                  words(factName(fact)),
                  ...[fact.one, fact.other, fact.merged].map((value) => cellOf(value, fact, units)),
                ]),
              ],
              sentences: [],
            },
          ],
  };
};

/** The merge as data, in mm, square mm and degrees. */
export const mergeJson = (merge: Merge): Json => ({
  schema: 1,
  title: merge.title,
  one: merge.one,
  other: merge.other,
  merged: merge.merged,
  facts: factsOf(merge).map(({ kind, name, one, other, merged }) => ({ kind, name, one, other, merged })),
  remarks: merge.remarks,
});

const factsOf = ({ fromOne, fromOther }: Merge): MergedFact[] => mergedFacts(fromOne, fromOther);

const factName = ({ kind, name }: MergedFact): string =>
  kind === "edge" || kind === "mark" ? name : kind === "area" ? `cloth of ${name}` : `${kind} ${name}`;

const cellOf = (value: number | string | null, { kind, measures }: MergedFact, units: Units): Cell => {
  if (value === null) return words("none", "quiet");
  if (typeof value === "string") return words(value);
  if (measures === "area") return amount(shortArea(value, units));
  if (measures === "angle") return amount(degrees(value));
  return amount(kind === "seam" ? `${shortLength(value, units)} longer` : shortLength(value, units));
};
