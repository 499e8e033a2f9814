// Works a recipe line by line. Mistakes become findings and stop one line only; what a failed line would have named is
// withheld, and lines that need it are passed over in silence, so that one cause gives one finding.
import type { Diagnostic, Where } from "../grammar/diagnostic.ts";
import { limits } from "../grammar/limits.ts";
import { lookAlikes } from "../grammar/look-alikes.ts";
import { type Forms, type Parsed, parse } from "../grammar/parse.ts";
import type { Form } from "../grammar/phrase.ts";
import { lineOf, lineStarts } from "../grammar/source.ts";
import type { Line, Operand, RecipeTree, Stretch, Word } from "../grammar/tree.ts";
import type { Body } from "./body.ts";
import { partOf } from "./expression.ts";
import { blamed, type Filling, fill, formFor } from "./fill.ts";
import { blockAround, type Here, type NameHere, Reached } from "./here.ts";
import {
  hiddenName,
  namesGiven,
  namesLost,
  shownNames,
  withNamesGiven,
  withoutHidden,
  withPlainNames,
} from "./hidden-names.ts";
import { gaps } from "./outline.ts";
import { LimitReached, Problem, RecipeRefused, Withheld } from "./problem.ts";
import type { ChangedPiece, StepRecord } from "./record.ts";
import { type Bound, Scope } from "./scope.ts";
import type { Sources } from "./sources.ts";
import { callOwnStep, type OwnStep } from "./statements/own-step.ts";
import type { StatementWork } from "./statements/statement-work.ts";
import type { Step, Line as StepLine } from "./step.ts";
import { lineNaming, unknownName } from "./unknown-name.ts";
import type { Asked, UsesBefore } from "./used-before.ts";
import { number, type Scalar, type Value } from "./value.ts";
import { effortOf, ownSpans, weightOf, withinLimits } from "./within-limits.ts";
import type { Acceptance, Cut, Fabric, Garment, Hang, Judged, Piece, Seam, Units, WornOver } from "./working.ts";

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
  /** Mistakes beyond those that are listed for one file. */
  readonly untold: number;
}

/** What one run shares among the recipe that was opened and all that it uses. */
export interface SharedRun {
  /** Handed in, and not imported: `use` works another recipe, so the statements know this file. */
  readonly statements: ReadonlyMap<string, StatementWork>;
  readonly steps: ReadonlyMap<string, Step>;
  readonly forms: Forms;
  readonly checkNames: readonly string[];
  readonly sources: Sources;
  readonly body: Body;
  readonly parsed: Map<string, Parsed>;
  /** What used recipes came to in earlier runs, and what those of this run have asked for so far. */
  readonly usesBefore: UsesBefore;
  readonly asked: Asked[];
  readonly spent: Spent;
}

/** What the limits count. */
export interface Spent {
  /** Lines worked, files used and pieces made so far. */
  steps: number;
  files: number;
  pieces: number;
  /** Lines and curves in these pieces, and the most that there were with the piece in hand. */
  spans: number;
  mostSpans: number;
  /** Weight of the record. */
  recorded: number;
  /** What values, measuring and altering cost beside the steps. */
  effort: number;
  /** How many lines are being worked inside one another. */
  depth: number;
}

/** How much a finding ends: one line, the recipe it stands in, or the whole run. */
export type Reach = "line" | "recipe" | "run";

/** A finding on its way up: out of a trial, where nothing may be reported yet, or out of all that it ends. */
export class LineFailed extends Error {
  readonly diagnostic: Diagnostic;
  readonly reach: Reach;

  constructor(diagnostic: Diagnostic, reach: Reach) {
    super(diagnostic.message);
    this.diagnostic = diagnostic;
    this.reach = reach;
  }
}

/** One recipe being worked. */
export class Working {
  title = "";
  units: Units = "cm";
  readonly run: SharedRun;
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
  wornOver: readonly WornOver[] = [];
  hangs: readonly Hang[] = [];
  cuts: readonly Cut[] = [];
  readonly diagnostics: Diagnostic[];
  records: StepRecord[] = [];
  incomplete = false;
  untold: number;
  /** What ended the work before the last line, if anything did. */
  endedBy: LineFailed | undefined;

  scope: Scope = new Scope(undefined, "through", false);
  piece: Piece | undefined;
  /** Names that failed lines of the piece at hand would have given. */
  withheld = new Set<string>();
  /** The blocks that are being worked, innermost first. */
  private around: readonly (readonly Line[])[] = [];
  /** How many trials of `solve` are under way: then nothing is reported or recorded. */
  trials = 0;
  /** The calls that led to the line being worked, when it stands in a step of the recipe's own. */
  calledBy: Where | undefined;
  private hidden = 0;
  private readonly starts: readonly number[];
  /** Where the work is to stop, if it is: before the first line that begins there or later, or at the end of this block. */
  private readonly until: number | undefined;
  private readonly untilEndOf: readonly Line[] | undefined;
  private reached: Here | undefined;

  constructor(
    parsed: Parsed,
    run: SharedRun,
    place: { isRoot: boolean; given: ReadonlyMap<string, Scalar>; chain: readonly string[] },
    until?: number,
  ) {
    this.run = run;
    this.tree = parsed.tree;
    this.file = parsed.tree.file;
    this.forms = parsed.forms;
    this.diagnostics = [...parsed.diagnostics];
    this.incomplete = parsed.diagnostics.length > 0;
    this.untold = parsed.untold;
    this.isRoot = place.isRoot;
    this.given = place.given;
    this.chain = place.chain;
    this.starts = lineStarts(parsed.tree.text);
    this.until = until;
    this.untilEndOf = until === undefined ? undefined : blockAround(parsed.tree.lines, parsed.tree.text, until);
  }

  private readonly forms: Forms;

  /** Works all lines; a limit that is reached ends the work, and what is there so far stays. */
  all(): Evaluated {
    try {
      this.refuseWithoutVersion();
      for (const finding of lookAlikes(this.tree, (at) => this.where(at))) this.report(finding);
      this.lines(this.tree.lines);
    } catch (error) {
      if (error instanceof Reached) this.reached = error.here;
      else if (error instanceof LineFailed) {
        this.diagnostics.push(error.diagnostic);
        this.incomplete = true;
        this.endedBy = error;
      } else throw error;
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
      untold: this.untold,
    };
  }

  /** Works the lines down to the spot that was given, and tells what is known there. */
  upToThere(): Evaluated & { readonly here: Here } {
    const evaluated = this.all();
    return { ...evaluated, here: this.reached ?? this.here };
  }

  /** A recipe begins with the version of the language it is written in. */
  private refuseWithoutVersion(): void {
    const { lines } = this.tree;
    const [first] = lines;
    const isUnread = !first && this.diagnostics.length > 0;
    if (isUnread || lines.some(({ verb }) => verb.text === "chalkline")) return;
    const from = first?.from ?? 0;
    this.report({
      code: "chalkline-missing",
      severity: "error",
      where: this.where({ from, to: first?.verb.to ?? 0 }),
      message: "A recipe begins with the version of the language it is written in.",
      hint: "Write chalkline 1 as its first line.",
      fix: { title: "Write chalkline 1", where: this.where({ from, to: from }), text: "chalkline 1\n" },
    });
  }

  get garment(): Garment {
    const { title, file, units, pieces, fabrics, seams, cuts, wornOver, hangs, accepts, incomplete } = this;
    return { title, file, units, pieces, fabrics, seams, cuts, wornOver, hangs, accepts, incomplete };
  }

  lines(lines: readonly Line[]): void {
    const outer = this.around;
    this.around = [lines, ...outer];
    try {
      for (const line of lines) this.line(line);
      if (lines === this.untilEndOf) throw new Reached(this.here);
    } finally {
      this.around = outer;
    }
  }

  /** Works one line. Its mistake is reported, or handed up when this is a trial. */
  line(line: Line): void {
    if (this.until !== undefined && line.from >= this.until) throw new Reached(this.here);
    const { depth } = this.run.spent;
    try {
      this.spend(line);
      if (line.broken) throw new Withheld();
      this.run.spent.depth += 1;
      this.work(line);
    } catch (error) {
      if (error instanceof Withheld && this.trials === 0) {
        this.failed(line);
        return;
      }
      if (error instanceof LineFailed && error.reach === "line" && this.trials === 0) {
        // A trial inside this line failed at one of its own lines.
        this.diagnostics.push(error.diagnostic);
        this.failed(line);
        return;
      }
      if (!(error instanceof Problem)) throw error;
      const diagnostic = this.diagnosticOf(error, line);
      const reach = error instanceof LimitReached ? "run" : error instanceof RecipeRefused ? "recipe" : "line";
      if (reach !== "line" || this.trials > 0) throw new LineFailed(diagnostic, reach);
      this.diagnostics.push(diagnostic);
      this.failed(line);
    } finally {
      this.run.spent.depth = depth;
    }
  }

  /** A line inside a block of its own, whose names stay inside. */
  inside(lines: readonly Line[], given: readonly (readonly [string, Value])[] = []): void {
    const scope = new Scope(this.scope, "through", this.piece !== undefined);
    for (const [name, value] of given) scope.names.set(name, { kind: "value", value });
    this.insideBlock(scope, lines);
  }

  /** Works lines whose names stay inside: the piece forgets the places drawn there, and outline edges get their plain names. */
  insideBlock(scope: Scope, lines: readonly Line[]): void {
    const { scope: outer, piece: before } = this;
    const begun = this.records.length;
    this.scope = scope;
    try {
      this.lines(lines);
    } finally {
      this.scope = outer;
      if (this.piece && before) {
        const { piece } = this;
        this.piece = withPlainNames(piece, before);
        if (this.piece !== piece) this.recordUnderNames(begun, piece, this.piece);
        // Had the failed line of the block not failed, the outline might have kept these.
        if (piece.doubtful && !before.doubtful) for (const name of namesLost(piece, this.piece)) this.withhold(name);
      }
    }
  }

  /** Tells what a block did under the names that its end gave: its last entry leaves the piece as the block does. */
  private recordUnderNames(begun: number, inside: Piece, after: Piece): void {
    const given = namesGiven(inside, after);
    const known = new Map<Piece, Piece>();
    const named = (piece: Piece): Piece => {
      const done = known.get(piece) ?? withNamesGiven(piece, given);
      known.set(piece, done);
      return done;
    };
    for (let index = begun; index < this.records.length; index += 1) {
      const record = this.records[index]!;
      const changed = record.changed.map((piece) => ({
        ...(piece.before && { before: named(piece.before) }),
        after: named(piece.after),
      }));
      this.records[index] = { ...record, changed };
    }
    this.recordFinal(after, begun);
  }

  /** The last entry that changed a piece leaves it as it is now, which a failed line or the end of a block may have changed since. */
  recordFinal(piece: Piece, from = 0): void {
    for (let index = this.records.length - 1; index >= from; index -= 1) {
      const record = this.records[index]!;
      if (!record.changed.some(({ after }) => after.name === piece.name)) continue;
      const changed = record.changed.map((each) => (each.after.name === piece.name ? { ...each, after: piece } : each));
      this.records[index] = { ...record, changed };
      return;
    }
  }

  where(stretch: Stretch): Where {
    const place = { file: this.file, from: stretch.from, to: stretch.to, line: lineOf(this.starts, stretch.from) };
    return this.calledBy ? { ...place, calledBy: this.calledBy } : place;
  }

  report(diagnostic: Diagnostic): void {
    this.incomplete ||= diagnostic.severity === "error";
    this.diagnostics.push(diagnostic);
  }

  /** Reports a mistake in a line that is worked all the same. */
  say(problem: Problem, line: Line): void {
    this.report(this.diagnosticOf(problem, line));
  }

  /** Works a part of a line by itself, such as one entry of its block: a mistake there does not stop the rest. */
  attempt(line: Line, work: () => void): void {
    try {
      work();
    } catch (error) {
      if (error instanceof LimitReached || !(error instanceof Problem || error instanceof Withheld)) throw error;
      if (error instanceof Problem) this.say(error, line);
    }
  }

  /** Gives a name a value in the block at hand. */
  declare(name: string, value: Value, at: Stretch): void {
    this.refuseTaken(name, at);
    this.scope.names.set(name, { kind: "value", value });
  }

  refuseTaken(name: string, at: Stretch): void {
    if (!this.scope.isGiven(name, this.inPiece) || this.isDartOfThisLine(name, at)) return;
    const line = lineNaming(name, this.around, -1);
    const above = line && line.from < at.from ? `, since line ${lineOf(this.starts, line.from)}` : "";
    throw new Problem("name-taken", `${name} already names something here${above}.`, {
      at,
      hint: "Choose another name.",
    });
  }

  /** In a block that is repeated the same line draws a dart each time; the first keeps the name. */
  private isDartOfThisLine(name: string, at: Stretch): boolean {
    const drawnBy = this.scope.hidesDrawn ? this.piece?.darts.get(name)?.drawnBy : undefined;
    return drawnBy?.file === this.file && drawnBy.from <= at.from && at.to <= drawnBy.to;
  }

  /** How values find the names around them. */
  get filling(): Filling {
    return {
      units: this.units,
      piece: this.piece,
      valueOf: (name, at) => this.valueOf(name, at),
      spend: (effort) => this.spendEffort(effort),
      newName: (name) => this.newName(name),
    };
  }

  readonly inPiece = (name: string): Bound | undefined => {
    if (!this.piece) return undefined;
    const value = partOf(this.piece, this.piece.name, name);
    if (value) return { kind: "value", value };
    return this.withheld.has(name) ? { kind: "withheld" } : undefined;
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
    const { piece, withheld } = this;
    if (piece && name === piece.name) return { kind: "piece", piece, called: name, withheld };
    const fabric = this.fabrics.get(name);
    if (fabric) return { kind: "fabric", fabric };
    if (name === "pi") return number(Math.PI);
    // Beyond as many findings as are told, nobody reads what else the name could have been.
    const isTold = this.diagnostics.length < limits.findings;
    const known = isTold ? this.scope.visible(this.piece ? shownNames(this.piece) : []) : [];
    const later = lineNaming(name, this.around, at.from);
    throw unknownName(name, at, known, later && lineOf(this.starts, later.from));
  }

  private get here(): Here {
    const { piece, scope, fabrics } = this;
    const shown = scope.visible(piece ? [...shownNames(piece), piece.name] : []);
    const names = [...new Set([...shown, ...fabrics.keys()])].flatMap((name): NameHere[] => {
      try {
        const value = this.valueOf(name, { from: 0, to: 0 });
        return [{ name, kind: value.kind, value }];
      } catch (error) {
        // The line that gave it failed, or a later one took it away.
        if (error instanceof Withheld || error instanceof Problem) return [];
        throw error;
      }
    });
    return { ...(piece && { piece }), names };
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
    if (this.run.spent.depth >= limits.linesInLines) {
      throw new Problem(
        "limit-depth",
        `Blocks, steps of the recipe's own and used recipes stand more than ${limits.linesInLines} deep in one another here.`,
        { at: line.verb },
      );
    }
  }

  private work(line: Line): void {
    const statement = this.run.statements.get(line.verb.text);
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
    for (const name of line.names) {
      this.refuseTaken(name.text, name);
      // Blocks forget names, but two pieces of the garment never share one.
      if (step.on === "garment" && this.pieces.has(name.text))
        throw new Problem("name-taken", `There is already a piece called ${name.text}.`, {
          at: name,
          hint: "Choose another name.",
        });
    }
    const filled = fill(line, form, this.filling);
    const about: StepLine = { where: this.where(line), units: this.units };
    if (step.on === "garment") {
      const { now, words, amount } = blamed(line, form, () => step.work(filled as never, this.garment, about));
      this.seams = now.seams;
      this.cuts = now.cuts;
      this.wornOver = now.wornOver ?? [];
      this.hangs = now.hangs ?? [];
      const changed: ChangedPiece[] = [];
      for (const after of now.pieces.values()) {
        const before = this.pieces.get(after.name);
        if (before === after) continue;
        this.takePiece(after, before);
        changed.push({ ...(before && { before }), after });
      }
      const told = { words, ...(amount !== undefined && { amount }) };
      this.keep({ where: about.where, piece: "", step: step.name, changed, ...told }, line);
      return;
    }
    const before = this.piece!;
    const { now, words, amount } = blamed(line, form, () => step.work(filled as never, before, about));
    this.refuseBeyondLimits(now, before);
    if (!step.mayOpen) refuseOpened(now, before, step.name);
    this.piece = now;
    if (this.scope.hidesDrawn && form.naming) this.aliasNames(line, filled[form.naming.slot.name]);
    this.keep(
      {
        where: about.where,
        piece: now.name,
        step: step.name,
        changed: [{ before, after: now }],
        words,
        ...(amount !== undefined && { amount }),
      },
      line,
    );
  }

  private refuseBeyondLimits(now: Piece, before: Piece): void {
    const { spent } = this.run;
    spent.mostSpans = Math.max(spent.mostSpans, withinLimits(now, before, spent.spans));
    this.spendEffort(effortOf(now, before));
  }

  /** A piece that a step of the garment made, or made anew, stands under its name from here on. */
  private takePiece(piece: Piece, before: Piece | undefined): void {
    this.refuseBeyondLimits(piece, before ?? { ...piece, edges: new Map(), places: new Map(), allowances: new Map() });
    if (!before) {
      this.spendPiece();
      this.finished(piece, this.scope);
      return;
    }
    // Made anew, it stays the same piece of the block that first named it, whatever block this line stands in.
    const scope = this.scope.whereGiven(piece.name);
    const bound = scope.names.get(piece.name);
    const was = bound?.kind === "value" && bound.value.kind === "piece" ? bound.value.withheld : undefined;
    this.finished(piece, scope, was);
  }

  /** A piece that is complete goes by its name in the block it stands in. */
  finished(piece: Piece, scope: Scope, withheld: ReadonlySet<string> = new Set()): void {
    this.run.spent.spans += ownSpans(piece);
    this.pieces.set(piece.name, piece);
    scope.names.set(piece.name, { kind: "value", value: { kind: "piece", piece, called: piece.name, withheld } });
  }

  /** Counts a new piece against the limit. */
  spendPiece(): void {
    this.run.spent.pieces += 1;
    if (this.run.spent.pieces > limits.pieces) {
      throw new LimitReached(
        "limit-pieces",
        `This recipe makes more than ${limits.pieces} pieces, and working it stops here.`,
      );
    }
  }

  /** Counts what a line costs beside being a step; see limits.ts. */
  spendEffort(effort: number): void {
    this.run.spent.effort += effort;
    if (this.run.spent.effort > limits.effort) {
      throw new LimitReached(
        "limit-effort",
        "This recipe reckons so much with so many lines and curves that it would take minutes, and working it stops here.",
        {
          hint: "Draw outlines with fewer places to pass through, and name with let what is reckoned again and again.",
        },
      );
    }
  }

  private aliasNames(line: Line, kept: unknown): void {
    const names = Array.isArray(kept) ? (kept as string[]) : [kept as string];
    line.names.forEach(({ text }, index) => {
      this.scope.names.set(text, { kind: "alias", of: names[index]! });
    });
  }

  /** Adds to the record, which keeps every piece as every step left it: what these weigh together has a limit. */
  keep(record: StepRecord, line: Line): void {
    if (this.trials > 0) return;
    this.records.push({ ...record, words: withoutHidden(record.words) });
    for (const { after } of record.changed) this.run.spent.recorded += weightOf(after);
    if (this.run.spent.recorded > limits.recorded) {
      const message =
        "This recipe takes so many steps on pieces with so many names that they cannot all be kept, and working it stops here.";
      throw new LimitReached("limit-record", message, {
        at: line.verb,
        hint: "Draw fewer edges and places in one piece.",
      });
    }
  }

  formsOf(verb: string): readonly Form[] {
    return this.forms.get(verb) ?? [];
  }

  /** What follows from a line that failed: its names are withheld, and its piece is not judged. */
  failed(line: Line): void {
    this.incomplete = true;
    for (const { text } of this.namesWithin(line)) {
      if (this.piece) this.withhold(text);
      if ((!this.piece || this.scope.hidesDrawn) && !this.scope.names.has(text))
        this.scope.names.set(text, { kind: "withheld" });
    }
    if (this.piece) this.piece = { ...this.piece, doubtful: true };
  }

  private withhold(name: string): void {
    this.withheld.add(name);
  }

  /** The names that a line gives, those of its block and of a step that it calls among them where they may live on below it. */
  private namesWithin(line: Line): Word[] {
    const names: Word[] = [];
    const seen = new Set<Line>();
    // A list and no recursion: steps may call one another deeper than calls may go.
    const left = [line];
    for (let each = left.pop(); each; each = left.pop()) {
      if (seen.has(each)) continue;
      seen.add(each);
      const { text: verb } = each.verb;
      names.push(...each.names);
      if (verb === "use") for (const { operands } of each.clauses) names.push(...operands.flatMap(plainNames));
      const own = this.ownSteps.get(verb)?.line;
      if (own || verb === "solve" || verb === "if" || verb === "else" || verb === "repeat") {
        left.push(...((own ?? each).block?.lines ?? []));
        if (each.otherwise) left.push(each.otherwise);
      }
    }
    return names;
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

const plainNames = ({ value }: Operand): readonly Word[] => (value.kind === "name" ? value.path : []);

/** An alteration that tears a closed outline open is refused on its own line, and the piece stays as it was. */
const refuseOpened = (now: Piece, before: Piece, step: string): void => {
  if (before.outline.length === 0 || (now.outline === before.outline && now.edges === before.edges)) return;
  const [gap] = gaps(now);
  if (!gap || gaps(before).length > 0) return;
  throw new Problem(
    "outline-torn",
    `${step} cannot be done here: it would leave the outline open between ${gap.before.edge.name} and ${gap.after.edge.name}.`,
    { hint: "Try another place, edge or amount." },
  );
};

/** A line without its block. */
const headOf = (line: Line): Stretch => (line.block ? { from: line.from, to: line.verb.to } : line);

/** Reads a recipe once per run, however often it is used. */
export const parsedIn = (run: SharedRun, file: string, text: string): Parsed => {
  const known = run.parsed.get(file);
  if (known && known.tree.text === text) return known;
  const parsed = parse(text, file, run.forms);
  run.parsed.set(file, parsed);
  return parsed;
};
