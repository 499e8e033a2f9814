// What is asked for at a place of a line: which slot of its sentence stands there, and whether a value, a name or a word is due.
import type { Form, Slot } from "../../grammar/phrase.ts";
import { functions } from "../../kernel/functions.ts";
import type { WrittenLine } from "./written.ts";
import type { WrittenWord } from "./written-word.ts";

/** What the next word of a line is to be. */
export type Due =
  /** The first word of a line. */
  | "first word"
  /** A name that the line gives. */
  | "new name"
  /** The kind of a parameter of a step of the recipe's own. */
  | "parameter kind"
  /** The name of an entry. */
  | "entry"
  /** Behind a dot. */
  | "member"
  | "value"
  /** What may follow a value: a clause word, a place word, a unit. */
  | "more";

/** A call or a pair of brackets that is still open. */
export interface OpenBracket {
  /** The function; undefined where a place or a sum stands in brackets. */
  readonly name: string | undefined;
  /** How many commas stand behind the bracket. */
  readonly index: number;
}

/** A place of a line, seen from its sentence. */
export interface SlotAt {
  readonly due: Due;
  /** The slot of the sentence that the place lies in. */
  readonly slot: Slot | undefined;
  /** The clause word it stands behind. */
  readonly clause: string | undefined;
  readonly bracket: OpenBracket | undefined;
  /** The word right before. */
  readonly last: WrittenWord | undefined;
}

/** What is due behind these words of a line. */
export const slotAt = (line: WrittenLine | undefined, before: readonly WrittenWord[]): SlotAt => {
  const last = before.at(-1);
  const bracket = openBracket(before);
  const plain = { slot: undefined, clause: undefined, bracket, last };
  if (!line || before.length === 0) return { ...plain, due: line?.isEntry ? "entry" : "first word" };
  if (last!.text === "else" && before.length === 1) return { ...plain, due: "first word" };
  if (last!.text === ".") return { ...plain, due: "member" };
  if (line.isEntry) return { ...plain, due: expectsValue(last!) ? "value" : "more" };
  if (line.verb === "step" && bracket) return parameterAt(plain);
  const { forms } = line;
  const naming = forms.find((form) => form.naming)?.naming;
  const isGiving = !before.some(({ means }) => means === "NamingEquals" || means === "ClauseWord");
  const isBehindVerb = last!.means === "Verb" || (naming?.slot.many === true && last!.text === ",");
  if (
    naming &&
    isGiving &&
    isBehindVerb &&
    !before.some(({ means }) => means !== "Verb" && means !== "NewName" && means !== "sign")
  )
    return { ...plain, slot: naming.slot, due: "new name" };
  const { slot, clause } = slotBehind(before, forms);
  const needsSlot = last!.means === "ClauseWord" || last!.means === "Verb";
  const isValue = expectsValue(last!) && !isDirection(before) && (!needsSlot || slot !== undefined);
  if (isValue && slot?.shape === "name") return { ...plain, slot, clause, due: "new name" };
  return { ...plain, slot, clause, due: isValue ? "value" : "more" };
};

/** The slot that the last clause word opened, or the operand's. */
const slotBehind = (before: readonly WrittenWord[], forms: readonly Form[]): Pick<SlotAt, "slot" | "clause"> => {
  const clauses = forms.flatMap((form) => form.clauses);
  // Behind a comma the list goes on, and what its last value added is over.
  const opener = before.findLast(({ means, text }) => means === "ClauseWord" || means === "SuffixWord" || text === ",");
  const clause = before.findLast(({ means }) => means === "ClauseWord")?.text;
  const slot =
    clause === undefined
      ? forms.find((form) => form.operand)?.operand
      : clauses.find(({ word, slot: each }) => word === clause && each)?.slot;
  if (opener?.means === "SuffixWord") return { slot: slot?.suffix?.slot, clause };
  return { slot, clause };
};

/** `leaving down`: where a value is due, the word of a side is one. */
const isDirection = (before: readonly WrittenWord[]): boolean => {
  const [due, side] = [before.at(-2), before.at(-1)];
  return due !== undefined && /^(?:left|right|up|down)$/.test(side!.text) && expectsValue(due);
};

const expectsValue = ({ text, means }: WrittenWord): boolean => {
  if (means === "Verb" || means === "ClauseWord" || means === "SuffixWord" || means === "DirectionWord") return true;
  if (means === "place word") return text !== "end";
  return means === "NamingEquals" || means === "logic word" || /^(?:[-+*/=<>,(]|--|<=|>=|<>)$/.test(text);
};

const parameterAt = (plain: Omit<SlotAt, "due">): SlotAt => {
  const { last, bracket } = plain;
  if ((last!.text === "(" || last!.text === ",") && bracket!.name === undefined)
    return { ...plain, due: "parameter kind" };
  if (last!.means === "ChoiceWord") return { ...plain, due: "new name" };
  return { ...plain, due: expectsValue(last!) ? "value" : "more" };
};

const openBracket = (before: readonly WrittenWord[]): OpenBracket | undefined => {
  const open: { name: string | undefined; index: number }[] = [];
  before.forEach((word, at) => {
    if (word.text === "(") {
      const head = before[at - 1];
      const isCall = head?.means === "Name" && head.to === word.from && functions.has(head.text);
      open.push({ name: isCall ? head.text : undefined, index: 0 });
    } else if (word.text === ")") open.pop();
    else if (word.text === "," && open.length > 0) open.at(-1)!.index += 1;
  });
  return open.at(-1);
};
