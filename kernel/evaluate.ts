// Works a recipe line by line. Mistakes become findings and stop one line only; what a failed line would have named is
// withheld, and lines that need it are passed over in silence, so that one cause gives one finding.
import type { Diagnostic, Where } from "../grammar/diagnostic.ts";
import { limits } from "../grammar/limits.ts";
import { nearest } from "../grammar/nearest.ts";
import { type Vocabulary as Forms, lineOf, lineStarts, type Parsed, parse } from "../grammar/parse.ts";
import type { Form } from "../grammar/phrase.ts";
import type { Block, Line, RecipeTree, Stretch } from "../grammar/tree.ts";
import type { Body } from "./body.ts";
import { partOf, unknown } from "./expression.ts";
import { type Filling, fill, formFor } from "./fill.ts";
import { hiddenName, shownNames, withPlainNames } from "./hidden-names.ts";
import { LimitReached, Problem, Withheld } from "./problem.ts";
import type { StepRecord } from "./record.ts";
import { type Bound, Scope } from "./scope.ts";
import type { Sources } from "./sources.ts";
import { callOwnStep, type OwnStep } from "./statements/own-step.ts";
import { statementWork } from "./statements/statement-work.ts";
import type { Step, Line as StepLine } from "./step.ts";
import type { Scalar, Value } from "./value.ts";
import { withinLimits } from "./within-limits.ts";
import type { Acceptance, Cut, Fabric, Garment, Judged, Piece, Seam, Units } from "./working.ts";

/** A recipe's value as reports show it. */
export interface NamedValue {
  readonly value: Value;
  readonly kind: "measure" | "param" | "let";
  readonly note?: string;
  readonly range?: { readonly least: Scalar; readonly most: Scalar };
  readonly where: Where;
}

/** A size of the size table. */
export interface Size {
  readonly name: string;
  readonly measures: ReadonlyMap<string, Scalar>;
  readonly base: boolean;
  readonly where: Where;
}

/** All that came of working a recipe. */
export interface Evaluated {
  readonly garment: Garment;
  readonly values: ReadonlyMap<string, NamedValue>;
  readonly sizes: ReadonlyMap<string, Size>;
  readonly diagnostics: readonly Diagnostic[];
  /** The recipe's own `check` lines. */
  readonly judged: readonly Judged[];
  readonly records: readonly StepRecord[];
  readonly uses: ReadonlyMap<string, Evaluated>;
  readonly tree: RecipeTree;
  readonly fields: ReadonlyMap<string, string>;
  /** A line could not be read or worked. */
  readonly incomplete: boolean;
}

/** What one run shares among the recipe that was opened and all that it uses. */
export interface Run {
  readonly steps: ReadonlyMap<string, Step>;
  readonly forms: Forms;
  readonly checkNames: readonly string[];
  readonly sources: Sources;
  readonly body: Body;
  readonly parsed: Map<string, Parsed>;
  /** Lines worked, files used, pieces and curve spans so far. */
  readonly spent: { steps: number; files: number; pieces: number };
}

/** A finding on its way up: out of a trial, where nothing may be reported yet, or out of everything, when a limit is reached. */
export class LineFailed extends Error {
  readonly diagnostic: Diagnostic;
  readonly isLimit: boolean;

  constructor(diagnostic: Diagnostic, isLimit: boolean) {
    super(diagnostic.message);
    this.diagnostic = diagnostic;
    this.isLimit = isLimit;
  }
}

/** One recipe being worked. */
export class Working {
  title = "";
  units: Units = "cm";
  readonly run: Run;
  readonly tree: RecipeTree;
  readonly file: string;
  /** The recipe that was opened, or one that it uses. */
  readonly isRoot: boolean;
  /** Params given by the `use` line or the command line. */
  readonly given: ReadonlyMap<string, Scalar>;
  /** The files that are being worked now, outermost first. */
  readonly chain: readonly string[];

  readonly values = new Map<string, NamedValue>();
  readonly sizes = new Map<string, Size>();
  readonly fields = new Map<string, string>();
  readonly pieces = new Map<string, Piece>();
  readonly fabrics = new Map<string, Fabric>();
  readonly uses = new Map<string, Evaluated>();
  readonly ownSteps = new Map<string, OwnStep>();
  readonly judged: Judged[] = [];
  readonly accepts: Acceptance[] = [];
  seams: readonly Seam[] = [];
  cuts: readonly Cut[] = [];
  readonly diagnostics: Diagnostic[];
  records: StepRecord[] = [];
  incomplete = false;
  /** The limit that ended the work, if one did. */
  overLimit: Diagnostic | undefined;

  scope: Scope = new Scope(undefined, false, false);
  piece: Piece | undefined;
  /** Names of failed lines of each piece. */
  readonly withheldIn = new Map<string, Set<string>>();
  /** How many trials of `solve` are under way: then nothing is reported or recorded. */
  trials = 0;
  /** The calls that led to the line being worked, when it stands in a step of the recipe's own. */
  calledBy: Where | undefined;
  private hidden = 0;
  private readonly starts: readonly number[];

  constructor(
    parsed: Parsed,
    run: Run,
    place: { isRoot: boolean; given: ReadonlyMap<string, Scalar>; chain: readonly string[] },
  ) {
    this.run = run;
    this.tree = parsed.tree;
    this.file = parsed.tree.file;
    this.forms = parsed.forms;
    this.diagnostics = [...parsed.diagnostics];
    this.incomplete = parsed.diagnostics.length > 0;
    this.isRoot = place.isRoot;
    this.given = place.given;
    this.chain = place.chain;
    this.starts = lineStarts(parsed.tree.text);
  }

  private readonly forms: Forms;

  /** Works all lines; a limit that is reached ends the work, and what is there so far stays. */
  all(): Evaluated {
    try {
      this.lines(this.tree.lines);
    } catch (error) {
      if (!(error instanceof LineFailed)) throw error;
      this.diagnostics.push(error.diagnostic);
      this.incomplete = true;
      this.overLimit = error.diagnostic;
    }
    return {
      garment: this.garment,
      values: this.values,
      sizes: this.sizes,
      diagnostics: this.diagnostics,
      judged: this.judged,
      records: this.records,
      uses: this.uses,
      tree: this.tree,
      fields: this.fields,
      incomplete: this.incomplete,
    };
  }

  get garment(): Garment {
    const { title, file, units, pieces, fabrics, seams, cuts, accepts } = this;
    return { title, file, units, pieces, fabrics, seams, cuts, accepts };
  }

  lines(lines: readonly Line[]): void {
    for (const line of lines) this.line(line);
  }

  /** Works one line. Its mistake is reported, or handed up when this is a trial. */
  line(line: Line): void {
    if (line.broken) {
      this.failed(line);
      return;
    }
    try {
      this.spend(line);
      this.work(line);
    } catch (error) {
      if (error instanceof Withheld && this.trials === 0) {
        this.failed(line);
        return;
      }
      if (error instanceof LineFailed && !error.isLimit && this.trials === 0) {
        // A trial inside this line failed at one of its own lines.
        this.diagnostics.push(error.diagnostic);
        this.failed(line);
        return;
      }
      if (!(error instanceof Problem)) throw error;
      const diagnostic = this.diagnosticOf(error, line);
      const isLimit = error instanceof LimitReached;
      if (isLimit || this.trials > 0) throw new LineFailed(diagnostic, isLimit);
      this.diagnostics.push(diagnostic);
      this.failed(line);
    }
  }

  /** A line inside a block of its own, whose names stay inside. */
  inside(lines: readonly Line[], given: readonly (readonly [string, Value])[] = []): void {
    const outer = this.scope;
    this.scope = new Scope(outer, false, this.piece !== undefined);
    for (const [name, value] of given) this.scope.names.set(name, { kind: "value", value });
    const before = this.piece;
    try {
      this.lines(lines);
    } finally {
      if (this.piece && before) this.piece = withPlainNames(this.piece, before);
      this.scope = outer;
    }
  }

  where(stretch: Stretch): Where {
    const place = { file: this.file, from: stretch.from, to: stretch.to, line: lineOf(this.starts, stretch.from) };
    return this.calledBy ? { ...place, calledBy: this.calledBy } : place;
  }

  report(diagnostic: Diagnostic): void {
    this.diagnostics.push(diagnostic);
  }

  /** Gives a name a value in the block at hand. */
  declare(name: string, value: Value, at: Stretch): void {
    this.refuseTaken(name, at);
    this.scope.names.set(name, { kind: "value", value });
  }

  refuseTaken(name: string, at: Stretch): void {
    if (!this.scope.isGiven(name, this.inPiece)) return;
    throw new Problem("name-taken", `${name} already names something here.`, { at, hint: "Choose another name." });
  }

  /** How values find the names around them. */
  get filling(): Filling {
    return {
      units: this.units,
      piece: this.piece,
      valueOf: (name, at) => this.valueOf(name, at),
      ownName: (name) => this.ownName(name),
      newName: (name) => this.newName(name),
    };
  }

  readonly inPiece = (name: string): Bound | undefined => {
    if (!this.piece) return undefined;
    if (this.withheldIn.get(this.piece.name)?.has(name)) return { kind: "withheld" };
    const value = partOf(this.piece, this.piece.name, name);
    return value && { kind: "value", value };
  };

  valueOf(name: string, at: Stretch): Value {
    const bound = this.scope.find(name, this.inPiece);
    if (bound?.kind === "withheld") throw new Withheld();
    if (bound?.kind === "value") return bound.value;
    if (bound?.kind === "alias" && this.piece) {
      const value = partOf(this.piece, this.piece.name, bound.of);
      if (value) return value;
      throw new Problem("name-gone", `${name} is no longer there: a line above took it out of the piece.`, { at });
    }
    throw this.unknownName(name, at);
  }

  private unknownName(name: string, at: Stretch): Problem {
    const known = this.scope.visible(this.piece ? shownNames(this.piece) : []);
    const cut = [...name.matchAll(/-/g)].map(({ index }) => [name.slice(0, index), name.slice(index + 1)] as const);
    const subtraction = cut.find(
      ([left, right]) => known.includes(left) && (known.includes(right) || /^\d/.test(right)),
    );
    if (subtraction) {
      const spaced = `${subtraction[0]} - ${subtraction[1]}`;
      return new Problem("name-unknown", `Nothing is called ${name} here: a hyphen without spaces is part of a name.`, {
        at,
        hint: `Write ${spaced} to subtract.`,
        replace: spaced,
      });
    }
    const later = this.tree.lines.find((line) => line.from > at.from && line.names.some(({ text }) => text === name));
    if (later && nearest(name, known).length === 0) {
      return new Problem(
        "name-unknown",
        `Nothing is called ${name} above this line; line ${lineOf(this.starts, later.from)} names it only later.`,
        {
          at,
          hint: "Move that line up.",
        },
      );
    }
    return unknown(name, `Nothing is called ${name} here.`, known, at);
  }

  private ownName(name: string): string {
    const bound = this.scope.find(name, this.inPiece);
    if (bound?.kind === "withheld") throw new Withheld();
    return bound?.kind === "alias" ? bound.of : name;
  }

  /** Inside a block the piece keeps a new edge or place under a hidden name, which the block's scope stands for. */
  private newName(name: string): string {
    if (!this.piece || !this.scope.hidesDrawn) return name;
    this.hidden += 1;
    return hiddenName(name, this.hidden);
  }

  private spend(line: Line): void {
    this.run.spent.steps += 1;
    if (this.run.spent.steps > limits.steps) {
      throw new LimitReached(
        "limit-steps",
        `This recipe takes more than ${limits.steps} steps, and working it stops here.`,
        { at: line.verb },
      );
    }
  }

  private work(line: Line): void {
    const statement = statementWork.get(line.verb.text);
    if (statement) {
      statement(line, this);
      return;
    }
    const own = this.ownSteps.get(line.verb.text);
    if (own) {
      callOwnStep(line, own, this);
      return;
    }
    const step = this.run.steps.get(line.verb.text);
    if (!step) throw new Withheld();
    this.step(line, step);
  }

  private step(line: Line, step: Step): void {
    if (step.on === "piece" && !this.piece) {
      throw new Problem("step-outside", `${step.name} works on a piece, and this line stands outside of one.`, {
        at: line.verb,
        hint: "Move it into the { } of a piece.",
      });
    }
    if (step.on === "garment" && this.piece) {
      throw new Problem(
        "step-inside",
        `${step.name} belongs to the whole garment, and this line stands inside a piece.`,
        {
          at: line.verb,
          hint: "Move it below the } of the piece.",
        },
      );
    }
    const form = formFor(line, this.run.forms.get(step.name) ?? []);
    for (const name of line.names) this.refuseTaken(name.text, name);
    const filled = fill(line, form, this.filling);
    const about: StepLine = { where: this.where(line), units: this.units };
    if (step.on === "garment") {
      const { now, words } = step.work(filled as never, this.garment, about);
      this.seams = now.seams;
      this.cuts = now.cuts;
      this.keep({ where: about.where, piece: "", step: step.name, words });
      return;
    }
    const before = this.piece!;
    const { now, words, amount } = step.work(filled as never, before, about);
    withinLimits(now, before);
    this.piece = now;
    if (this.scope.hidesDrawn && form.naming) this.aliasNames(line, filled[form.naming.slot.name]);
    this.keep({
      where: about.where,
      piece: now.name,
      step: step.name,
      before,
      after: now,
      words,
      ...(amount !== undefined && { amount }),
    });
  }

  private aliasNames(line: Line, kept: unknown): void {
    const names = Array.isArray(kept) ? (kept as string[]) : [kept as string];
    line.names.forEach(({ text }, index) => {
      this.scope.names.set(text, { kind: "alias", of: names[index]! });
    });
  }

  private keep(record: StepRecord): void {
    if (this.trials === 0) this.records.push({ ...record, words: withoutHidden(record.words) });
  }

  formsOf(verb: string): readonly Form[] {
    return this.forms.get(verb) ?? [];
  }

  fileScope(): Scope {
    let scope = this.scope;
    while (scope.outer) scope = scope.outer;
    return scope;
  }

  /** What follows from a line that failed: its names are withheld, and its piece is not judged. */
  failed(line: Line): void {
    this.incomplete = true;
    for (const { text } of namesWithin(line)) {
      if (this.piece && !this.scope.hidesDrawn) this.withhold(this.piece.name, text);
      else if (!this.scope.names.has(text)) this.scope.names.set(text, { kind: "withheld" });
    }
    if (this.piece) this.piece = { ...this.piece, doubtful: true };
  }

  private withhold(piece: string, name: string): void {
    if (partOf(this.piece!, piece, name)) return;
    const names = this.withheldIn.get(piece) ?? new Set<string>();
    names.add(name);
    this.withheldIn.set(piece, names);
  }

  private diagnosticOf(problem: Problem, line: Line): Diagnostic {
    const { hint, at, replace, related } = problem.details;
    const where = this.where(at ?? headOf(line));
    return {
      code: problem.code,
      severity: "error",
      where,
      message: withoutHidden(problem.message),
      ...(hint !== undefined && { hint: withoutHidden(hint) }),
      ...(related && { related }),
      ...(replace !== undefined && { fix: { title: `Write ${replace}`, where, text: replace } }),
    };
  }
}

/** A line without its block. */
const headOf = (line: Line): Stretch => (line.block ? { from: line.from, to: line.verb.to } : line);

const withoutHidden = (words: string): string => words.replace(/~\d+/g, "");

/** The names that a line gives, those of the lines in a `solve` block among them. */
const namesWithin = (line: Line): Line["names"] => [
  ...line.names,
  ...(line.verb.text === "use"
    ? line.clauses.flatMap(({ operands }) => operands.flatMap(({ value }) => (value.kind === "name" ? value.path : [])))
    : []),
  ...(line.verb.text === "solve" ? namesInBlock(line.block) : []),
];

const namesInBlock = (block: Block | undefined): Line["names"] => (block?.lines ?? []).flatMap(namesWithin);

/** Reads a recipe once per run, however often it is used. */
export const parsedIn = (run: Run, file: string, text: string): Parsed => {
  const known = run.parsed.get(file);
  if (known && known.tree.text === text) return known;
  const parsed = parse(text, file, run.forms);
  run.parsed.set(file, parsed);
  return parsed;
};
