// How the line at the cursor is written, and which part of it is being written; inside a function's brackets, the function.
import { type Form, type Part, type Slot, signature } from "../../grammar/phrase.ts";
import { statements } from "../../grammar/statements.ts";
import { functions } from "../../kernel/functions.ts";
import { slotInWords } from "./describe-clause.ts";
import { spotAt } from "./line-at.ts";
import { type OpenBracket, type SlotAt, slotAt } from "./slot-at.ts";
import type { WorkedText } from "./worked-text.ts";
import { written } from "./written.ts";
import type { WrittenWord } from "./written-word.ts";

/** One way to write the line; the slots are stretches of the label. */
export interface Signature {
  readonly label: string;
  readonly documentation: string;
  readonly slots: readonly { readonly from: number; readonly to: number; readonly note: string }[];
}

/** The forms of a line, and where in them the cursor stands. */
export interface SignatureHelp {
  readonly signatures: readonly Signature[];
  /** The form that fits what is written so far. */
  readonly active: number;
  /** The slot of that form which the cursor stands in. */
  readonly activeSlot?: number;
}

/** The forms of the line at an offset; undefined on a line that has none. */
export const signatureHelp = (worked: WorkedText, offset: number): SignatureHelp | undefined => {
  const { lines, comments } = written(worked);
  if (comments.some(({ from, to }) => from < offset && offset <= to)) return undefined;
  const { line, before, word } = spotAt(worked.source.text, lines, offset);
  if (!line || line.isEntry) return undefined;
  const at = slotAt(line, before);
  const called = at.bracket && functionHelp(at.bracket);
  if (called) return called;
  const told = line.forms.filter((form) => form.parts !== undefined);
  if (told.length === 0 || at.due === "first word" || (word?.means === "Verb" && offset < word.to)) return undefined;
  const active = fitting(told, line.words);
  const slot = slotOf(at, told[active]!);
  const signatures = told.map((form) => signatureOf(form, summaryOf(worked, form.verb)));
  const activeSlot = slot ? slotsIn(told[active]!.parts!).indexOf(slot) : -1;
  return { signatures, active, ...(activeSlot >= 0 && { activeSlot }) };
};

/** The form that knows the most of the line's clause words, the first of several. */
const fitting = (forms: readonly Form[], words: readonly WrittenWord[]): number => {
  const said = words.filter(({ means }) => means === "ClauseWord").map(({ text }) => text);
  const known = forms.map(
    ({ clauses }) => said.filter((word) => clauses.some((clause) => clause.word === word)).length,
  );
  return known.indexOf(Math.max(...known));
};

/** The slot of this form at the cursor; slots of two forms are different things even where they read the same. */
const slotOf = ({ slot, clause, due }: SlotAt, form: Form): Slot | undefined => {
  if (due === "new name" && clause === undefined)
    return form.naming ? slotNamed(form, form.naming.slot.name) : undefined;
  if (clause !== undefined) return form.clauses.find((each) => each.word === clause)?.slot;
  return slot && form.operand ? slotNamed(form, form.operand.name) : undefined;
};

const slotNamed = ({ parts = [] }: Form, name: string): Slot | undefined =>
  slotsIn(parts).find((slot) => slot.name === name);

const slotsIn = (parts: readonly Part[]): Slot[] =>
  parts.flatMap((part) => (part.kind === "slot" ? [part.slot] : part.kind === "optional" ? slotsIn(part.parts) : []));

/** The sentence, and where in it each slot stands: what comes before a slot is the sentence up to it. */
const signatureOf = ({ parts = [], block, parameters }: Form, documentation: string): Signature => {
  const slots: { from: number; to: number; note: string }[] = [];
  let label = "";
  const add = (list: readonly Part[], opens: string): void => {
    let lead = opens;
    for (const part of list) {
      const joint = label === "" || label.endsWith("[") ? "" : " ";
      if (part.kind === "optional") add(part.parts, "[");
      else {
        const sign = signature([part]);
        // As in the manual, no space stands before a comma.
        const space = sign.startsWith(",") ? "" : joint;
        label += `${space}${lead}`;
        const from = label.length;
        label += sign;
        if (part.kind === "slot") slots.push({ from, to: label.length, note: slotInWords(part.slot) });
        lead = "";
      }
    }
    if (opens !== "") label += "]";
  };
  add(parts, "");
  const brackets = parameters ? " (KIND NAME, …)" : "";
  return { label: `${label}${brackets}${block === "lines" ? " { … }" : ""}`, documentation, slots };
};

const summaryOf = ({ kernel }: WorkedText, verb: string): string => {
  const step = kernel.vocabulary.steps.find(({ name }) => name === verb);
  return step?.summary ?? statements.find((each) => each.verb === verb)?.summary ?? "A step of this recipe's own.";
};

const functionHelp = ({ name, index }: OpenBracket): SignatureHelp | undefined => {
  const entry = functions.get(name ?? "");
  if (!entry) return undefined;
  const { form, summary } = entry;
  const slots: { from: number; to: number; note: string }[] = [];
  for (let from = form.indexOf("(") + 1; from < form.length; ) {
    const comma = form.indexOf(", ", from);
    const to = comma < 0 ? form.length - 1 : comma;
    slots.push({ from, to, note: "" });
    from = comma < 0 ? form.length : comma + 2;
  }
  const label = form;
  return {
    signatures: [{ label, documentation: summary, slots }],
    active: 0,
    activeSlot: Math.min(index, slots.length - 1),
  };
};
