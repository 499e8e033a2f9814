// What could have stood here? Words for the parser's errors, from the forms of the line and the words around the mistake.
import type { IRecognitionException, IToken } from "chevrotain";
import type { More } from "./diagnostic.ts";
import { didYouMean, listWithOr } from "./nearest.ts";
import { type Form, howToWrite } from "./phrase.ts";
import { ClauseWord, isWord, NumberToken, shown, TextToken, Verb } from "./tokens.ts";

/** A parser's error in a pattern maker's words, at the smallest stretch. */
export const wanted = (
  error: IRecognitionException,
  words: readonly IToken[],
  forms: readonly Form[],
): { code: string; token: IToken; message: string; more: More } => {
  const atEnd =
    error.token.image === "" || error.token.startOffset === undefined || Number.isNaN(error.token.startOffset);
  const last = words.at(-1)!;
  const token = atEnd ? last : error.token;
  const index = words.indexOf(token);
  const before = atEnd ? last : (words[index - 1] ?? last);
  const form = forms[0]!;
  const hint = howToWrite(forms);
  const how: More = hint === undefined ? {} : { hint };
  if (atEnd) {
    return {
      code: "line-unfinished",
      token,
      message: `The line ends after ${shown(before)}, where ${expectedAfter(before, words, form)} should follow.`,
      more: how,
    };
  }
  const valueWanted =
    before.tokenType === ClauseWord ||
    before.tokenType === Verb ||
    /^[-+*/=<>,(]|^(?:toward|left|right|up|down|at|for|bearing)$/.test(before.image);
  if (!valueWanted && isWord(token)) {
    const unused = forms.flatMap(({ clauses }) => clauses.map(({ word }) => word));
    const meant = didYouMean(token.image, unused);
    return {
      code: "word-unexpected",
      token,
      message: `After ${shown(before)} I did not expect ${shown(token)}.`,
      more: meant === undefined ? how : { hint: meant },
    };
  }
  if (!valueWanted && (token.tokenType === NumberToken || token.tokenType === TextToken)) {
    const commaForPoint = before.image === "," || /^\d+$/.test(before.image);
    return {
      code: "value-unexpected",
      token,
      message: `${shown(token)} follows ${shown(before)} with nothing between them.`,
      more: {
        hint: commaForPoint
          ? "Write decimals with a point, and a comma or an operator between two values."
          : "Write a comma, an operator or a clause word between them.",
      },
    };
  }
  return {
    code: "word-unexpected",
    token,
    message: `After ${shown(before)} I expected ${expectedAfter(before, words, form)}, not ${shown(token)}.`,
    more: how,
  };
};

const expectedAfter = (before: IToken, words: readonly IToken[], form: Form): string => {
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
