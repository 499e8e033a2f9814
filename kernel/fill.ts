// Fits a line to the forms of its step, and fills the slots with values: the step's code meets nothing else.
import { withArticle } from "../grammar/article.ts";
import { limits } from "../grammar/limits.ts";
import { didYouMean, listWithOr } from "../grammar/nearest.ts";
import { type Form, howToWrite, type Slot } from "../grammar/phrase.ts";
import type { Expression, Line, Operand, Stretch } from "../grammar/tree.ts";
import { evaluate, missingUnit, type Names } from "./expression.ts";
import { Problem } from "./problem.ts";
import type { KernelSlot, Takes } from "./slots.ts";
import { capital, kindInWords, type Value } from "./value.ts";
import type { Piece } from "./working.ts";

/** What filling asks of the recipe around it. */
export interface Filling extends Names {
  /** The piece that is being worked, for slots that want its own edges and places. */
  readonly piece: Piece | undefined;
  /** The name under which the piece is to keep what the line calls `name`. */
  newName(name: string): string;
}

export type Fill = Record<string, unknown>;

/** The form that a line is written in; a Problem shows how it is written. */
export const formFor = (line: Line, forms: readonly Form[]): Form => {
  const fitted = fittingForm.get(line);
  if (fitted && forms.includes(fitted)) return fitted;
  const fitting = forms.find((form) => faultOf(line, form) === undefined);
  if (!fitting) throw nearestFault(line, forms);
  fittingForm.set(line, fitting);
  return fitting;
};

// A line is worked again and again, in `repeat` and `solve` and for body after body, and fits the same form each time.
const fittingForm = new WeakMap<Line, Form>();

/** The fault against the form that knows the most of the line. */
const nearestFault = (line: Line, forms: readonly Form[]): Problem => {
  const [nearest] = forms.map((form) => faultOf(line, form)!).sort((a, b) => b.given - a.given);
  return nearest!.problem();
};

interface Fault {
  readonly given: number;
  /** Made only when it is thrown: an error is dear, and most forms that do not fit have a neighbour that does. */
  readonly problem: () => Problem;
}

/** What keeps a line from having a form; `given` counts what of the line the form knows. */
const faultOf = (line: Line, form: Form): Fault | undefined => {
  const known = new Map(form.clauses.map((clause) => [clause.word, clause]));
  const hasOperand = line.operands.length > 0 === (form.operand !== undefined);
  const given = line.clauses.filter(({ word }) => known.has(word.text)).length + (hasOperand ? 0.5 : 0);
  const fault = (code: string, message: string, at: Stretch, mending?: Mending): Fault => {
    const problem = (): Problem => {
      const hint = howToWrite([form]);
      return new Problem(code, message, { at, ...(hint !== undefined && { hint }), ...mending });
    };
    return { given, problem };
  };
  const seen = new Set<string>();
  for (const clause of line.clauses) {
    const { text } = clause.word;
    const form_ = known.get(text);
    if (!form_) return fault("clause-unknown", `${text} does not go with the rest of this line.`, clause.word);
    if (seen.has(text))
      return fault("clause-doubled", `${text} stands here twice.`, clause.word, { hint: "Take one of them out." });
    seen.add(text);
    if (form_.slot && clause.operands.length === 0)
      return fault("clause-empty", `${text} needs ${form_.slot.wanted}: ${form_.slot.note}.`, clause.word);
    if (!form_.slot && clause.operands.length > 0)
      return fault("clause-full", `Nothing follows ${text}.`, clause.operands[0]!);
    const tooMany = form_.slot && extra(clause.operands, form_.slot);
    if (tooMany) return fault("value-extra", `${text} takes one value.`, ...asDecimal(clause.operands, tooMany));
    const alone = form_.needs.find((other) => !line.clauses.some(({ word }) => word.text === other));
    if (alone !== undefined)
      return fault("clause-missing", `${text} stands together with \`${alone}\`, which is not here.`, clause.word);
  }
  if (form.naming && !form.naming.optional && line.names.length === 0)
    return fault("name-missing", `${line.verb.text} gives something a name, and there is none here.`, line.verb);
  if (!form.operand && line.operands.length > 0)
    return fault("value-extra", `${line.verb.text} takes no value here.`, line.operands[0]!);
  if (form.operand && !form.operand.optional && line.operands.length === 0) {
    return fault("value-missing", `${line.verb.text} needs ${form.operand.wanted}: ${form.operand.note}.`, line.verb);
  }
  const tooMany = form.operand && extra(line.operands, form.operand);
  if (tooMany)
    return fault("value-extra", `${line.verb.text} takes one value here.`, ...asDecimal(line.operands, tooMany));
  if (form.count && !line.count)
    return fault("value-missing", `${line.verb.text} needs ${form.count.wanted}: ${form.count.note}.`, line.verb);
  const missing = form.clauses.find(({ word, optional }) => !optional && !seen.has(word));
  if (missing)
    return fault(
      "clause-missing",
      `${line.verb.text} needs \`${missing.word}\`${missing.slot ? ` and ${missing.slot.wanted}: ${missing.slot.note}` : ""}.`,
      line.verb,
    );
  return undefined;
};

const extra = (operands: readonly Operand[], slot: Slot): Operand | undefined => (slot.many ? undefined : operands[1]);

interface Mending {
  readonly hint: string;
  readonly replace?: string;
}

/** Where the one value too many stands; `12,5 cm` is 12.5 cm written as in other countries. */
const asDecimal = ([first]: readonly Operand[], extraOne: Operand): [at: Stretch, mending?: Mending] => {
  const [whole, fraction] = [first?.value, extraOne.value];
  if (whole?.kind !== "number" || whole.unit || fraction.kind !== "number" || fraction.from !== whole.to + 1)
    return [extraOne];
  const replace = `${whole.written}.${fraction.written}${fraction.unit ? ` ${fraction.unit.text}` : ""}`;
  return [
    { from: whole.from, to: fraction.to },
    { hint: `Write ${replace}: decimals have a point.`, replace },
  ];
};

/** Fills the slots of the form with the line's values. */
export const fill = (line: Line, form: Form, filling: Filling): Fill => {
  const filled: Fill = Object.create(null) as Fill;
  if (form.naming) {
    const names = line.names.map(({ text }) => filling.newName(text));
    if (names.length > 0) filled[form.naming.slot.name] = form.naming.slot.many ? names : names[0];
  }
  if (form.operand && line.operands.length > 0)
    filled[form.operand.name] = slotValue(line.operands, form.operand, form, filling);
  if (form.count && line.count) filled[form.count.name] = line.count.value;
  for (const { word, operands } of line.clauses) {
    const clause = form.clauses.find((each) => each.word === word.text);
    if (clause?.slot) filled[clause.slot.name] = slotValue(operands, clause.slot, form, filling);
    else filled[word.text] = true;
  }
  if (form.text && line.text) filled[form.text.name] = line.text.value;
  return filled;
};

/** Works a step; a Problem that names a slot points at what fills it in the line. */
export const blamed = <T>(line: Line, form: Form, work: () => T): T => {
  try {
    return work();
  } catch (problem) {
    const at = problem instanceof Problem ? stretchOf(line, form, problem.details) : undefined;
    throw at ? (problem as Problem).at(at) : problem;
  }
};

const stretchOf = (line: Line, form: Form, { slot, value }: Problem["details"]): Stretch | undefined => {
  if (slot === undefined) return undefined;
  if (slot === form.count?.name) return line.count;
  const word = form.clauses.find((clause) => (clause.slot?.name ?? clause.word) === slot)?.word;
  const clause = line.clauses.find((each) => each.word.text === word);
  const operands = slot === form.operand?.name ? line.operands : (clause?.operands ?? []);
  const [first, last] = value === undefined ? [operands[0], operands.at(-1)] : [operands[value], operands[value]];
  return first && last ? { from: first.from, to: last.to } : clause?.word;
};

const slotValue = (operands: readonly Operand[], slot: Slot, form: Form, filling: Filling): unknown => {
  const one = ({ value, suffix }: Operand): unknown => {
    const read = readOne(value, slot as KernelSlot<string, unknown>, form, filling);
    if (!slot.suffix) return read;
    return suffix
      ? { value: read, suffix: readOne(suffix.value, slot.suffix.slot as KernelSlot<string, unknown>, form, filling) }
      : { value: read };
  };
  return slot.many ? operands.map(one) : one(operands[0]!);
};

const readOne = (expression: Expression, slot: KernelSlot<string, unknown>, form: Form, filling: Filling): unknown => {
  switch (slot.takes) {
    case "choice":
      return chosen(expression, slot, form);
    case "name":
      return plainName(expression);
    case "own-edge":
      return ownEdge(expression, filling);
    case "own-place":
      return ownPlace(expression, filling);
    case "own-dart":
      return dartOnEdge(expression, filling);
    case "own-dart-of-any-form":
      return ownDart(expression, filling);
    case "toward-own-edge": {
      if (expression.kind === "direction" && expression.word === "toward") return ownEdge(expression.aim!, filling);
      throw misfit(evaluate(expression, filling), expression, slot, form, filling);
    }
    case "edge-or-place": {
      const value = evaluate(expression, filling);
      if (value.kind === "edge") return { edge: ownEdge(expression, filling) };
      if (value.kind === "place") return { place: value.point };
      throw misfit(value, expression, slot, form, filling);
    }
    default: {
      const value = slot.takes === "fabric" ? fabricValue(expression, filling) : evaluate(expression, filling);
      const read = slot.read?.(value);
      if (read === undefined) throw misfit(value, expression, slot, form, filling);
      refuseEndless(value, expression);
      return read;
    }
  }
};

// A step draws with the lengths it is given, and some draw the more the longer they are.
const refuseEndless = (value: Value, at: Expression): void => {
  if (value.kind !== "length" || Math.abs(value.value) <= limits.length) return;
  const most = limits.length / 1000;
  throw new Problem("limit-length", `No length on the table is more than ${most} m, and this one is.`, {
    at,
    hint: `Write a length of less than ${most} m, or look for a unit that is too large.`,
  });
};

/** A cloth that no line names yet is the first thing a beginner forgets. */
const fabricValue = (expression: Expression, filling: Filling): Value => {
  try {
    return evaluate(expression, filling);
  } catch (problem) {
    if (!(problem instanceof Problem) || problem.code !== "name-unknown" || problem.details.hint !== undefined)
      throw problem;
    const hint = 'Write a line such as fabric shell "gabardine" width 150 cm above the pieces.';
    throw new Problem(problem.code, problem.message, { ...problem.details, hint });
  }
};

/** A value of the wrong kind: a number may lack its unit, and otherwise the form shows what belongs there. */
const misfit = (
  value: Value,
  expression: Expression,
  slot: KernelSlot<string, unknown>,
  form: Form,
  filling: Filling,
): Problem => {
  const unit = unitOf(slot.takes, filling);
  const mending = unit === undefined ? {} : missingUnit(value, expression, unit);
  const hint = howToWrite([form]);
  const wanted = `${capital(slot.wanted)} is wanted here (${slot.note}), and this is ${kindInWords(value)}.`;
  return new Problem("value-kind", wanted, { at: expression, ...(hint !== undefined && { hint }), ...mending });
};

/** The unit that a plain number most likely lacks. */
const unitOf = (takes: Takes, { units }: Filling): string | undefined => {
  if (takes === "length" || takes === "length-or-angle") return units;
  if (takes === "angle" || takes === "direction") return "deg";
  return takes === "weight" ? "gsm" : undefined;
};

const plainName = (expression: Expression): string | undefined =>
  expression.kind === "name" && expression.path.length === 1 ? expression.path[0]!.text : undefined;

const chosen = (expression: Expression, slot: Slot, form: Form): string => {
  const word = plainName(expression);
  const choices = slot.choices ?? [];
  if (word !== undefined && choices.includes(word)) return word;
  const hint = (word === undefined ? undefined : didYouMean(word, choices)) ?? howToWrite([form]);
  const wanted =
    choices.length === 1 ? `${choices[0]} is wanted here.` : `One of ${listWithOr(choices)} is wanted here.`;
  throw new Problem("choice-unknown", wanted, { at: expression, ...(hint !== undefined && { hint }) });
};

const ownEdge = (expression: Expression, filling: Filling): string => {
  const value = evaluate(expression, filling);
  const { piece } = filling;
  const isWhole = value.kind === "edge" && value.whole;
  if (isWhole && value.of?.piece === piece?.name && piece?.edges.has(value.of!.edge)) return value.of!.edge;
  throw notOwn("edge", value, expression, piece);
};

const ownPlace = (expression: Expression, filling: Filling): string => {
  const value = evaluate(expression, filling);
  const { piece } = filling;
  const of = value.kind === "place" ? value.of : undefined;
  if (of && of.piece === piece?.name && piece.places.has(of.place)) return of.place;
  throw notOwn("named place", value, expression, piece);
};

const ownDart = (expression: Expression, filling: Filling): string => {
  const value = evaluate(expression, filling);
  const { piece } = filling;
  if (value.kind === "dart" && value.of.piece === piece?.name && piece.darts.has(value.of.dart)) return value.of.dart;
  throw notOwn("dart", value, expression, piece);
};

/** A dart that opens on an edge: a double-ended one has no mouth that could be sewn, gathered or turned elsewhere. */
const dartOnEdge = (expression: Expression, filling: Filling): string => {
  const name = ownDart(expression, filling);
  if (!filling.piece?.darts.get(name)?.lower) return name;
  throw new Problem(
    "dart-double-ended",
    `${name} is a double-ended dart, and this step takes one that opens on an edge.`,
    {
      at: expression,
      hint: `Leave ${name} as it is, or draw it on an edge with \`dart\`.`,
    },
  );
};

/** A step changes the piece it stands in, so it wants that piece's own edges, places and darts by their names. */
const notOwn = (
  what: "edge" | "named place" | "dart",
  value: Value,
  at: Expression,
  piece: Piece | undefined,
): Problem => {
  const { of } = value as { of?: { piece: string } };
  const isOther = of && of.piece !== piece?.name;
  const it = isOther
    ? `one of ${of.piece}`
    : what === "edge" && value.kind === "edge"
      ? "a line without a name of its own"
      : kindInWords(value);
  return new Problem(
    what === "edge" ? "edge-wanted" : what === "dart" ? "dart-wanted" : "place-wanted",
    `${capital(withArticle(what))} of ${piece?.name ?? "the piece"} is wanted here, and this is ${it}.`,
    {
      at,
      hint: `Name one of its ${what === "edge" ? "edges" : what === "dart" ? "darts" : "places"}.`,
    },
  );
};
