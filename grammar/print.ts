// Tree to tidy text: one style and no options. Values are printed from their own words with the spacing settled, so that
// numbers, brackets and texts stay as the pattern maker wrote them, and comments stay where they stood.
import type { Form } from "./phrase.ts";
import { lineOf, lineStarts } from "./source.ts";
import { LeftRound, NameToken, RightRound, scan, type Token } from "./tokens.ts";
import type { Block, Comment, Entry, Expression, Line, Operand, RecipeTree, Stretch } from "./tree.ts";
import { expressionsWithin, linesWithin } from "./within.ts";

/** A block of entries stays on one line up to this many characters. */
const entriesWidth = 100;

/** The recipe as tidy text. Only for recipes that were read without a mistake. */
export const tidy = (tree: RecipeTree, forms: ReadonlyMap<string, readonly Form[]>): string =>
  new Printing(tree, forms).recipe();

/** A line of output, or a run member whose columns are settled later. */
interface Printed {
  readonly indent: number;
  /** The cells of a `measure` or `param` line, or one cell. */
  readonly cells: readonly string[];
  readonly aligned: boolean;
  comment?: string;
}

class Printing {
  private readonly tokens: readonly Token[];
  private readonly starts: readonly number[];
  private readonly binaryMinus = new Set<number>();
  private readonly out: (Printed | "")[] = [];
  private readonly comments: readonly Comment[];
  /** How many of the comments are printed; they are printed in order. */
  private told = 0;
  private readonly tree: RecipeTree;
  private readonly forms: ReadonlyMap<string, readonly Form[]>;
  /** The source line that what was printed last ends on. */
  private lastLine = 0;

  constructor(tree: RecipeTree, forms: ReadonlyMap<string, readonly Form[]>) {
    this.tree = tree;
    this.forms = forms;
    this.tokens = scan(tree.text).tokens;
    this.starts = lineStarts(tree.text);
    this.comments = tree.comments;
    for (const expression of linesWithin(tree.lines).flatMap(expressionsWithin)) this.note(expression);
  }

  recipe(): string {
    this.lines(this.tree.lines, 0, this.tree.text.length + 1);
    while (this.out.at(-1) === "") this.out.pop();
    return `${this.settled().join("\n")}\n`;
  }

  private lines(lines: readonly Line[], indent: number, end: number): void {
    for (const line of lines) {
      this.commentsBefore(line.from, indent);
      this.line(line, indent, line.verb.text);
    }
    this.commentsBefore(end, indent);
  }

  /** Comments that stand on lines of their own above an offset. */
  private commentsBefore(offset: number, indent: number): void {
    for (let comment = this.comment; comment && comment.from < offset; comment = this.comment) {
      this.told += 1;
      this.push(comment, { indent, cells: [comment.text], aligned: false });
    }
  }

  /** Prints under what came before, with a blank line where one stood. */
  private push(stretch: Stretch, printed: Printed): void {
    const from = lineOf(this.starts, stretch.from);
    const opens =
      this.out.at(-1) !== undefined &&
      this.out.at(-1) !== "" &&
      (this.out.at(-1) as Printed).cells.join("").endsWith("{");
    if (from > this.lastLine + 1 && this.out.length > 0 && !opens && this.out.at(-1) !== "") this.out.push("");
    this.out.push(printed);
    this.lastLine = Math.max(this.lastLine, lineOf(this.starts, Math.max(stretch.from, stretch.to - 1)));
  }

  private line(line: Line, indent: number, verb: string): void {
    const head = this.head(line);
    const headEnd = line.block ? line.block.from : line.to;
    // A comment inside a statement that goes over several lines moves above it.
    const lastWord = this.wordBefore(headEnd)?.startOffset ?? 0;
    for (let comment = this.comment; comment && comment.from < lastWord; comment = this.comment) {
      this.told += 1;
      this.push(line, { indent, cells: [comment.text], aligned: false });
    }
    const aligned = verb === "measure" || verb === "param";
    if (!line.block) {
      this.push(line, { indent, cells: aligned ? head : [head.join(" ")], aligned });
      this.trailing(line.to);
      return;
    }
    this.block(line, line.block, head.join(" "), indent);
  }

  private block(line: Line, block: Block, head: string, indent: number): void {
    const inside = this.comment !== undefined && this.comment.from < block.to;
    const oneLine = `${head} { ${block.entries.map((entry) => this.entry(entry)).join(", ")} }`;
    const isRecipe = line.verb.text === "recipe";
    if (block.entries.length > 0 && !inside && !isRecipe && indent + oneLine.length <= entriesWidth) {
      this.push(line, { indent, cells: [oneLine], aligned: false });
      this.trailing(block.to);
      return;
    }
    if (block.entries.length === 0 && block.lines.length === 0 && !inside && !line.otherwise) {
      this.push(line, { indent, cells: [`${head} { }`], aligned: false });
      this.trailing(block.to);
      return;
    }
    this.push({ from: line.from, to: block.from + 1 }, { indent, cells: [`${head} {`], aligned: false });
    this.blockBody(block, indent);
    this.otherwise(line, indent);
  }

  private blockBody(block: Block, indent: number): void {
    this.trailing(block.from + 1);
    for (const entry of block.entries) {
      this.commentsBefore(entry.from, indent + 2);
      this.push(entry, { indent: indent + 2, cells: [this.entry(entry)], aligned: false });
      this.trailing(entry.to);
    }
    this.lines(block.lines, indent + 2, block.to - 1);
    if (this.out.at(-1) === "") this.out.pop();
  }

  private otherwise(line: Line, indent: number): void {
    const branch = line.otherwise;
    const close = line.block!.to;
    if (!branch?.block) {
      this.close(close, indent, "}");
      return;
    }
    const head = branch.verb.text === "if" ? `else ${this.head(branch).join(" ")}` : "else";
    // Comments between } and else come above the closing brace's line.
    this.commentsBefore(branch.from, indent + 2);
    this.close(branch.block.from + 1, indent, `} ${head} {`);
    this.blockBody(branch.block, indent);
    this.otherwise(branch, indent);
  }

  private close(offset: number, indent: number, text: string): void {
    this.out.push({ indent, cells: [text], aligned: false });
    this.lastLine = lineOf(this.starts, offset - 1);
    this.trailing(offset);
  }

  /** The first comment that is not printed yet. */
  private get comment(): Comment | undefined {
    return this.comments[this.told];
  }

  /** A comment behind what was just printed, on the same line of the source. */
  private trailing(offset: number): void {
    const { comment } = this;
    const last = this.out.at(-1);
    if (!comment || !last || comment.from < offset - 1) return;
    if (lineOf(this.starts, comment.from) !== lineOf(this.starts, offset - 1)) return;
    const word = this.wordBefore(comment.from);
    if (word && word.startOffset >= offset && word.image !== ",") return;
    this.told += 1;
    last.comment = comment.text;
  }

  /** The last word or sign before an offset. */
  private wordBefore(offset: number): Token | undefined {
    let index = this.firstTokenAt(offset) - 1;
    while (this.tokens[index]?.image === "\n") index -= 1;
    return this.tokens[index];
  }

  /** The words of a statement without its block: for `measure` and `param` in columns, else in one cell. */
  private head(line: Line): string[] {
    const clauses = this.ordered(line);
    const prefixEnd = Math.min(
      ...line.clauses.map(({ from }) => from),
      line.text?.from ?? line.to,
      line.block?.from ?? line.to,
    );
    const prefix = this.words({ from: line.from, to: Math.max(prefixEnd, line.verb.to) });
    const behind = clauses.map(({ word, operands }) =>
      [word.text, operands.map((operand) => this.operand(operand)).join(", ")].filter((part) => part !== "").join(" "),
    );
    const text = line.text ? [this.tree.text.slice(line.text.from, line.text.to)] : [];
    if (line.verb.text !== "measure" && line.verb.text !== "param") return [[prefix, ...behind, ...text].join(" ")];
    const [name, value] = splitOnce(prefix, " = ");
    // A line that still lacks its value is no mistake of writing, and stays as it is.
    return [name, value === "" ? "" : `= ${value}`, behind.join(" "), text.join("")];
  }

  /** Clauses in the order in which the form declares them. */
  private ordered(line: Line): Line["clauses"] {
    const given = line.clauses.map(({ word }) => word.text);
    const form = (this.forms.get(line.verb.text) ?? []).find(({ clauses }) =>
      given.every((word) => clauses.some((clause) => clause.word === word)),
    );
    if (!form) return line.clauses;
    const rank = (word: string): number => form.clauses.findIndex((clause) => clause.word === word);
    return [...line.clauses].sort((a, b) => rank(a.word.text) - rank(b.word.text));
  }

  private entry({ name, value }: Entry): string {
    const text = this.words(value);
    return value.kind === "text" ? `${name.text} ${text}` : `${name.text} = ${text}`;
  }

  private operand(operand: Operand): string {
    return this.words(operand);
  }

  /** The words of a stretch with the spacing settled. */
  private words({ from, to }: Stretch): string {
    let text = "";
    let before: Token | undefined;
    for (let index = this.firstTokenAt(from); index < this.tokens.length; index += 1) {
      const token = this.tokens[index]!;
      if (token.startOffset >= to) break;
      if (token.image === "\n") continue;
      const image = token.image.replace(/^(\d+) +(?=\d)/, "$1 ");
      text += before && this.spaced(before, token) ? ` ${image}` : image;
      before = token;
    }
    return text;
  }

  private firstTokenAt(offset: number): number {
    let low = 0;
    let high = this.tokens.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.tokens[middle]!.startOffset < offset) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  private spaced(before: Token, token: Token): boolean {
    const [left, right] = [before.image, token.image];
    if (
      left === "(" ||
      right === ")" ||
      right === "," ||
      left === "." ||
      right === "." ||
      left === "--" ||
      right === "--"
    )
      return false;
    // Two minus signs with nothing between them would be the sign of a line between two places.
    if (left === "-" && !this.binaryMinus.has(before.startOffset)) return right === "-";
    if (token.tokenType === LeftRound && before.tokenType === NameToken) return this.isPlaceAfterWord(before, token);
    return true;
  }

  /** `length(hem)` is a call and has no space; `to (3 cm, 4 cm)` is a word and a place, and has one. */
  private isPlaceAfterWord(word: Token, bracket: Token): boolean {
    return !this.calls.has(word.startOffset) && bracket.tokenType !== RightRound;
  }

  private readonly calls = new Set<number>();

  /** Notes whether an expression subtracts, and whether it calls a function. */
  private note(expression: Expression): void {
    if (expression.kind === "binary" && expression.operator === "-") this.binaryMinus.add(expression.sign.from);
    if (expression.kind === "call") this.calls.add(expression.name.from);
    if (expression.kind === "at" && expression.fromEnd && expression.amount) {
      const index = this.firstTokenAt(expression.amount.from) - 1;
      for (let each = index; each >= 0 && each > index - 3; each -= 1) {
        if (this.tokens[each]!.image !== "-") continue;
        this.binaryMinus.add(this.tokens[each]!.startOffset);
        break;
      }
    }
  }

  /** Sets the columns of runs of `measure` and `param` lines, and puts the comments behind. */
  private settled(): string[] {
    const lines: string[] = [];
    for (let index = 0; index < this.out.length; ) {
      let next = index;
      while (isAligned(this.out[next])) next += 1;
      if (next > index) {
        lines.push(...inColumns(this.out.slice(index, next) as Printed[]));
        index = next;
        continue;
      }
      const printed = this.out[index]!;
      lines.push(printed === "" ? "" : withComment(`${" ".repeat(printed.indent)}${printed.cells[0]}`, printed));
      index += 1;
    }
    return lines;
  }
}

const isAligned = (printed: Printed | "" | undefined): boolean =>
  printed !== undefined && printed !== "" && printed.aligned;

const withComment = (text: string, { comment }: Printed): string =>
  comment === undefined ? text : `${text}  ${comment}`;

const inColumns = (run: readonly Printed[]): string[] => {
  const widths = [0, 1, 2].map((column) => Math.max(...run.map(({ cells }) => [...(cells[column] ?? "")].length)));
  return run.map((printed) => {
    const text = printed.cells
      .map((cell, column) => (column < 3 ? cell + " ".repeat(widths[column]! - [...cell].length) : cell))
      .filter((cell, column) => column === 3 || widths[column]! > 0 || cell !== "")
      .join(" ");
    return withComment(`${" ".repeat(printed.indent)}${text}`.trimEnd(), printed);
  });
};

const splitOnce = (text: string, by: string): [string, string] => {
  const at = text.indexOf(by);
  return at < 0 ? [text, ""] : [text.slice(0, at), text.slice(at + by.length)];
};
