// Text to tree, one statement at a time. A mistake stays on its own line: every other line is read as if it were not there.
import { withArticle } from "./article.ts";
import type { Diagnostic, Fix, More, Where } from "./diagnostic.ts";
import { limits } from "./limits.ts";
import { readEntry, readParameters, readStatement } from "./line-parser.ts";
import { didYouMean, nearest } from "./nearest.ts";
import type { Form, Part, Slot } from "./phrase.ts";
import { lineOf, lineStarts } from "./source.ts";
import { statements } from "./statements.ts";
import { hiddenMark, hiddenMarks, isHiddenMark, strangeCharacter } from "./strange-characters.ts";
import { tagEntry, tagLine, tagParameters, withoutEquals } from "./tagging.ts";
import {
  Comma,
  Equal,
  isWord,
  LeftCurly,
  LeftRound,
  NamingEquals,
  Newline,
  NewName,
  NumberToken,
  RightCurly,
  RightRound,
  Strange,
  scan,
  shown,
  TextToken,
  type Token,
  UnclosedText,
} from "./tokens.ts";
import type { Block, Comment, Entry, Line, Parameter, RecipeTree, Stretch, Word } from "./tree.ts";
import { slip, wanted } from "./wanted.ts";

/** The forms that a first word may have; several where a step may be said in several ways. */
export type Forms = ReadonlyMap<string, readonly Form[]>;

export interface Parsed {
  readonly tree: RecipeTree;
  readonly diagnostics: readonly Diagnostic[];
  /** How many more there were than are told. */
  readonly untold: number;
  /** The vocabulary with the recipe's own steps added. */
  readonly forms: Forms;
}

const statementForms: ReadonlyMap<string, readonly Form[]> = new Map(statements.map((form) => [form.verb, [form]]));

/** Reads a recipe. Never throws on bad text; what could not be read stands in the tree as a broken line. */
export const parse = (text: string, file: string, steps: Forms): Parsed => new Reading(text, file, steps).recipe();

/** First words that stand in no piece. */
const ofTheRecipe = new Set([
  "piece",
  ...statements.filter(({ place }) => place === "garment").map(({ verb }) => verb),
]);

/** Signs after which a statement goes on in the next line. */
const goesOn = new Set([",", "+", "-", "*", "/", "=", "<", ">", "<=", ">=", "<>", "and", "or", "not", "--"]);

/** Words behind a place, which may be called what a step is called: "mark toward B 50%". */
const walks = new Set(["at", "toward", "left", "right", "up", "down", "bearing", "and", "or"]);

class Reading {
  private readonly tokens: Token[];
  private readonly comments: Comment[];
  private readonly starts: number[];
  private readonly forms: Map<string, readonly Form[]>;
  /** Steps of the recipe's own whose declaration could not be read: calling one is no mistake of the call's. */
  private readonly unlearned = new Set<string>();
  /** For each token, how many more } than { stand from it on; counted when it is first asked for. */
  private closingFrom: Int32Array | undefined;
  /** How many blocks are being read. */
  private opened = 0;
  /** The last { that was never closed, and lines that turned out to stand behind the block in which they were read. */
  private unclosed: Token | undefined;
  private behind: readonly Line[] = [];
  /** The step of the recipe's own whose lines are being read. */
  private declaring: string | undefined;
  private readonly diagnostics: Diagnostic[] = [];
  private untold = 0;
  private at = 0;
  private readonly text: string;
  private readonly file: string;

  constructor(text: string, file: string, steps: Forms) {
    this.text = text;
    this.file = file;
    this.forms = new Map([...statementForms, ...steps]);
    this.starts = lineStarts(text);
    const { tokens, comments } = scan(isTooLarge(text) ? "" : text);
    this.tokens = tokens;
    this.comments = comments.map((token) => ({
      text: token.image.trimEnd(),
      from: token.startOffset,
      to: token.startOffset + token.image.trimEnd().length,
    }));
  }

  recipe(): Parsed {
    const lines: Line[] = [];
    if (isTooLarge(this.text)) {
      const start = { from: 0, to: 0 };
      this.report(
        "file-too-large",
        start,
        `This file is larger than ${limits.fileBytes / 1024 / 1024} MiB, which no recipe is.`,
      );
    } else {
      for (const mark of hiddenMarks(this.text)) this.report(...hiddenMark(mark, this.text));
    }
    while (this.at < this.tokens.length) {
      for (const line of this.lines(0)) lines.push(line);
      const stray = this.tokens[this.at];
      if (stray) {
        this.report("stray-brace", stray, "This } closes nothing: no { is open here.", {
          hint: "Take it out, or look for a missing { above.",
        });
        this.at += 1;
      }
    }
    const tree: RecipeTree = { file: this.file, text: this.text, lines, comments: this.comments };
    return { tree, diagnostics: this.diagnostics, untold: this.untold, forms: this.forms };
  }

  /** Lines up to the closing brace (which is left standing) or the end. */
  private lines(depth: number): Line[] {
    const lines: Line[] = [];
    // The branches of the `if` that was read last, in order.
    let branches: Line[] = [];
    const settle = (): void => {
      if (branches.length > 1) lines[lines.length - 1] = inOneLine(branches);
      branches = [];
    };
    for (;;) {
      while (this.tokens[this.at]?.tokenType === Newline) this.at += 1;
      const token = this.tokens[this.at];
      if (!token || token.tokenType === RightCurly) {
        settle();
        return lines;
      }
      const line = this.line(depth);
      if (!line) continue;
      if (line.verb.text === "else") {
        this.branch(line, branches, lines.at(-1));
        continue;
      }
      settle();
      lines.push(line);
      for (const each of this.behind) lines.push(each);
      this.behind = [];
      if (line.verb.text === "if") branches = [line];
    }
  }

  /** Adds an `else` to the `if` that it belongs to. */
  private branch(line: Line, branches: Line[], before: Line | undefined): void {
    if (branches.length >= limits.nesting) {
      // Said of the first one too many only; the rest of a long run of them is passed over.
      if (branches.length === limits.nesting) {
        this.report("nesting-too-deep", line.verb, `An if has at most ${limits.nesting} branches.`);
        const { block: _, ...unread } = line;
        branches.push({ ...unread, broken: true });
      }
    } else if (branches.at(-1)?.verb.text === "if") {
      branches.push(line.otherwise ?? line);
    } else if (!(before?.broken && before.block)) {
      // A line that could not be read may well have been the `if`, and has been reported.
      this.report("else-without-if", line.verb, "There is no `if` right before this `else`.");
    }
  }

  /** One statement with its block; undefined when it has not even a first word. */
  private line(depth: number): Line | undefined {
    const words = this.words();
    const open = this.opening();
    const [first, second] = words;
    const start = first?.image === "else" && second?.image === "if" ? 1 : 0;
    const verb = words[start];
    if (!verb || !isWord(verb)) {
      const at = verb ?? open;
      if (verb?.tokenType === Strange || verb?.tokenType === UnclosedText) this.strange(words);
      else if (at) this.report("line-start", at, `A line starts with a step or a statement, not with ${shown(at)}.`);
      if (open) this.block(open, depth, undefined);
      return undefined;
    }
    const known = this.forms.get(verb.image);
    const line = known ? this.known(words.slice(start), known, open, depth) : this.unknown(verb, words, open, depth);
    if (start === 0) return line;
    // `else if …` is an else branch that is itself an if.
    const { startOffset: from } = first!;
    return { ...line, verb: { text: "else", from, to: from + 4 }, from, otherwise: line };
  }

  /** The { that opens the block of the statement just read, perhaps on a line of its own. */
  private opening(): Token | undefined {
    let next = this.at;
    while (this.tokens[next]?.tokenType === Newline) next += 1;
    if (this.tokens[next]?.tokenType !== LeftCurly) return undefined;
    this.at = next;
    return this.tokens[next];
  }

  /** A statement whose first word is known. */
  private known(words: Token[], forms: readonly Form[], open: Token | undefined, depth: number): Line {
    const verb = words[0]!;
    const before = this.diagnostics.length;
    const line = this.statement(words, forms);
    const whole = this.withBlock(line, forms, open, depth, this.diagnostics.length === before);
    return verb.image === "step" && !this.learn(whole) ? { ...whole, broken: true } : whole;
  }

  /** A statement with the block that belongs to it. */
  private withBlock(line: Line, forms: readonly Form[], open: Token | undefined, depth: number, isFine: boolean): Line {
    const { verb } = line;
    if (!open) {
      if (line.broken || forms.some((form) => form.block === undefined || form.blockOptional === true)) return line;
      this.report("block-missing", verb, `${verb.text} needs a block: a { at the end of its line, and a } below.`, {
        hint: "Write { at the end of this line.",
      });
      if (!this.closesBelow()) return { ...line, broken: true };
      const lines = this.lines(depth + 1);
      this.at += 1;
      return { ...line, block: { lines, entries: [], from: line.to, to: endOf(this.tokens[this.at - 1]!) } };
    }
    if (forms.every((form) => form.block === undefined)) {
      if (isFine) this.report("block-unexpected", open, `A ${verb.text} line has no { } block.`);
      return { ...line, block: this.unreadBlock(open), broken: true };
    }
    const outer = this.declaring;
    if (verb.text === "step") this.declaring = line.names[0]?.text;
    const block = this.block(open, depth, entriesHolder(forms));
    this.declaring = outer;
    const lines = verb.text === "piece" && this.unclosed === open ? this.untilNextPiece(block.lines) : block.lines;
    return { ...line, block: { ...block, lines }, to: block.to };
  }

  /** Whether more } stand below than blocks are open: then only the { was forgotten, and what stands between is the block. */
  private closesBelow(): boolean {
    this.closingFrom ??= closingFrom(this.tokens);
    return this.closingFrom[this.at]! > this.opened;
  }

  /** A piece that is never closed ends, for all we know, where the next thing of the whole recipe begins. */
  private untilNextPiece(lines: readonly Line[]): readonly Line[] {
    const next = lines.findIndex(({ verb }) => ofTheRecipe.has(verb.text));
    if (next < 0) return lines;
    this.behind = lines.slice(next);
    return lines.slice(0, next);
  }

  /** The tokens of one statement, up to a brace or the end of its line; continued lines included. */
  private words(): Token[] {
    const words: Token[] = [];
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
    if (statementForms.has(first.image)) return true;
    return second !== undefined && (isWord(second) || /^["\d(]/.test(second.image)) && !walks.has(second.image);
  }

  private statement(words: Token[], forms: readonly Form[]): Line {
    const verb = words[0]!;
    const stretch = { from: verb.startOffset, to: endOf(words.at(-1)!) };
    const broken = (): Line => ({
      verb: wordOf(verb),
      names: namesGiven(words),
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
    const line = readStatement(words);
    if ("misfit" in line) {
      const { code, token, message, more } = wanted(line.misfit, words, forms);
      this.report(code, token, message, more);
      return broken();
    }
    let parameters: Parameter[] | undefined;
    if (parameterWords.length > 0) {
      parameters = this.parameters(parameterWords);
      if (!parameters) return broken();
    }
    const said = { ...line.read, from: stretch.from, to: stretch.to, broken: false };
    return parameters ? { ...said, parameters } : said;
  }

  private parameters(words: Token[]): Parameter[] | undefined {
    const tagged = tagParameters(words);
    if (tagged) {
      this.report(tagged.code, tagged.token, tagged.message, tagged.more);
      return undefined;
    }
    const parameters = readParameters(words);
    if ("read" in parameters) return parameters.read;
    const token = parameters.misfit ?? words.at(-1)!;
    this.report(
      "parameter-unreadable",
      token,
      `The parameters of a step are written (edge shoulder, length amount = 5 cm), each with its kind and its name; ${shown(token)} does not fit there.`,
    );
    return undefined;
  }

  /** A statement whose first word nobody knows; it is read as the nearest known one would be, for the names it gives. */
  private unknown(verb: Token, words: Token[], open: Token | undefined, depth: number): Line {
    const stretch = { from: verb.startOffset, to: endOf(words.at(-1)!) };
    const nearestVerb = this.isFull ? undefined : nearest(verb.image, this.forms.keys())[0];
    const forms = nearestVerb === undefined ? undefined : this.forms.get(nearestVerb)!;
    if (verb.image === this.declaring) {
      const message = `${verb.image} is not complete yet here: a step calls only steps above it, so never itself.`;
      this.report("step-in-itself", verb, message, { hint: "Use repeat to do a thing several times." });
    } else if (!this.unlearned.has(verb.image)) {
      const hyphened = `${verb.image}-${words[words.indexOf(verb) + 1]?.image}`;
      const near = this.isFull ? undefined : didYouMean(verb.image, this.forms.keys());
      const hint = this.forms.has(hyphened) ? `Write ${hyphened}, with the hyphen.` : near;
      this.report("step-unknown", verb, `There is no step called ${shown(verb)}.`, hint === undefined ? {} : { hint });
    }
    if (forms) tagLine(words, forms);
    const line: Line = {
      verb: wordOf(verb),
      names: namesGiven(words),
      operands: [],
      clauses: [],
      ...stretch,
      broken: true,
    };
    if (!open) return line;
    const holds = forms?.some((form) => form.block !== undefined) ?? false;
    const block = holds ? this.block(open, depth, entriesHolder(forms!)) : this.unreadBlock(open);
    return { ...line, block, to: block.to };
  }

  /** A block of which nothing is known: it is passed over. */
  private unreadBlock(open: Token): Block {
    this.at += 1;
    this.skipBlock();
    const last = this.tokens[this.at - 1]!;
    if (last.tokenType !== RightCurly) this.neverClosed(open);
    return { lines: [], entries: [], from: open.startOffset, to: endOf(last) };
  }

  /** Adds a step of the recipe's own to the words that lines below may start with; false where it cannot be. */
  private learn(line: Line): boolean {
    const [name] = line.names;
    if (!name || line.broken) {
      if (name) this.unlearned.add(name.text);
      return false;
    }
    if (this.forms.has(name.text)) {
      this.report("step-known", name, `There is already a step called ${name.text}.`, { hint: "Choose another name." });
      return false;
    }
    const clauses = (line.parameters ?? []).map(({ name: { text }, type, standard }) => ({
      word: text,
      slot: ownSlot(text, type.text),
      optional: standard !== undefined,
      needs: [],
    }));
    this.forms.set(name.text, [{ verb: name.text, clauses, parts: partsOf(name.text, clauses) }]);
    return true;
  }

  private block(open: Token, depth: number, holder: string | undefined): Block {
    this.at += 1;
    if (depth + 1 > limits.nesting) {
      this.report("nesting-too-deep", open, `Blocks stand more than ${limits.nesting} deep here.`);
      this.skipBlock();
      return { lines: [], entries: [], from: open.startOffset, to: endOf(this.tokens[this.at - 1] ?? open) };
    }
    this.opened += 1;
    const lines = holder === undefined ? this.lines(depth + 1) : [];
    const entries = holder === undefined ? [] : this.entries(holder);
    this.opened -= 1;
    const close = this.tokens[this.at];
    if (close?.tokenType === RightCurly) this.at += 1;
    else this.neverClosed(open);
    return { lines, entries, from: open.startOffset, to: close ? endOf(close) : this.text.length };
  }

  private neverClosed(open: Token): void {
    this.unclosed = open;
    this.report("block-open", open, "This { is never closed.", { hint: "Write the } that closes it." });
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
      const entry = readEntry(words);
      const [, sign] = words;
      if ("misfit" in entry) {
        const at = entry.misfit ?? words.at(-1)!;
        const said = `In a ${holder} block each entry is written NAME = VALUE; ${shown(at)} does not fit there.`;
        const known = slip(words, at);
        this.report(known?.code ?? "entry-unreadable", known?.token ?? at, known?.message ?? said, known?.more);
      } else if (sign && sign.tokenType !== NamingEquals && sign.tokenType !== TextToken) {
        this.report(...withoutEquals(words[0]!, sign));
      } else entries.push(entry.read);
    }
  }

  private entryWords(): Token[] {
    const words: Token[] = [];
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
  private readable(words: readonly Token[]): boolean {
    if (this.strange(words)) return false;
    if (words.length > limits.statementWords) {
      this.report(
        "line-too-long",
        words[limits.statementWords]!,
        `This statement has more than ${limits.statementWords} words and signs.`,
      );
      return false;
    }
    if (this.long(words)) return false;
    const open: Token[] = [];
    let inARow = 0;
    let signs = 0;
    for (const token of words) {
      inARow = before.has(token.image) ? inARow + 1 : 0;
      // A comma and an equals sign outside of brackets begin a value anew.
      const begins = open.length === 0 && (token.tokenType === Comma || token.tokenType === Equal);
      signs = begins ? 0 : signs + (between.has(token.image) ? 1 : 0);
      if (token.tokenType === LeftRound) open.push(token);
      if (open.length > limits.nesting || inARow > limits.nesting) {
        this.report("nesting-too-deep", token, `Brackets or signs stand more than ${limits.nesting} deep here.`);
        return false;
      }
      if (signs > limits.valueSigns) {
        const message = `This value has more than ${limits.valueSigns} operators and place words.`;
        this.report("value-too-long", token, message, { hint: "Name parts of it with let, or places with point." });
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

  private long(words: readonly Token[]): boolean {
    const text = words.find(({ image, tokenType }) => tokenType === TextToken && image.length - 2 > limits.textLetters);
    const word = words.find((token) => token.image.length > mostLetters(token));
    if (text) {
      const hint = "Say it in fewer words, or in a comment.";
      this.report("text-too-long", text, `This text has more than ${limits.textLetters} letters.`, { hint });
    } else if (word) {
      this.report("word-too-long", word, `${shown(word)} has more than ${mostLetters(word)} letters or digits.`);
    }
    return (text ?? word) !== undefined;
  }

  private strange(words: readonly Token[]): boolean {
    const token = words.find(({ tokenType }) => tokenType === Strange || tokenType === UnclosedText);
    if (!token) return false;
    if (token.tokenType === UnclosedText) {
      const behindNumber = words[words.indexOf(token) - 1]?.tokenType === NumberToken;
      const hint = behindNumber
        ? "Write in for inches; a text needs its end on the same line."
        : 'Write " at its end, on the same line.';
      this.report("text-open", token, 'This text has no closing ".', { hint });
    } else if (!isHiddenMark(token.image)) {
      this.report("character-strange", ...strangeCharacter(token, this.text));
    }
    return true;
  }

  private where(stretch: Stretch): Where {
    return { file: this.file, from: stretch.from, to: stretch.to, line: lineOf(this.starts, stretch.from) };
  }

  /** As many findings are told as the limits allow; a file with more of them is no recipe, and the rest is only counted. */
  private get isFull(): boolean {
    return this.diagnostics.length >= limits.findings;
  }

  private report(code: string, at: Token | Stretch, message: string, more: More = {}): void {
    if (this.isFull) {
      this.untold += 1;
      return;
    }
    const where = this.where("startOffset" in at ? { from: at.startOffset, to: endOf(at) } : at);
    const { hint, replace } = more;
    const fix: Fix | undefined =
      replace === undefined
        ? undefined
        : {
            title: hint?.replace(/\.$/, "") ?? `Write ${replace}`,
            where: more.over ? this.where(more.over) : where,
            text: replace,
          };
    this.diagnostics.push({
      code,
      severity: "error",
      where,
      message,
      ...(hint !== undefined && { hint }),
      ...(fix && { fix }),
    });
  }
}

/** Counts bytes only where letters beyond ASCII could make the difference: no letter takes more than three for each code unit. */
const isTooLarge = (text: string): boolean => {
  if (text.length > limits.fileBytes) return true;
  return text.length * 3 > limits.fileBytes && new TextEncoder().encode(text).length > limits.fileBytes;
};

const closingFrom = (tokens: readonly Token[]): Int32Array => {
  const closing = new Int32Array(tokens.length + 1);
  for (let index = tokens.length - 1; index >= 0; index -= 1) {
    const type = tokens[index]!.tokenType;
    closing[index] = closing[index + 1]! + (type === RightCurly ? 1 : type === LeftCurly ? -1 : 0);
  }
  return closing;
};

/** Signs and words that stand before a value of their own kind, and so may stand in a row. */
const before = new Set(["-", "not", "toward", "along", "square-to"]);

// Nobody needs so many digits, but some like to see what becomes of them.
const mostLetters = (token: Token): number => (isWord(token) ? limits.wordLetters : limits.textLetters + 2);

/** Signs and words between two values. */
const between = new Set([
  ..."+-*/<>",
  "--",
  "<=",
  ">=",
  "<>",
  "and",
  "or",
  "at",
  "left",
  "right",
  "up",
  "down",
  "toward",
  "bearing",
]);

const entriesHolder = (forms: readonly Form[]): string | undefined =>
  forms[0]?.block === "entries" || forms[0]?.block === "fields" ? forms[0].verb : undefined;

/** The names that a statement gives as far as it could be read; of one that nobody knows, the words before its =. */
const namesGiven = (words: readonly Token[]): Word[] => {
  const tagged = words.filter((token) => token.tokenType === NewName);
  if (tagged.length > 0) return tagged.map(wordOf);
  const equals = words.findIndex((token) => token.image === "=");
  return words.slice(1, Math.max(1, equals)).filter(isWord).map(wordOf);
};

const endOf = (token: Token): number => token.startOffset + token.image.length;
const wordOf = (token: Token): Word => ({ text: token.image, from: token.startOffset, to: endOf(token) });

/** The sentence of a step of the recipe's own: its parameters in the order in which it declares them. */
const partsOf = (verb: string, clauses: Form["clauses"]): Part[] => [
  { kind: "words", words: [verb] },
  ...clauses.flatMap(({ word, slot, optional }): Part[] => {
    const clause: Part[] = [{ kind: "words", words: [word] }, ...(slot ? [{ kind: "slot" as const, slot }] : [])];
    return optional ? [{ kind: "optional", parts: clause }] : clause;
  }),
];

const ownSlot = (name: string, type: string): Slot => ({
  name,
  note: "a parameter of the step",
  wanted: withArticle(type),
  shape: type === "direction" ? "direction" : "value",
  many: false,
});

/** An `if` with its `else if` and `else` branches, each in the one before. */
const inOneLine = (branches: readonly Line[]): Line =>
  branches.reduceRight((otherwise, line) => ({ ...line, otherwise, to: otherwise.to }));
