// A recipe's lines as they are written, whole or not, each word with what it means on its line. The tree holds only what
// could be read; an editor is asked about the line that is being typed.
import type { Forms } from "../../grammar/parse.ts";
import type { Form } from "../../grammar/phrase.ts";
import { tagEntry } from "../../grammar/tagging.ts";
import { scan, type Token } from "../../grammar/tokens.ts";
import type { Stretch } from "../../grammar/tree.ts";
import type { WorkedText } from "./worked-text.ts";
import { tagStatement, type WrittenWord, wordOf } from "./written-word.ts";

/** A statement, or an entry of a `use`, `size` or `recipe` block. */
export interface WrittenLine extends Stretch {
  readonly words: readonly WrittenWord[];
  /** Its first word, behind an `else` where one stands before an `if`. */
  readonly verb: string;
  readonly forms: readonly Form[];
  readonly isEntry: boolean;
  /** The line in whose block it stands. */
  readonly around: WrittenLine | undefined;
  /** From its `{` to behind its `}`; where it is not closed, to one behind the end of the text. */
  readonly block: Stretch | undefined;
}

/** A recipe cut into lines, comments, and the sentences that its lines may have. */
export interface Written {
  /** In the order of the text. */
  readonly lines: readonly WrittenLine[];
  readonly comments: readonly Stretch[];
  readonly forms: Forms;
}

/** The lines of a recipe; kept, so that several questions about one text read it once. */
export const written = (worked: WorkedText): Written => {
  const known = kept.get(worked);
  if (known) return known;
  const forms = formsOf(worked);
  const { tokens, comments } = scan(worked.source.text);
  const lines = linesOf(tokens, forms, worked.source.text.length);
  const made = { lines, comments: comments.map(stretchOf), forms };
  kept.set(worked, made);
  return made;
};

const kept = new WeakMap<WorkedText, Written>();

/** All sentences that a line may have: for the recipe's own steps only their first lines have to be read again. */
const formsOf = ({ kernel, source: { file, text }, outcome }: WorkedText): Forms => {
  const steps = outcome.tree.lines.filter(({ verb, broken }) => verb.text === "step" && !broken);
  const heads = steps.map(({ from, to, block }) => `${text.slice(from, block?.from ?? to)} { }\n`);
  return kernel.parse({ file, text: heads.join("") }).forms;
};

const stretchOf = (token: Token): Stretch => ({
  from: token.startOffset,
  to: token.startOffset + token.image.length,
});

// The same signs as in grammar/parse.ts: after them a statement goes on in the next line.
const goesOn = new Set([",", "+", "-", "*", "/", "=", "<", ">", "<=", ">=", "<>", "and", "or", "not", "--"]);

type Growing = { -readonly [Key in keyof WrittenLine]: WrittenLine[Key] };

const linesOf = (tokens: readonly Token[], forms: Forms, end: number): WrittenLine[] => {
  const lines: Growing[] = [];
  const around: (Growing | undefined)[] = [];
  const opened: (Growing | undefined)[] = [];
  let words: Token[] = [];
  let last: Growing | undefined;
  let round = 0;
  const settle = (): void => {
    if (words.length > 0) {
      last = lineOf(words, forms, around.at(-1));
      lines.push(last);
    }
    [words, round] = [[], 0];
  };
  tokens.forEach((token, index) => {
    const { image } = token;
    if (image === "{") {
      settle();
      if (last) last.block = { from: token.startOffset, to: end + 1 };
      opened.push(last);
      // A { that belongs to no line holds more lines of the block around.
      around.push(last ?? around.at(-1));
      last = undefined;
    } else if (image === "}") {
      settle();
      around.pop();
      const closed = opened.pop();
      if (closed?.block) closed.block = { from: closed.block.from, to: token.startOffset + 1 };
      last = undefined;
    } else if (image === "\n") {
      const isOpen = words.length > 0 && (round > 0 || goesOn.has(words.at(-1)!.image));
      if (!isOpen || startsAnew(tokens, index, forms)) settle();
    } else if (image === "," && round <= 0 && holdsEntries(around.at(-1))) {
      settle();
    } else {
      if (image === "(") round += 1;
      if (image === ")") round -= 1;
      words.push(token);
    }
  });
  settle();
  return lines;
};

const startsAnew = (tokens: readonly Token[], at: number, forms: Forms): boolean => {
  let next = at;
  while (tokens[next]?.image === "\n") next += 1;
  const [first, second] = [tokens[next], tokens[next + 1]];
  return first !== undefined && forms.has(first.image) && second !== undefined && /^[\p{L}\d"]/u.test(second.image);
};

const holdsEntries = (line: WrittenLine | undefined): boolean =>
  line?.forms[0]?.block === "entries" || line?.forms[0]?.block === "fields";

const lineOf = (tokens: Token[], forms: Forms, around: WrittenLine | undefined): Growing => {
  const isEntry = holdsEntries(around);
  const start = tokens[0]!.image === "else" && tokens[1]?.image === "if" ? 1 : 0;
  const verb = tokens[start]!.image;
  const known = isEntry ? [] : (forms.get(verb) ?? []);
  if (isEntry) tagEntry(tokens);
  else tagStatement(tokens.slice(start), known);
  const [first, last] = [tokens[0]!, tokens.at(-1)!];
  return {
    words: tokens.map((token, index) => wordOf(token, index < start)),
    verb,
    forms: known,
    isEntry,
    around,
    block: undefined,
    from: first.startOffset,
    to: last.startOffset + last.image.length,
  };
};
