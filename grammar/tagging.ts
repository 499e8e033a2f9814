// Settles what each word is on its line, from the forms of the line's first word: clause words are words only after
// their own verb, and only where a value is not expected, so they take no name away from the pattern maker.
import type { IToken } from "chevrotain";
import type { More } from "./diagnostic.ts";
import type { Form, Slot } from "./phrase.ts";
import { statementWords } from "./statements.ts";
import {
  At,
  Bearing,
  ChoiceWord,
  ClauseWord,
  ClosingText,
  Comma,
  Count,
  DirectionWord,
  End,
  Equal,
  For,
  isWord,
  LeftRound,
  NameToken,
  NamingEquals,
  NewName,
  Not,
  NumberToken,
  placeWords,
  RightRound,
  retag,
  SideWord,
  SuffixWord,
  TextToken,
  Toward,
  Unit,
  unitWords,
  Verb,
} from "./tokens.ts";

export interface TaggingProblem {
  readonly code: string;
  readonly token: IToken;
  readonly message: string;
  readonly more?: More;
}

const placeWordTypes = new Set([At, Toward, SideWord, Bearing, For, Not]);
const reservedNames = new Set([...placeWords, ...statementWords]);

/** Tags the tokens of a statement in place; says what cannot be a name. */
export const tagLine = (words: readonly IToken[], forms: readonly Form[]): TaggingProblem | undefined => {
  tagUnits(words);
  const verb = words[0]!;
  retag(verb, Verb);
  const { next, problem } = tagNaming(words, forms);
  if (problem) return problem;

  const clauses = new Map(forms.flatMap((form) => form.clauses.map((clause) => [clause.word, clause] as const)));
  const required = forms.every((form) => form.operand !== undefined && !form.operand.optional);
  const used = new Set<string>();
  let slot: Slot | undefined = forms[0]?.operand;
  let valueWanted = required || words[next - 1]?.tokenType === NamingEquals;
  let depth = 0;
  for (let index = next; index < words.length; index += 1) {
    const token = words[index]!;
    const image = token.image;
    if (token.tokenType === LeftRound) depth += 1;
    if (token.tokenType === RightRound) depth -= 1;
    if (depth === 0 && token.tokenType === NumberToken && !valueWanted && forms.some((form) => form.count))
      retag(token, Count);
    if (depth === 0 && isWord(token) && token.tokenType !== Unit) {
      const clause = clauses.get(image);
      const suffix = slot?.suffix;
      if (!valueWanted && clause && (token.tokenType === NameToken || !used.has(image))) {
        retag(token, ClauseWord);
        used.add(image);
        slot = clause.slot;
        valueWanted = slot !== undefined;
        continue;
      }
      if (!valueWanted && suffix?.word === image) {
        retag(token, SuffixWord);
        if (suffix.slot.shape === "direction") tagDirection(words[index + 1]);
        valueWanted = true;
        continue;
      }
      if (valueWanted && slot?.shape === "choice") {
        retag(token, ChoiceWord);
        valueWanted = false;
        continue;
      }
      if (valueWanted && slot?.shape === "name") {
        const wrong = wrongName(token);
        if (wrong) return wrong;
        retag(token, NewName);
        valueWanted = false;
        continue;
      }
      if (valueWanted && slot?.shape === "direction") tagDirection(token);
    }
    // A side word is a direction where a value is wanted, and a place word behind a place.
    const isDirection = token.tokenType === SideWord && valueWanted;
    valueWanted = (expectsValue(token) && !isDirection) || token.tokenType === DirectionWord;
  }
  const last = words.at(-1)!;
  if (
    last.tokenType === TextToken &&
    forms.some((form) => form.text) &&
    words.length > next &&
    !expectsValue(words.at(-2)!)
  ) {
    if (words.at(-2)!.tokenType !== ClauseWord) retag(last, ClosingText);
  }
  return undefined;
};

/** After these a value has to follow. */
const expectsValue = (token: IToken): boolean =>
  (placeWordTypes.has(token.tokenType) && token.tokenType !== End) ||
  /^(?:[-+*/=<>,(.]|--|<=|>=|<>|and|or)$/.test(token.image);

const tagDirection = (token: IToken | undefined): void => {
  if (token?.tokenType === NameToken && (token.image === "along" || token.image === "square-to"))
    retag(token, DirectionWord);
};

/** A unit is a unit only right behind a number. */
const tagUnits = (words: readonly IToken[]): void => {
  words.forEach((token, index) => {
    if (token.tokenType === NameToken && unitWords.has(token.image) && words[index - 1]?.tokenType === NumberToken)
      retag(token, Unit);
  });
};

/** Tags the names that a line gives, up to its equals sign; `next` is the first token behind them. */
const tagNaming = (words: readonly IToken[], forms: readonly Form[]): { next: number; problem?: TaggingProblem } => {
  const naming = forms.find((form) => form.naming)?.naming;
  if (!naming) return { next: 1 };
  let index = 1;
  while (isWord(words[index])) {
    const token = words[index]!;
    const problem = wrongName(token);
    if (problem) return { next: index, problem };
    retag(token, NewName);
    index += 1;
    if (!naming.slot.many || words[index]?.tokenType !== Comma) break;
    index += 1;
  }
  if (words[index]?.tokenType === Equal && naming.equals !== "never") {
    retag(words[index]!, NamingEquals);
    index += 1;
  }
  return { next: index };
};

const wrongName = (token: IToken): TaggingProblem | undefined => {
  if (!reservedNames.has(token.image)) return undefined;
  const kind = placeWords.includes(token.image) ? "a place word" : "a word that starts a statement";
  return {
    code: "name-reserved",
    token,
    message: `${token.image} is ${kind} and cannot be a name.`,
    more: { hint: "Choose another name." },
  };
};

/** Tags an entry NAME = VALUE. */
export const tagEntry = (words: readonly IToken[]): void => {
  tagUnits(words);
  if (isWord(words[0])) retag(words[0]!, NewName);
  if (words[1]?.tokenType === Equal) retag(words[1], NamingEquals);
};

/** Tags the parameters of a step of the recipe's own. */
export const tagParameters = (words: readonly IToken[]): void => {
  tagUnits(words);
  let start = 1;
  words.forEach((token, index) => {
    if (index === start && isWord(token)) {
      retag(token, ChoiceWord);
      if (isWord(words[index + 1])) retag(words[index + 1]!, NewName);
      if (words[index + 2]?.tokenType === Equal) retag(words[index + 2]!, NamingEquals);
    }
    if (token.tokenType === Comma) start = index + 1;
  });
};
