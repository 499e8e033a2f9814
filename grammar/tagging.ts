// Settles what each word is on its line, from the forms of the line's first word: clause words are words only after
// their own verb, and only where a value is not expected, so they take no name away from the pattern maker.
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
  type Token,
  Toward,
  Unit,
  unitWords,
  Verb,
} from "./tokens.ts";

export interface TaggingProblem {
  readonly code: string;
  readonly token: Token;
  readonly message: string;
  readonly more?: More;
}

const placeWordTypes = new Set([At, Toward, SideWord, Bearing, For, Not]);
const reservedNames = new Set([...placeWords, ...statementWords]);

/** Tags the tokens of a statement in place; says what cannot be a name. */
export const tagLine = (words: readonly Token[], forms: readonly Form[]): TaggingProblem | undefined => {
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
      const isFree = token.tokenType === NameToken || !used.has(image);
      if (clause && isFree && (!valueWanted || isBeforePlace(token, words[index + 1]))) {
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
      // `leaving along along`: behind the word of a direction stands a name, whatever it looks like.
      const isAimed = words[index - 1]!.tokenType === DirectionWord || words[index - 1]!.tokenType === Toward;
      if (valueWanted && slot?.shape === "direction" && !isAimed) tagDirection(token);
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

/** `line b = to (3 cm, 0)`: where a value was due, a word and a place; a function stands right before its bracket. */
const isBeforePlace = (token: Token, next: Token | undefined): boolean =>
  next?.tokenType === LeftRound && next.startOffset > token.startOffset + token.image.length;

/** After these a value has to follow. */
const expectsValue = (token: Token): boolean => placeWordTypes.has(token.tokenType) || signsBefore.has(token.image);

const signsBefore = new Set([..."-+*/=<>,(.", "--", "<=", ">=", "<>", "and", "or"]);

const tagDirection = (token: Token | undefined): void => {
  if (token?.tokenType === NameToken && (token.image === "along" || token.image === "square-to"))
    retag(token, DirectionWord);
};

/** A unit is a unit only right behind a number. */
const tagUnits = (words: readonly Token[]): void => {
  words.forEach((token, index) => {
    if (token.tokenType === NameToken && unitWords.has(token.image) && words[index - 1]?.tokenType === NumberToken)
      retag(token, Unit);
  });
};

/** Tags the names that a line gives, up to its equals sign; `next` is the first token behind them. */
const tagNaming = (words: readonly Token[], forms: readonly Form[]): { next: number; problem?: TaggingProblem } => {
  const naming = forms.find((form) => form.naming)?.naming;
  if (!naming) return { next: 1 };
  // Where the verb has a form without a name as well, a line without an equals sign is of that form.
  const isNameless = forms.some((form) => !form.naming && form.operand);
  if (isNameless && !words.some(({ tokenType }) => tokenType === Equal)) return { next: 1 };
  let index = 1;
  const clauses = new Set(forms.flatMap((form) => form.clauses.map(({ word }) => word)));
  const isClause = (token: Token | undefined): boolean => token !== undefined && clauses.has(token.image);
  // `solve from 1 cm to …`: its name was forgotten.
  const [first, second] = [words[1], words[2]];
  if (naming.equals === "never" && isClause(first) && second && !isWord(second) && second.tokenType !== LeftRound)
    return { next: 1 };
  while (isWord(words[index])) {
    const token = words[index]!;
    const problem = wrongName(token);
    if (problem) return { next: index, problem };
    retag(token, NewName);
    index += 1;
    if (!naming.slot.many || words[index]?.tokenType !== Comma) break;
    index += 1;
  }
  const [named, sign] = [index > 1, words[index]];
  if (naming.equals === "never" || !named || !sign) return { next: index };
  if (sign.tokenType === Equal) {
    retag(sign, NamingEquals);
    return { next: index + 1 };
  }
  if (sign.tokenType === Comma || isClause(sign)) return { next: index };
  const equals = words.findIndex(({ tokenType }) => tokenType === Equal);
  if (equals > index && words.slice(1, equals).every(isWord))
    return { next: index, problem: nameInWords(words.slice(1, equals)) };
  const [code, token, message, more] = withoutEquals(words[index - 1]!, sign);
  return { next: index, problem: { code, token, message, more } };
};

/** `measure bust girth = 92 cm`: what was meant is plain, but a name is one word. */
const nameInWords = (words: readonly Token[]): TaggingProblem => {
  const [first, last] = [words[0]!, words.at(-1)!];
  const replace = words.map(({ image }) => image).join("-");
  const over = { from: first.startOffset, to: last.startOffset + last.image.length };
  return {
    code: "name-spaced",
    token: words[1]!,
    message: "A name has no spaces in it.",
    more: { hint: `Write ${replace}.`, replace, over },
  };
};

/** What to say where the = between a name and what it names is missing. */
export const withoutEquals = (name: Token, behind: Token): [string, Token, string, More] => {
  const { startOffset: at, image } = behind;
  const message = `An = stands between ${name.image} and what it names.`;
  return [
    "equals-missing",
    behind,
    message,
    { hint: `Write = before ${image}.`, replace: "= ", over: { from: at, to: at } },
  ];
};

const wrongName = (token: Token): TaggingProblem | undefined => {
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
export const tagEntry = (words: readonly Token[]): void => {
  tagUnits(words);
  if (isWord(words[0])) retag(words[0]!, NewName);
  if (words[1]?.tokenType === Equal) retag(words[1], NamingEquals);
};

/** Tags the parameters of a step of the recipe's own; says what cannot be a name. */
export const tagParameters = (words: readonly Token[]): TaggingProblem | undefined => {
  tagUnits(words);
  let problem: TaggingProblem | undefined;
  let start = 1;
  let depth = 0;
  words.forEach((token, index) => {
    const [name, equals] = [words[index + 1], words[index + 2]];
    if (index === start && isWord(token)) {
      retag(token, ChoiceWord);
      if (name && isWord(name)) {
        problem ??= wrongName(name);
        retag(name, NewName);
      }
      if (equals?.tokenType === Equal) retag(equals, NamingEquals);
    }
    if (token.tokenType === LeftRound) depth += 1;
    if (token.tokenType === RightRound) depth -= 1;
    if (token.tokenType === Comma && depth === 1) start = index + 1;
  });
  return problem;
};
