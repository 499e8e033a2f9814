// After a merge: what in the merged garment is as neither of the two that were merged has it. Where both sides changed other
// lines, their texts merge without a word, and what comes of both together nobody has seen.
import type { Comparison, Fact } from "./comparison.ts";
import { differs, tellableLength } from "./rounding.ts";

/** A fact that differs from both parents, with what each of the three has. */
export interface MergedFact extends Fact {
  /** What the numbers are; a fact told in words has text. */
  readonly measures: "length" | "area" | "angle" | "words";
  readonly one: number | string | null;
  readonly other: number | string | null;
  readonly merged: number | string | null;
}

/** The facts that differ from both, given what changed from each parent to the merged garment. */
export const mergedFacts = (fromOne: Comparison, fromOther: Comparison): MergedFact[] => {
  const others = new Map(tellable(fromOther).map((fact) => [keyOf(fact), fact]));
  return tellable(fromOne).flatMap((fact): MergedFact[] => {
    const other = others.get(keyOf(fact));
    if (!other) return [];
    const { kind, name, measures, before, after } = fact;
    return [{ kind, name, measures, one: before, other: other.before, merged: after }];
  });
};

interface Told extends Fact {
  readonly measures: MergedFact["measures"];
  readonly before: number | string | null;
  readonly after: number | string | null;
}

const keyOf = ({ kind, name }: Fact): string => `${kind} ${name}`;

/** Everything of a comparison that has one amount or a few words on either side; checks that began to fail first. */
const tellable = ({ checks, pieces, seams, cuts, values }: Comparison): Told[] => [
  ...checks.began.map(
    ({ check, on, message }): Told => ({
      kind: "check",
      name: on === "" ? check : `${check} on ${on}`,
      measures: "words",
      before: "did not fail",
      after: message,
    }),
  ),
  ...seams.map(
    ({ name, before, after }): Told => ({
      kind: "seam",
      name,
      measures: "length",
      before: before?.difference ?? null,
      after: after?.difference ?? null,
    }),
  ),
  ...pieces.flatMap(({ name, status, edges, marks, area }): Told[] => [
    ...(status === "changed" ? [] : [{ kind: "piece", name, measures: "words", before: null, after: status } as const]),
    // One that is as long as before and only lies elsewhere has no amount to tell.
    ...edges.flatMap(({ name: edge, before, after }): Told[] =>
      differs(before, after, tellableLength)
        ? [{ kind: "edge", name: `${name}.${edge}`, measures: "length", before, after }]
        : [],
    ),
    ...marks.map(
      ({ kind, on, measures, before, after }): Told => ({
        kind: "mark",
        name: `${name} ${kind}${on === "" ? "" : ` ${on}`}`,
        measures,
        before,
        after,
      }),
    ),
    ...(area ? [{ kind: "area", name, measures: "area", before: area.before, after: area.after } as const] : []),
  ]),
  ...cuts.map(({ name, before, after }): Told => ({ kind: "cut", name, measures: "words", before, after })),
  ...values.map(
    ({ name, words }): Told => ({
      kind: "value",
      name,
      measures: "words",
      before: words.before,
      after: words.after,
    }),
  ),
];
