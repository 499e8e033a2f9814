// What the reference tells of a statement, a step, a function or a check, out of its declaration. The manual, the terminal
// and an editor's hover each set the same entry in their own type.
import { type Part, type Slot, signature } from "../../grammar/phrase.ts";
import { type Statement, statements } from "../../grammar/statements.ts";
import type { Check } from "../check.ts";
import { type FunctionEntry, functions } from "../functions.ts";
import type { Vocabulary } from "../kernel.ts";
import type { Step } from "../step.ts";

export interface Entry {
  readonly kind: "statement" | "step" | "function" | "check";
  readonly name: string;
  /** What it belongs to: "in a piece", "of the whole recipe"; empty for what stands anywhere. */
  readonly belongs: string;
  readonly since?: string;
  /** How it is written; several where it may be said in several ways. */
  readonly forms: readonly string[];
  /** What it is for, short enough for a list. */
  readonly summary: string;
  /** The same in full sentences. */
  readonly sentences: readonly string[];
  readonly slots: readonly WordedSlot[];
  readonly recipes: readonly TitledRecipe[];
}

/** A slot and the clause word that it stands behind; empty where it stands behind none. */
export interface WordedSlot {
  readonly word: string;
  readonly slot: Slot;
}

export interface TitledRecipe {
  readonly title: "For example" | "Passes" | "Fails";
  readonly text: string;
}

/** All entries in the order in which they are taught: statements, steps, functions, checks. */
export const entries = ({ steps, checks }: Vocabulary): Entry[] => [
  ...statements.map(statementEntry),
  ...steps.map(stepEntry),
  ...[...functions.values()].map(functionEntry),
  ...checks.map(checkEntry),
];

export const statementEntry = ({ verb, parts, summary, place, block, parameters }: Statement): Entry => ({
  kind: "statement",
  name: verb,
  belongs: place === "garment" ? "of the whole recipe" : "",
  forms: [`${signature(parts)}${parameters ? " (KIND NAME = DEFAULT, …)" : ""}${block ? " { … }" : ""}`],
  summary,
  sentences: [summary],
  slots: slotsOf([parts], verb),
  recipes: [],
});

export const stepEntry = ({ name, on, since, summary, details, phrases, example }: Step): Entry => {
  const forms = phrases.map(({ parts }) => parts);
  return {
    kind: "step",
    name,
    belongs: on === "piece" ? "in a piece" : "of the garment",
    since,
    forms: forms.map(signature),
    summary,
    sentences: details === undefined ? [summary] : [summary, details],
    slots: slotsOf(forms, name),
    recipes: [{ title: "For example", text: example.trim() }],
  };
};

export const functionEntry = ({ name, form, summary }: FunctionEntry): Entry => ({
  kind: "function",
  name,
  belongs: "in values",
  forms: [form],
  summary,
  sentences: [`Gives ${summary}.`],
  slots: [],
  recipes: [],
});

export const checkEntry = ({ name, since, title, why, passes, fails }: Check): Entry => ({
  kind: "check",
  name,
  belongs: "of every garment",
  since,
  forms: [],
  summary: title,
  sentences: [title, why],
  slots: [],
  recipes: [
    { title: "Passes", text: passes.trim() },
    { title: "Fails", text: fails.trim() },
  ],
});

/** Every slot of these forms once; where two forms say different things of one, the last. */
const slotsOf = (forms: readonly (readonly Part[])[], verb: string): WordedSlot[] => {
  const found = new Map<string, WordedSlot>();
  const add = (word: string, slot: Slot): void => {
    found.set(`${word} ${slot.wanted} ${signature([{ kind: "slot", slot }])}`, { word, slot });
  };
  const walk = (parts: readonly Part[]): void => {
    let word = "";
    for (const part of parts) {
      if (part.kind === "words") word = part.words.at(-1) === "=" ? "" : (part.words.at(-1) ?? "");
      else if (part.kind === "optional") walk(part.parts);
      else {
        add(word === verb ? "" : word, part.slot);
        word = "";
      }
    }
  };
  for (const parts of forms) walk(parts);
  return [...found.values()];
};
