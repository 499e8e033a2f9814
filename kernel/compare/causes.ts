// Which edited lines cause which changes: each edit alone is taken back, the recipe is worked again, and what then is as it was
// before was caused by that edit.
import type { Outcome } from "../kernel.ts";
import { compareGarments } from "./compare-garments.ts";
import type { Cause, Comparison, Fact } from "./comparison.ts";
import { factsOf, type SizedFact } from "./facts-of.ts";
import { type LineEdit, lineEdits, withoutEdit } from "./line-edits.ts";

/** A recipe's text before and after; what only one side has is empty on the other. */
export interface EditedText {
  readonly file: string;
  readonly before: string;
  readonly after: string;
}

/** Works the recipe of after with another text in place of one of its files. */
export type WorkWith = (file: string, text: string) => Outcome;

export interface Causes {
  /** Edits that caused something by themselves, the one that caused most first. */
  readonly causes: readonly Cause[];
  /** Edits beyond the number that is tried. */
  readonly untried: number;
}

// Each try works the whole recipe; a change that is reviewed seldom has more edits, and of one that has them nobody reads on.
const mostTries = 40;

// And no more than take this many steps together, so that an endless recipe is not worked forty times.
const mostSteps = 40_000;

/** The causes of a comparison among the edits of these texts. */
export const causesOf = (
  comparison: Comparison,
  before: Outcome,
  after: Outcome,
  texts: readonly EditedText[],
  workWith: WorkWith,
): Causes => {
  const facts = factsOf(comparison);
  const edits = texts
    .filter((text) => text.before !== text.after)
    .flatMap((text) => lineEdits(text.before, text.after).map((edit) => ({ ...text, edit })))
    .filter(({ edit }) => isMeant(edit));
  const tried =
    facts.length === 0
      ? []
      : edits.slice(0, Math.min(mostTries, Math.ceil(mostSteps / Math.max(1, after.records.length))));
  const effectOf = (edits: readonly FileEdit[]): Effect => {
    const reverted = workWith(edits[0]!.file, withoutEdits(edits));
    if (reverted.incomplete && !after.incomplete) return { ...noEffect, isBound: true };
    const compared = compareGarments(before, reverted);
    const left = new Map(factsOf(compared).map((fact) => [keyOf(fact), fact.size]));
    const [lengths, lengthsLeft] = [lengthsOf(comparison), lengthsOf(compared)];
    return {
      undoes: facts.filter((fact) => !left.has(keyOf(fact))).map(plain),
      eases: facts.filter((fact) => isEased(fact, left.get(keyOf(fact)))).map(plain),
      shifts: new Map([...lengths].map(([edge, length]) => [edge, length - (lengthsLeft.get(edge) ?? 0)])),
      isBound: false,
    };
  };
  const alone = tried.map((edit) => causeBy([edit], effectOf([edit])));
  const bound = tried.filter((_, index) => alone[index]!.isBound);
  const causes = [...alone.filter(({ isBound }) => !isBound), ...together(bound, effectOf)].filter(
    ({ undoes, eases, isBound }) => isBound || undoes.length + eases.length > 0,
  );
  return {
    causes: causes.sort(
      (a, b) => worthOf(b) - worthOf(a) || (a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line),
    ),
    untried: facts.length === 0 ? 0 : edits.length - tried.length,
  };
};

interface FileEdit {
  readonly file: string;
  /** The whole text with the edit. */
  readonly after: string;
  readonly edit: LineEdit;
}

type Effect = Pick<Cause, "undoes" | "eases" | "shifts" | "isBound">;

const noEffect: Effect = { undoes: [], eases: [], shifts: new Map(), isBound: false };

/** By how much, mm, the length of each edge changed, by "piece.edge". */
const lengthsOf = ({ pieces }: Comparison): ReadonlyMap<string, number> =>
  new Map(
    pieces.flatMap(({ name, edges }) =>
      edges.flatMap((edge): [string, number][] =>
        edge.difference === null ? [] : [[`${name}.${edge.name}`, Math.abs(edge.difference)]],
      ),
    ),
  );

/** The last edit first, so that those before it stay where they are. */
const withoutEdits = (edits: readonly FileEdit[]): string =>
  edits.reduceRight((text, { edit }) => withoutEdit(text, edit), edits[0]!.after);

const causeBy = (edits: readonly FileEdit[], effect: Effect): Cause => ({
  file: edits[0]!.file,
  line: edits[0]!.edit.from,
  text: shownLines(edits.flatMap(({ edit }) => edit.is)),
  was: shownLines(edits.flatMap(({ edit }) => edit.was)),
  ...effect,
});

/** Edits that lean on one another, such as a new name and where it is used, are tried as one, file by file. */
const together = (bound: readonly FileEdit[], effectOf: (edits: readonly FileEdit[]) => Effect): Cause[] =>
  [...new Set(bound.map(({ file }) => file))].flatMap((file) => {
    const edits = bound.filter((each) => each.file === file);
    const effect: Effect = edits.length < 2 ? { ...noEffect, isBound: true } : { ...effectOf(edits), isBound: true };
    const hasEffect = effect.undoes.length + effect.eases.length > 0;
    return hasEffect ? [causeBy(edits, effect)] : edits.map((edit) => causeBy([edit], effect));
  });

/** The cause that takes back most of what an edge's length changed by; where none does, the one that accounts for the edge. */
export const causeOfEdge = (causes: readonly Cause[], edge: string): Cause | undefined => {
  const shift = ({ shifts }: Cause): number => shifts.get(edge) ?? 0;
  const most = causes.reduce<Cause | undefined>(
    (best, each) => (shift(each) > (best ? shift(best) : 0) ? each : best),
    undefined,
  );
  return most ?? causeOf(causes, { kind: "edge", name: edge });
};

/** The cause that accounts for a thing: one that undoes it, else one that eases it. */
export const causeOf = (causes: readonly Cause[], { kind, name }: Fact): Cause | undefined => {
  const isIt = (fact: Fact): boolean => fact.kind === kind && fact.name === name;
  return causes.find(({ undoes }) => undoes.some(isIt)) ?? causes.find(({ eases }) => eases.some(isIt));
};

/** Blank lines and remarks mean nothing to a garment. */
const isMeant = ({ was, is }: LineEdit): boolean => {
  const meant = (lines: readonly string[]): string =>
    lines
      .map((line) => line.trim())
      .filter((line) => line !== "" && !line.startsWith("#"))
      .join("\n");
  return meant(was) !== meant(is);
};

// A change is eased when at least a tenth of it goes; less is the dust that other changes throw up.
const leastEase = 0.1;

const isEased = ({ size }: SizedFact, left: number | undefined): boolean =>
  left !== undefined && left < size * (1 - leastEase);

const worthOf = ({ undoes, eases }: Cause): number => undoes.length * 1000 + eases.length;

const keyOf = ({ kind, name }: Fact): string => `${kind} ${name}`;

const plain = ({ kind, name }: SizedFact): Fact => ({ kind, name });

const shownLines = (lines: readonly string[]): string =>
  lines
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .join(" / ");
