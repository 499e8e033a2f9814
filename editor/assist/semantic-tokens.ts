// Every word of a recipe with what it is, for colouring: lines that could not be read are told as far as they go.
import { statementWords } from "../../grammar/statements.ts";
import { functions } from "../../kernel/functions.ts";
import { nameKinds } from "./name-kinds.ts";
import { pathTo } from "./path-at.ts";
import type { WorkedText } from "./worked-text.ts";
import { type WrittenLine, written } from "./written.ts";
import type { Meaning, WrittenWord } from "./written-word.ts";

/** What a word may be; the order is the legend that editors are given. */
export const tokenKinds = [
  "verb",
  "clause",
  "word",
  "name",
  "edge",
  "place",
  "dart",
  "value",
  "piece",
  "recipe",
  "fabric",
  "function",
  "unit",
  "number",
  "text",
  "comment",
  "sign",
  "parameter",
] as const;

/** What a word is. */
export type TokenKind = (typeof tokenKinds)[number];

export const tokenModifiers = ["given", "unknown", "own"] as const;

/** `given`: the line gives this name; `unknown`: nobody knows this word; `own`: a step of the recipe's own. */
export type TokenModifier = (typeof tokenModifiers)[number];

/** A word with what it is; offsets into the text. */
export interface SemanticToken {
  readonly from: number;
  readonly to: number;
  readonly kind: TokenKind;
  readonly modifiers: readonly TokenModifier[];
}

/** The words of the whole text in order; none of them goes over the end of a line. */
export const semanticTokens = (worked: WorkedText): SemanticToken[] => {
  const { lines, comments } = written(worked);
  const names = nameKinds(worked, lines);
  const tokens = lines.flatMap((line) =>
    line.words.map((word, index): SemanticToken => {
      const { kind, modifiers = [] } = meaningOf(worked, line, word, index, names(line));
      return { from: word.from, to: word.to, kind, modifiers };
    }),
  );
  for (const { from, to } of comments) tokens.push({ from, to, kind: "comment", modifiers: [] });
  return tokens.sort((a, b) => a.from - b.from);
};

interface Told {
  readonly kind: TokenKind;
  readonly modifiers?: readonly TokenModifier[];
}

const plain: ReadonlyMap<Meaning, TokenKind> = new Map<Meaning, TokenKind>([
  ["ClauseWord", "clause"],
  ["SuffixWord", "clause"],
  ["ChoiceWord", "word"],
  ["DirectionWord", "word"],
  ["place word", "word"],
  ["logic word", "word"],
  ["Number", "number"],
  ["Count", "number"],
  ["Unit", "unit"],
  ["Text", "text"],
  ["UnclosedText", "text"],
  ["NamingEquals", "sign"],
  ["sign", "sign"],
]);

const meaningOf = (
  { kernel }: WorkedText,
  line: WrittenLine,
  word: WrittenWord,
  index: number,
  kindNamed: (path: readonly string[]) => TokenKind | undefined,
): Told => {
  const simple = plain.get(word.means);
  if (simple) return { kind: simple };
  if (word.means === "Verb") {
    if (line.forms.length === 0) return { kind: "verb", modifiers: ["unknown"] };
    const isOwn = !kernel.forms.has(word.text) && !statementWords.includes(word.text);
    return isOwn ? { kind: "verb", modifiers: ["own"] } : { kind: "verb" };
  }
  if (word.means === "NewName") {
    if (line.verb === "step") return { kind: index === 1 ? "verb" : "parameter", modifiers: ["given"] };
    if (line.isEntry) return { kind: line.around?.verb === "recipe" ? "word" : "parameter" };
    // `base size M` speaks of a size that is there.
    return { kind: kindNamed([word.text]) ?? "name", modifiers: line.verb === "base" ? [] : ["given"] };
  }
  if (line.words[index + 1]?.text === "(" && functions.has(word.text)) return { kind: "function" };
  const path = pathTo(line.words.slice(0, index + 1)).filter(({ text }) => text !== ".");
  const kind = kindNamed(path.map(({ text }) => text));
  if (kind) return { kind };
  return path.length > 1 ? { kind: "name" } : { kind: "name", modifiers: ["unknown"] };
};
