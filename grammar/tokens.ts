// The words and signs of a recipe. No drafting verb is among them: what a word means on its line is decided by tagging.
import { createToken, type IToken, Lexer, type TokenType } from "chevrotain";

/** A word or sign as it is written, and what it is; tagging may yet make something else of it. */
export type Token = IToken;

export const Blank = createToken({ name: "Blank", pattern: /[ \t\r\u00a0\ufeff]+/, group: Lexer.SKIPPED });
export const Newline = createToken({ name: "Newline", pattern: /\n/, line_breaks: true });
export const CommentText = createToken({ name: "CommentText", pattern: /#[^\n]*/, group: "comments" });

export const TextToken = createToken({ name: "Text", pattern: /"(?:[^"\\\n]|\\[^\n])*"/ });
export const UnclosedText = createToken({ name: "UnclosedText", pattern: /"(?:[^"\\\n]|\\[^\n])*\\?/ });

export const NumberToken = createToken({
  name: "Number",
  // A mixed number, a fraction, a percentage, a decimal number: the longest reading first.
  pattern: /\d+ +\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?%|\d+(?:\.\d+)?/,
});

// Chevrotain drops the `u` flag of a pattern, so the two patterns that need it are matched by hand; the hints tell it by
// which characters they may start, one for each of the buckets (255 characters wide) that it sorts characters into.
const unicode = (pattern: RegExp) => (text: string, offset: number) => {
  pattern.lastIndex = offset;
  return pattern.exec(text);
};
const asciiLetters = [..."abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"];
const beyondAscii = [
  ...Array.from({ length: 128 }, (_, index) => 128 + index),
  ...Array.from({ length: 257 }, (_, index) => 256 + index * 255).filter((code) => code <= 0xffff),
];
const asciiSigns = Array.from({ length: 128 }, (_, index) => index).filter((code) => code !== 10);

export const NameToken = createToken({
  name: "Name",
  pattern: unicode(/\p{L}[\p{L}\p{M}\p{N}]*(?:-[\p{L}\p{N}][\p{L}\p{M}\p{N}]*)*/uy),
  start_chars_hint: [...asciiLetters, ...beyondAscii],
  line_breaks: false,
});

const sign = (name: string, text: string): TokenType => createToken({ name, pattern: text });
export const LineSign = sign("LineSign", "--");
export const LeftRound = sign("LeftRound", "(");
export const RightRound = sign("RightRound", ")");
export const LeftCurly = sign("LeftCurly", "{");
export const RightCurly = sign("RightCurly", "}");
export const Comma = sign("Comma", ",");
export const Dot = sign("Dot", ".");
export const NotEqual = sign("NotEqual", "<>");
export const AtMost = sign("AtMost", "<=");
export const AtLeast = sign("AtLeast", ">=");
export const Less = sign("Less", "<");
export const More = sign("More", ">");
export const Equal = sign("Equal", "=");
export const Plus = sign("Plus", "+");
export const Minus = sign("Minus", "-");
export const Times = sign("Times", "*");
export const Over = sign("Over", "/");

/** Any character that has no place in a recipe; kept as a token, so that only its own line suffers. */
export const Strange = createToken({
  name: "Strange",
  pattern: unicode(/[^\n]/uy),
  start_chars_hint: [...asciiSigns, ...beyondAscii],
  line_breaks: false,
});

// Tags: what a word turns out to be on its line.
const tag = (name: string): TokenType => createToken({ name, pattern: Lexer.NA });
export const Verb = tag("Verb");
export const NewName = tag("NewName");
export const NamingEquals = tag("NamingEquals");
export const ClauseWord = tag("ClauseWord");
export const SuffixWord = tag("SuffixWord");
export const ChoiceWord = tag("ChoiceWord");
export const DirectionWord = tag("DirectionWord");
export const Unit = tag("Unit");
export const ClosingText = tag("ClosingText");
export const Count = tag("Count");
export const At = tag("At");
export const Toward = tag("Toward");
export const SideWord = tag("SideWord");
export const Bearing = tag("Bearing");
export const For = tag("For");
export const End = tag("End");
export const And = tag("And");
export const Or = tag("Or");
export const Not = tag("Not");

const scanned = [
  Blank,
  Newline,
  CommentText,
  TextToken,
  UnclosedText,
  NumberToken,
  NameToken,
  LineSign,
  LeftRound,
  RightRound,
  LeftCurly,
  RightCurly,
  Comma,
  Dot,
  NotEqual,
  AtMost,
  AtLeast,
  Less,
  More,
  Equal,
  Plus,
  Minus,
  Times,
  Over,
  Strange,
];

export const allTokens: TokenType[] = [
  ...scanned,
  Verb,
  NewName,
  NamingEquals,
  ClauseWord,
  SuffixWord,
  ChoiceWord,
  DirectionWord,
  Unit,
  ClosingText,
  Count,
  At,
  Toward,
  SideWord,
  Bearing,
  For,
  End,
  And,
  Or,
  Not,
];

const reserved: ReadonlyMap<string, TokenType> = new Map([
  ["at", At],
  ["toward", Toward],
  ["left", SideWord],
  ["right", SideWord],
  ["up", SideWord],
  ["down", SideWord],
  ["bearing", Bearing],
  ["for", For],
  ["end", End],
  ["and", And],
  ["or", Or],
  ["not", Not],
]);

/** The place words and logic words, which cannot be names. */
export const placeWords: readonly string[] = [...reserved.keys()];

/** The unit words; they are units only right behind a number. */
export const unitWords: ReadonlySet<string> = new Set(["mm", "cm", "m", "in", "ft", "yd", "deg", "rad", "gsm", "osy"]);

/** Gives a token the meaning it has on its line. */
export const retag = (token: Token, type: TokenType): void => {
  token.tokenType = type;
  token.tokenTypeIdx = type.tokenTypeIdx!;
};

const lexerChecked = (isChecked: boolean): Lexer =>
  new Lexer(scanned, { positionTracking: "onlyOffset", ensureOptimizations: true, skipValidations: !isChecked });

// Not at every start: a test checks the patterns.
const lexer = lexerChecked(false);

/** Has chevrotain look for mistakes in the patterns themselves; throws where there are any. */
export const checkPatterns = (): void => {
  lexerChecked(true);
};

/** Cuts a recipe's text into tokens, newlines among them; comments stand apart. Never fails. */
export const scan = (text: string): { tokens: Token[]; comments: Token[] } => {
  const { tokens, groups } = lexer.tokenize(text);
  for (const token of tokens) {
    if (token.tokenType !== NameToken) continue;
    const type = reserved.get(token.image);
    if (type) retag(token, type);
  }
  return { tokens, comments: groups.comments ?? [] };
};

/** True for a token that is a word, whatever it means on its line. */
export const isWord = (token: Token | undefined): boolean => token !== undefined && /^\p{L}/u.test(token.image);

/** A token as a message shows it: signs in backticks, for a comma or a point would be lost among the words. */
export const shown = ({ image }: Token): string => {
  const short = image.length > 30 ? `${image.slice(0, 30)}…` : image;
  return /^[\p{L}\d"]/u.test(image) ? short : `\`${short}\``;
};
