// What could have stood here? Words for a line that could not be read, from the forms of the line and the words around the mistake.
import type { More } from "./diagnostic.ts";
import { didYouMean, listWithOr } from "./nearest.ts";
import { type Form, howToWrite } from "./phrase.ts";
import {
  ClauseWord,
  Comma,
  Dot,
  isWord,
  NameToken,
  NamingEquals,
  NumberToken,
  SideWord,
  shown,
  TextToken,
  type Token,
  unitWords,
  Verb,
} from "./tokens.ts";

interface Wanted {
  readonly code: string;
  readonly token: Token;
  readonly message: string;
  readonly more: More;
}

/** What to say of the first word that does not fit, or of an end that comes too soon, in a pattern maker's words. */
export const wanted = (misfit: Token | undefined, words: readonly Token[], forms: readonly Form[]): Wanted => {
  const hint = howToWrite(forms);
  const how: More = hint === undefined ? {} : { hint };
  const form = forms[0]!;
  if (!misfit) {
    const token = words.at(-1)!;
    const message = `The line ends after ${shown(token)}, where ${expectedAfter(token, words, form)} should follow.`;
    return { code: "line-unfinished", token, message, more: how };
  }
  const token = misfit;
  const index = words.indexOf(token);
  const before = words[index - 1] ?? token;
  const known = slip(words, token) ?? missingValue(words, index, forms, how);
  if (known) return known;
  const more = decimalComma(words.slice(0, index + 1)) ?? how;
  if (expectsValue(before)) {
    const message = `After ${shown(before)} I expected ${expectedAfter(before, words, form)}, not ${shown(token)}.`;
    return { code: "word-unexpected", token, message, more };
  }
  if (token.tokenType === NumberToken || token.tokenType === TextToken) {
    const message = `${shown(token)} follows ${shown(before)} with nothing between them.`;
    return { code: "value-unexpected", token, message, more };
  }
  const meant = didYouMean(
    token.image,
    forms.flatMap(({ clauses }) => clauses.map(({ word }) => word)),
  );
  const message = `After ${shown(before)} I did not expect ${shown(token)}.`;
  return { code: "word-unexpected", token, message, more: meant === undefined ? more : { hint: meant } };
};

/** A slip that is the same on every line: a unit in other words, a minus read as a hyphen, a number without its 0. */
export const slip = (words: readonly Token[], token: Token): Wanted | undefined => {
  const index = words.indexOf(token);
  const before = words[index - 1];
  const beforeIt = before && (hyphenForMinus(before, token) ?? wrongUnit(before, token));
  return beforeIt ?? withoutZero(token, words[index + 1]) ?? otherComparison(before, token);
};

const comparisons: ReadonlyMap<string, string> = new Map([
  ["==", "="],
  ["=>", ">="],
  ["=<", "<="],
]);

/** `=>` for `>=`, as other languages write it. */
const otherComparison = (before: Token | undefined, token: Token): Wanted | undefined => {
  const written = `${before?.image}${token.image}`;
  const replace = comparisons.get(written);
  if (!before || replace === undefined || before.startOffset + before.image.length !== token.startOffset)
    return undefined;
  const over = { from: before.startOffset, to: token.startOffset + token.image.length };
  return {
    code: "sign-unknown",
    token,
    message: `\`${written}\` is no sign of the language.`,
    more: { hint: `Write ${replace}.`, replace, over },
  };
};

const expectsValue = (before: Token): boolean =>
  before.tokenType === ClauseWord ||
  before.tokenType === Verb ||
  /^[-+*/=<>,(]|^(?:toward|left|right|up|down|at|for|bearing)$/.test(before.image);

/** What people write for the units of the language. */
const unitsInFull: ReadonlyMap<string, string> = new Map([
  ["millimetre", "mm"],
  ["millimeter", "mm"],
  ["centimetre", "cm"],
  ["centimeter", "cm"],
  ["metre", "m"],
  ["meter", "m"],
  ["inch", "in"],
  ["inche", "in"],
  ["foot", "ft"],
  ["feet", "ft"],
  ["yard", "yd"],
  ["degree", "deg"],
  ["radian", "rad"],
  ["oz", "osy"],
]);

/** A word behind a number that was meant for a unit: `10 inches`, `5 CM`, and `4 cm-1 cm` with a minus that reads as a hyphen. */
const wrongUnit = (before: Token, token: Token): Wanted | undefined => {
  if (before.tokenType !== NumberToken || !isWord(token)) return undefined;
  const [head, ...rest] = token.image.split("-");
  if (rest.length > 0 && unitWords.has(head!)) {
    return readAsName(token, `${head} - ${rest.join("-")}`.replace(/(\d)([a-z])/g, "$1 $2"));
  }
  const plain = token.image.toLowerCase();
  const unit = unitWords.has(plain) ? plain : (unitsInFull.get(plain) ?? unitsInFull.get(plain.replace(/s$/, "")));
  if (unit === undefined) return undefined;
  return {
    code: "unit-unknown",
    token,
    message: `${token.image} is not a unit here.`,
    more: { hint: `Write ${unit}.`, replace: unit },
  };
};

/** `armscye at end-8 cm`, `hem-2 cm`: the minus was read as part of the name. */
const hyphenForMinus = (before: Token, token: Token): Wanted | undefined => {
  const [, name, figures] = /^(.+)-(\d+)$/.exec(before.image) ?? [];
  if (before.tokenType !== NameToken || name === undefined || !unitWords.has(token.image)) return undefined;
  return readAsName(before, `${name} - ${figures}`);
};

const readAsName = (token: Token, replace: string): Wanted => ({
  code: "hyphen-unspaced",
  token,
  message: `${token.image} reads as one name: a hyphen without spaces is part of a name.`,
  more: { hint: `Write ${replace} to subtract.`, replace },
});

/** `.5` for `0.5`. */
const withoutZero = (token: Token, next: Token | undefined): Wanted | undefined => {
  if (token.tokenType !== Dot || next?.tokenType !== NumberToken) return undefined;
  const message = "A number starts with a figure, not with its point.";
  return { code: "number-unfinished", token, message, more: { hint: `Write 0.${next.image}.`, replace: "0." } };
};

/** `line x = to C`, `point A = right 3 cm`: where a value was due, the word behind it stands. */
const missingValue = (
  words: readonly Token[],
  index: number,
  forms: readonly Form[],
  how: More,
): Wanted | undefined => {
  const [due, token] = [words[index - 2], words[index - 1]];
  if (!due || !token || ![Verb, NamingEquals, ClauseWord].includes(due.tokenType)) return undefined;
  const isClause = forms.some(({ clauses }) => clauses.some(({ word }) => word === token.image));
  if (token.tokenType !== SideWord && !(token.tokenType === NameToken && isClause)) return undefined;
  const message = `Before ${token.image}, ${expectedAfter(due, words, forms[0]!)} is missing.`;
  return { code: "value-missing", token, message, more: how };
};

/** `12,5 cm` for `12.5 cm`, anywhere before the mistake. */
const decimalComma = (words: readonly Token[]): More | undefined => {
  const isDecimal = words.some(
    (comma, index) => comma.tokenType === Comma && touch(words[index - 1], comma) && touch(comma, words[index + 1]),
  );
  return isDecimal ? { hint: "Write decimals with a point; a comma stands between two values." } : undefined;
};

const touch = (left: Token | undefined, right: Token | undefined): boolean =>
  left !== undefined &&
  right !== undefined &&
  left.startOffset + left.image.length === right.startOffset &&
  /^(?:\d+|,)$/.test(left.image) &&
  /^(?:\d+|,)$/.test(right.image);

const expectedAfter = (before: Token, words: readonly Token[], form: Form): string => {
  if (before.tokenType === Verb) {
    const first = form.naming?.slot ?? form.operand ?? form.clauses[0]?.slot;
    if (first) return `${first.wanted} (${first.note})`;
    return form.clauses.length > 0 ? listWithOr(form.clauses.map(({ word }) => word)) : "nothing";
  }
  const clauseAt = words.slice(0, words.indexOf(before) + 1).findLast((token) => token.tokenType === ClauseWord);
  const slot = clauseAt ? form.clauses.find(({ word }) => word === clauseAt.image)?.slot : form.operand;
  if (before.tokenType === ClauseWord || before.image === "," || before.image === "=")
    return slot ? `${slot.wanted} (${slot.note})` : "a value";
  if (form.naming && words.indexOf(before) === 1)
    return form.naming.equals === "never" ? "the rest of the line" : "an = sign";
  return "a value";
};
