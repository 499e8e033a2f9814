// Text to tree, one statement at a time. A mistake stays on its own line: every other line is read as if it were not there.
import type { IToken } from "chevrotain";
import type { Diagnostic, Fix, More, Where } from "./diagnostic.ts";
import { limits } from "./limits.ts";
import { LineParser } from "./line-parser.ts";
import { didYouMean } from "./nearest.ts";
import type { Form, Slot } from "./phrase.ts";
import { statements } from "./statements.ts";
import { tagEntry, tagLine, tagParameters } from "./tagging.ts";
import {
  Comma,
  isWord,
  LeftCurly,
  LeftRound,
  Newline,
  NewName,
  RightCurly,
  RightRound,
  Strange,
  scan,
  shown,
  UnclosedText,
} from "./tokens.ts";
import type { Block, Comment, Entry, Line, Parameter, RecipeTree, Word } from "./tree.ts";
import { wanted } from "./wanted.ts";

/** The forms that a first word may have; several where a step may be said in several ways. */
export type Vocabulary = ReadonlyMap<string, readonly Form[]>;

export interface Parsed {
  readonly tree: RecipeTree;
  readonly diagnostics: readonly Diagnostic[];
  /** The vocabulary with the recipe's own steps added. */
  readonly forms: Vocabulary;
}

const parser = new LineParser();
const statementForms: ReadonlyMap<string, readonly Form[]> = new Map(statements.map((form) => [form.verb, [form]]));

/** Reads a recipe. Never throws on bad text; what could not be read stands in the tree as a broken line. */
export const parse = (text: string, file: string, steps: Vocabulary): Parsed => new Reading(text, file, steps).recipe();

/** The line (from 1) and column (from 1) of an offset. */
export const lineStarts = (text: string): number[] => {
  const starts = [0];
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return starts;
};

/** Which of the line starts an offset belongs to, counted from 1. */
export const lineOf = (starts: readonly number[], offset: number): number => {
  let low = 0;
  let high = starts.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (starts[middle]! <= offset) low = middle;
    else high = middle;
  }
  return low + 1;
};

/** Signs after which a statement goes on in the next line. */
const goesOn = new Set([",", "+", "-", "*", "/", "=", "<", ">", "<=", ">=", "<>", "and", "or", "not", "--"]);

class Reading {
  private readonly tokens: IToken[];
  private readonly comments: Comment[];
  private readonly starts: number[];
  private readonly forms: Map<string, readonly Form[]>;
  private readonly diagnostics: Diagnostic[] = [];
  private at = 0;
  private readonly text: string;
  private readonly file: string;

  constructor(text: string, file: string, steps: Vocabulary) {
    this.text = text;
    this.file = file;
    this.forms = new Map([...statementForms, ...steps]);
    this.starts = lineStarts(text);
    const { tokens, comments } = scan(text);
    this.tokens = tokens;
    this.comments = comments.map((token) => ({
      text: token.image.trimEnd(),
      from: token.startOffset,
      to: token.startOffset + token.image.trimEnd().length,
    }));
  }

  recipe(): Parsed {
    const lines: Line[] = [];
    while (this.at < this.tokens.length) {
      lines.push(...this.lines(0));
      const stray = this.tokens[this.at];
      if (stray) {
        this.report("stray-brace", stray, "This } closes nothing: no { is open here.", {
          hint: "Take it out, or look for a missing { above.",
        });
        this.at += 1;
      }
    }
    const tree: RecipeTree = { file: this.file, text: this.text, lines, comments: this.comments };
    return { tree, diagnostics: this.diagnostics, forms: this.forms };
  }

  /** Lines up to the closing brace (which is left standing) or the end. */
  private lines(depth: number): Line[] {
    const lines: Line[] = [];
    for (;;) {
      while (this.tokens[this.at]?.tokenType === Newline) this.at += 1;
      const token = this.tokens[this.at];
      if (!token || token.tokenType === RightCurly) return lines;
      const line = this.line(depth);
      if (!line) continue;
      const last = lines.at(-1);
      if (line.verb.text === "else") {
        const holder = last?.verb.text === "if" ? lastBranch(last) : undefined;
        if (last && holder && holder.verb.text === "if") {
          lines[lines.length - 1] = withOtherwise(last, line);
          continue;
        }
        this.report("else-without-if", line.verb, "There is no `if` right before this `else`.");
        continue;
      }
      lines.push(line);
    }
  }

  /** One statement with its block; undefined when it has not even a first word. */
  private line(depth: number): Line | undefined {
    const words = this.words();
    const open = this.tokens[this.at]?.tokenType === LeftCurly ? this.tokens[this.at] : undefined;
    const [first, second] = words;
    let start = 0;
    if (first?.image === "else" && second?.image === "if") start = 1;
    const verb = words[start];
    const known = verb && isWord(verb) ? this.forms.get(verb.image) : undefined;

    if (!verb || !isWord(verb)) {
      const at = verb ?? open;
      if (verb?.tokenType === Strange || verb?.tokenType === UnclosedText) this.strange(words);
      else if (at) this.report("line-start", at, `A line starts with a step or a statement, not with ${shown(at)}.`);
      if (open) this.block(open, depth, undefined);
      return undefined;
    }

    const entries = known?.[0]?.block === "entries" || known?.[0]?.block === "fields";
    const before = this.diagnostics.length;
    const line = known ? this.statement(words.slice(start), known) : this.unknown(verb, words);
    if (line.verb.text === "step" && !line.broken) this.learn(line);
    let block: Block | undefined;
    if (open) {
      const allowed = !known || known.some((form) => form.block !== undefined);
      if (!allowed && this.diagnostics.length === before) {
        this.report("block-unexpected", open, `A ${verb.image} line has no { } block.`);
      }
      block = this.block(open, depth, entries ? verb.image : undefined);
    } else if (
      known &&
      !line.broken &&
      known.every((form) => form.block !== undefined && form.blockOptional !== true)
    ) {
      this.report("block-missing", line, `${verb.image} needs a block: a { at the end of its line, and a } below.`);
      return { ...line, broken: true };
    }
    const whole: Line = { ...line, ...(block && { block }), to: block?.to ?? line.to };
    if (start === 1) {
      // `else if …` is an else branch that is itself an if.
      return {
        ...whole,
        verb: { ...whole.verb, text: "else", from: first!.startOffset, to: first!.startOffset + 4 },
        from: first!.startOffset,
        otherwise: whole,
      };
    }
    return whole;
  }

  /** The tokens of one statement, up to a brace or the end of its line; continued lines included. */
  private words(): IToken[] {
    const words: IToken[] = [];
    let round = 0;
    for (; this.at < this.tokens.length; this.at += 1) {
      const token = this.tokens[this.at]!;
      const type = token.tokenType;
      if (type === LeftCurly || type === RightCurly) break;
      if (type === Newline) {
        const open = round > 0 || goesOn.has(words.at(-1)?.image ?? "");
        if (!open || this.startsAnew()) break;
        continue;
      }
      if (type === LeftRound) round += 1;
      if (type === RightRound) round -= 1;
      words.push(token);
    }
    return words;
  }

  /** Whether the next line, met where a line could go on, is plainly a new statement: a known first word and then no operator. */
  private startsAnew(): boolean {
    let next = this.at;
    while (this.tokens[next]?.tokenType === Newline) next += 1;
    const first = this.tokens[next];
    const second = this.tokens[next + 1];
    if (!first || !isWord(first) || !this.forms.has(first.image)) return false;
    return second !== undefined && (isWord(second) || /^["\d(]/.test(second.image)) && second.image !== "at";
  }

  private statement(words: IToken[], forms: readonly Form[]): Line {
    const verb = words[0]!;
    const stretch = { from: verb.startOffset, to: endOf(words.at(-1)!) };
    const broken = (): Line => ({
      verb: wordOf(verb),
      names: words.filter((token) => token.tokenType === NewName).map(wordOf),
      operands: [],
      clauses: [],
      ...stretch,
      broken: true,
    });
    if (!this.readable(words)) {
      tagLine(words, forms);
      return broken();
    }
    const heading = forms[0]!.parameters ? words.findIndex((token) => token.tokenType === LeftRound) : -1;
    const parameterWords = heading > 0 ? words.splice(heading) : [];
    const tagged = tagLine(words, forms);
    if (tagged) {
      this.report(tagged.code, tagged.token, tagged.message, tagged.more);
      return broken();
    }
    parser.input = words;
    const line = parser.statement();
    const error = parser.errors[0];
    if (error) {
      const { code, token, message, more } = wanted(error, words, forms);
      this.report(code, token, message, more);
      return broken();
    }
    let parameters: Parameter[] | undefined;
    if (parameterWords.length > 0) {
      parameters = this.parameters(parameterWords);
      if (!parameters) return broken();
    }
    return { ...line, ...(parameters && { parameters }), ...stretch, broken: false };
  }

  private parameters(words: IToken[]): Parameter[] | undefined {
    tagParameters(words);
    parser.input = words;
    const parameters = parser.parameters();
    const error = parser.errors[0];
    if (!error) return parameters;
    const token = error.token.image === "" ? words.at(-1)! : error.token;
    this.report(
      "parameter-unreadable",
      token,
      `The parameters of a step are written (edge shoulder, length amount = 5 cm), each with its kind and its name; ${shown(token)} does not fit there.`,
    );
    return undefined;
  }

  private unknown(verb: IToken, words: readonly IToken[]): Line {
    const hint = didYouMean(verb.image, this.forms.keys());
    const equals = words.findIndex((token) => token.image === "=");
    const names = equals > 1 ? words.slice(1, equals).filter(isWord).map(wordOf) : [];
    this.report("step-unknown", verb, `There is no step called ${verb.image}.`, hint === undefined ? {} : { hint });
    return {
      verb: wordOf(verb),
      names,
      operands: [],
      clauses: [],
      from: verb.startOffset,
      to: endOf(words.at(-1)!),
      broken: true,
    };
  }

  /** Adds a step of the recipe's own to the words that lines below may start with. */
  private learn(line: Line): void {
    const name = line.names[0]!;
    if (this.forms.has(name.text)) {
      this.report("step-known", name, `There is already a step called ${name.text}.`, { hint: "Choose another name." });
      return;
    }
    const clauses = (line.parameters ?? []).map(({ name: { text }, type, standard }) => ({
      word: text,
      slot: ownSlot(text, type.text),
      optional: standard !== undefined,
      needs: [],
    }));
    this.forms.set(name.text, [{ verb: name.text, clauses }]);
  }

  private block(open: IToken, depth: number, holder: string | undefined): Block {
    this.at += 1;
    if (depth + 1 > limits.nesting) {
      this.report("nesting-too-deep", open, `Blocks stand more than ${limits.nesting} deep here.`);
      this.skipBlock();
      return { lines: [], entries: [], from: open.startOffset, to: endOf(this.tokens[this.at - 1] ?? open) };
    }
    const lines = holder === undefined ? this.lines(depth + 1) : [];
    const entries = holder === undefined ? [] : this.entries(holder);
    const close = this.tokens[this.at];
    if (close?.tokenType === RightCurly) this.at += 1;
    else this.report("block-open", open, "This { is never closed.", { hint: "Write the } that closes it." });
    return { lines, entries, from: open.startOffset, to: close ? endOf(close) : this.text.length };
  }

  /** Passes over a block without reading it, however deep it goes. */
  private skipBlock(): void {
    for (let open = 1; this.at < this.tokens.length && open > 0; this.at += 1) {
      const type = this.tokens[this.at]!.tokenType;
      if (type === LeftCurly) open += 1;
      if (type === RightCurly) open -= 1;
    }
  }

  private entries(holder: string): Entry[] {
    const entries: Entry[] = [];
    for (;;) {
      while (this.tokens[this.at]?.tokenType === Newline || this.tokens[this.at]?.tokenType === Comma) this.at += 1;
      const token = this.tokens[this.at];
      if (!token || token.tokenType === RightCurly) return entries;
      if (token.tokenType === LeftCurly) {
        this.report("block-unexpected", token, `A ${holder} block holds only NAME = VALUE.`);
        this.at += 1;
        this.skipBlock();
        continue;
      }
      const words = this.entryWords();
      if (!this.readable(words)) continue;
      tagEntry(words);
      parser.input = words;
      const entry = parser.entry();
      const error = parser.errors[0];
      if (error) {
        const at = error.token.image === "" ? words.at(-1)! : error.token;
        this.report(
          "entry-unreadable",
          at,
          `In a ${holder} block each entry is written NAME = VALUE; ${shown(at)} does not fit there.`,
        );
      } else entries.push(entry);
    }
  }

  private entryWords(): IToken[] {
    const words: IToken[] = [];
    let round = 0;
    for (; this.at < this.tokens.length; this.at += 1) {
      const token = this.tokens[this.at]!;
      const type = token.tokenType;
      if (type === LeftCurly || type === RightCurly) break;
      if (round <= 0 && (type === Comma || (type === Newline && !goesOn.has(words.at(-1)?.image ?? "")))) break;
      if (type === Newline) continue;
      if (type === LeftRound) round += 1;
      if (type === RightRound) round -= 1;
      words.push(token);
    }
    return words;
  }

  /** Reports what no parser should see: strange characters, texts without an end, brackets too deep or unmatched. */
  private readable(words: readonly IToken[]): boolean {
    if (this.strange(words)) return false;
    if (words.length > limits.statementWords) {
      this.report(
        "line-too-long",
        words[limits.statementWords]!,
        `This statement has more than ${limits.statementWords} words and signs.`,
      );
      return false;
    }
    const open: IToken[] = [];
    let signs = 0;
    for (const token of words) {
      signs = token.image === "-" || token.image === "not" ? signs + 1 : 0;
      if (token.tokenType === LeftRound) open.push(token);
      if (open.length > limits.nesting || signs > limits.nesting) {
        this.report("nesting-too-deep", token, `Brackets or signs stand more than ${limits.nesting} deep here.`);
        return false;
      }
      if (token.tokenType === RightRound && !open.pop()) {
        this.report("bracket-stray", token, "This ) closes nothing: no ( is open on this line.");
        return false;
      }
    }
    if (open.length === 0) return true;
    this.report("bracket-open", open.at(-1)!, "This ( is not closed on its line.", {
      hint: "Write the ) that closes it.",
    });
    return false;
  }

  private strange(words: readonly IToken[]): boolean {
    const token = words.find(({ tokenType }) => tokenType === Strange || tokenType === UnclosedText);
    if (!token) return false;
    if (token.tokenType === UnclosedText) {
      this.report("text-open", token, 'This text has no closing ".', { hint: 'Write " at its end, on the same line.' });
      return true;
    }
    const instead = lookalikes.get(token.image);
    const message = `The character ${visible(token.image)} cannot stand here.`;
    this.report(
      "character-strange",
      token,
      message,
      instead === undefined ? {} : { hint: `Write ${instead} instead.`, replace: instead },
    );
    return true;
  }

  private where(stretch: { from: number; to: number }): Where {
    return { file: this.file, from: stretch.from, to: stretch.to, line: lineOf(this.starts, stretch.from) };
  }

  private report(code: string, at: IToken | { from: number; to: number }, message: string, more: More = {}): void {
    const where = this.where("startOffset" in at ? { from: at.startOffset, to: endOf(at) } : at);
    const fix: Fix | undefined =
      more.replace === undefined ? undefined : { title: `Write ${more.replace}`, where, text: more.replace };
    this.diagnostics.push({
      code,
      severity: "error",
      where,
      message,
      ...(more.hint !== undefined && { hint: more.hint }),
      ...(fix && { fix }),
    });
  }
}

/** Characters that a word processor or a phone puts in the place of the plain one. */
const lookalikes: ReadonlyMap<string, string> = new Map([
  ["\u201c", '"'],
  ["\u201d", '"'],
  ["\u201e", '"'],
  ["\u2033", "in"],
  ["\u2032", "ft"],
  ["\u2013", "-"],
  ["\u2014", "-"],
  ["\u2212", "-"],
  ["\u00d7", "*"],
  ["\u00f7", "/"],
  ["\u00b0", "deg"],
  ["\u00bc", "1/4"],
  ["\u00bd", "1/2"],
  ["\u00be", "3/4"],
  ["\u2264", "<="],
  ["\u2265", ">="],
  ["\u2260", "<>"],
  [";", "a new line"],
]);

const visible = (character: string): string => {
  const code = character.codePointAt(0)!;
  const plain = /[\p{L}\p{N}\p{P}\p{S}]/u.test(character);
  return plain ? character : `U+${code.toString(16).toUpperCase().padStart(4, "0")}`;
};

const endOf = (token: IToken): number => token.startOffset + token.image.length;
const wordOf = (token: IToken): Word => ({ text: token.image, from: token.startOffset, to: endOf(token) });

const ownSlot = (name: string, type: string): Slot => ({
  name,
  note: type,
  wanted: /^[aeiou]/.test(type) ? `an ${type}` : `a ${type}`,
  shape: type === "direction" ? "direction" : "value",
  many: false,
});

const lastBranch = (line: Line): Line => (line.otherwise ? lastBranch(line.otherwise) : line);

const withOtherwise = (line: Line, branch: Line): Line =>
  line.otherwise
    ? { ...line, otherwise: withOtherwise(line.otherwise, branch), to: branch.to }
    : { ...line, otherwise: branch.otherwise ?? branch, to: branch.to };
