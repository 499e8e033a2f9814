// measure, param, let, size, base size and fabric: what a recipe is given to work with.
import { didYouMean } from "../../grammar/nearest.ts";
import type { Expression, Line, Stretch, Word } from "../../grammar/tree.ts";
import type { DeclaredMeasure } from "../body.ts";
import type { NamedValue, Working } from "../evaluate.ts";
import { evaluate, missingUnit } from "../expression.ts";
import { Problem, Withheld } from "../problem.ts";
import { scalarInWords } from "../units.ts";
import { isScalar, kindInWords, type Scalar, sharedKind, type Value } from "../value.ts";
import {
  amount,
  atTopLevel,
  clauseName,
  clauseValue,
  fitStatement,
  nameOf,
  operandValue,
  scalar,
  text,
} from "./reading.ts";

export const measureLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  const name = nameOf(line);
  working.refuseTaken(name.text, name);
  const { standard, range } = declared(line, working);
  if (standard.kind === "number" && !standard.bareZero) {
    throw new Problem("value-kind", "A measure is a length or an angle, and this is a plain number.", {
      at: operandValue(line),
      ...missingUnit(standard, operandValue(line), working.units),
    });
  }
  const { body } = working.run;
  const where = working.where(line);
  const known = working.isRoot ? body.root : body.used;
  const other = working.isRoot ? undefined : (body.root.get(name.text) ?? body.used.get(name.text));
  if (working.isRoot) refuseLate(line, standard, working);
  const conflict =
    !working.isRoot && !body.root.has(name.text) && other !== undefined && other.standard.value !== standard.value;
  if (!working.isRoot) noteMeasure(name.text, working, { standard, where });
  if (!known.has(name.text)) known.set(name.text, { standard, where });
  keepValue(
    line,
    working,
    "measure",
    sameKind(body.worth(name.text, standard), standard, line, operandValue(line), working),
    range,
  );
  if (conflict) {
    throw new Problem(
      "measure-differs",
      `${name.text} is ${scalarInWords(standard, working.units)} here and ${scalarInWords(other.standard, working.units)} in ${other.where.file}, and one body serves the whole garment.`,
      {
        at: operandValue(line),
        hint: `Declare measure ${name.text} in the recipe that uses both.`,
        related: [{ where: other.where, message: "declared here with another default" }],
      },
    );
  }
};

/** Notes what a used recipe finds of a measure, and its own default where it is the first to declare it. */
const noteMeasure = (name: string, { run }: Working, own?: DeclaredMeasure): void => {
  const { given, root, used } = run.body;
  const known = used.get(name);
  run.asked.push({
    kind: "measure",
    name,
    given: given.get(name),
    root: root.get(name)?.standard,
    used: known,
    left: known ?? own,
  });
};

/** The opened recipe's default reaches every recipe that it uses, and has to be known before they are worked. */
const refuseLate = (line: Line, standard: Scalar, working: Working): void => {
  const name = nameOf(line);
  const used = working.run.body.used.get(name.text);
  if (!used || used.standard.value === standard.value) return;
  throw new Problem("measure-late", `${name.text} was needed by ${used.where.file} already, which a line above uses.`, {
    at: name,
    hint: "Move this line above that one.",
    related: [{ where: used.where, message: "declared here with another default" }],
  });
};

export const paramLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  const name = nameOf(line);
  working.refuseTaken(name.text, name);
  const { standard, range } = declared(line, working);
  const given = working.given.get(name.text);
  // A value that the `use` line of another recipe gives is judged there, where it can be mended.
  const isOurs = working.isRoot || given === undefined;
  const fits = given !== undefined && (isOurs || sharedKind(given, standard) !== undefined);
  keepValue(
    line,
    working,
    "param",
    sameKind(fits ? given : standard, standard, line, operandValue(line), working),
    isOurs ? range : undefined,
  );
  if (range) working.values.set(name.text, { ...working.values.get(name.text)!, range });
};

/** What is wrong with a value that a `use` line gives a param. */
export const givenProblem = (
  name: string,
  given: Scalar,
  param: NamedValue,
  at: Expression,
  working: Working,
): Problem | undefined => {
  const { value, range } = param;
  const kind = isScalar(value) ? sharedKind(given, value) : undefined;
  if (kind === undefined) return otherKind(name, given, value, at, working);
  return range && isOutside(given, range)
    ? outOfRange(name, { kind, value: given.value }, range, at, working)
    : undefined;
};

const isOutside = ({ value }: Scalar, { least, most }: NonNullable<NamedValue["range"]>): boolean =>
  value < least.value - 1e-9 || value > most.value + 1e-9;

const outOfRange = (
  name: string,
  value: Scalar,
  range: NonNullable<NamedValue["range"]>,
  at: Stretch,
  working: Working,
): Problem =>
  new Problem(
    "value-out-of-range",
    `${name} is ${scalarInWords(value, working.units)}, outside ${scalarInWords(range.least, working.units)} to ${scalarInWords(range.most, working.units)}.`,
    { at },
  );

/** The default and the range of a measure or param, all of one kind. */
const declared = (line: Line, working: Working): { standard: Scalar; range: NamedValue["range"] } => {
  const standard = scalar(operandValue(line), working);
  const [from, to] = [clauseValue(line, "from"), clauseValue(line, "to")];
  if (!from || !to) return { standard, range: undefined };
  const least = sameKind(scalar(from, working), standard, line, from, working);
  const most = sameKind(scalar(to, working), standard.bareZero ? least : standard, line, to, working);
  if (least.value > most.value) throw new Problem("range-order", "The smaller limit stands first.", { at: from });
  return { standard: { kind: most.kind, value: standard.value }, range: { least, most } };
};

const sameKind = (value: Scalar, like: Scalar, line: Line, at: Expression, working: Working): Scalar => {
  const kind = sharedKind(value, like);
  if (kind !== undefined)
    return { kind, value: value.value, ...(value.bareZero && like.bareZero && { bareZero: true }) };
  throw otherKind(nameOf(line).text, value, like, at, working);
};

/** A value of another kind than its name has. */
const otherKind = (name: string, value: Scalar, like: Value, at: Expression, working: Working): Problem => {
  const unit = like.kind === "length" ? working.units : like.kind === "angle" ? "deg" : undefined;
  return new Problem("dimension", `${name} is ${kindInWords(like)}, and cannot be ${kindInWords(value)}.`, {
    at,
    ...(unit !== undefined && missingUnit(value, at, unit)),
  });
};

/** Names the value; one outside its range is reported, and worked with all the same. */
const keepValue = (
  line: Line,
  working: Working,
  kind: "measure" | "param",
  value: Scalar,
  range: NamedValue["range"],
): void => {
  const name = nameOf(line).text;
  working.scope.names.set(name, { kind: "value", value });
  working.values.set(name, {
    value,
    kind,
    where: working.where(line),
    ...(line.text && { note: line.text.value }),
    ...(range && { range }),
  });
  if (range && isOutside(value, range)) working.say(outOfRange(name, value, range, operandValue(line), working), line);
};

export const letLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  const name = nameOf(line);
  const value = evaluate(operandValue(line), working.filling);
  working.declare(name.text, value, name);
  if (working.scope.outer === undefined && working.trials === 0)
    working.values.set(name.text, { value, kind: "let", where: working.where(line) });
};

export const sizeLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  const name = nameOf(line);
  // A size that a used recipe brought is replaced by the recipe's own.
  if (working.sizes.get(name.text)?.where.file === working.file)
    throw new Problem("name-taken", `There is already a size called ${name.text}.`, { at: name });
  const measures = new Map<string, Scalar>();
  for (const { name: measure, value } of line.block?.entries ?? []) {
    working.attempt(line, () => {
      if (measures.has(measure.text)) {
        throw new Problem("name-taken", `${measure.text} stands in this size twice.`, { at: measure });
      }
      const given = scalar(value, working);
      const like = isSizeTable(working) ? given : measureCalled(measure, working);
      if (sharedKind(like, given) === undefined) throw otherKind(measure.text, given, like, value, working);
      measures.set(measure.text, given);
    });
  }
  working.sizes.set(name.text, { name: name.text, measures, base: false, where: working.where(line) });
};

/** A recipe that asks for no measure itself and uses no other is a table for others to use, and holds whatever they may ask for. */
const isSizeTable = ({ values, uses }: Working): boolean =>
  uses.size === 0 && ![...values.values()].some(({ kind }) => kind === "measure");

/** The default of a measure of this recipe, or of one that it uses. */
const measureCalled = ({ text: name, ...at }: Word, working: Working): Scalar => {
  const { root, used } = working.run.body;
  const own = working.values.get(name);
  const known = (own ? undefined : used.get(name)?.standard) ?? root.get(name)?.standard;
  if (own?.kind === "measure" && isScalar(own.value)) return own.value;
  if (own) throw new Problem("size-measure", `${name} is not a measure, and a size holds measures.`, { at });
  noteMeasure(name, working);
  if (known) return known;
  if (working.scope.names.get(name)?.kind === "withheld") throw new Withheld();
  working.run.asked.push({ kind: "all-measures" });
  const hint = didYouMean(name, [...root.keys(), ...used.keys()]);
  throw new Problem("measure-unknown", `There is no measure called ${name} above this line.`, {
    at,
    ...(hint !== undefined && { hint }),
  });
};

export const baseLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  const name = clauseName(line, "size");
  const size = working.sizes.get(name.text);
  if (!size) {
    const hint = didYouMean(name.text, working.sizes.keys());
    throw new Problem("size-unknown", `There is no size called ${name.text} above this line.`, {
      at: name,
      ...(hint !== undefined && { hint }),
    });
  }
  const first = [...working.sizes.values()].find(({ base }) => base);
  if (first) throw new Problem("size-base-twice", `${first.name} is already the base size.`, { at: name });
  working.sizes.set(name.text, { ...size, base: true });
};

export const fabricLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  const name = nameOf(line);
  const fact = (word: string, kind: Scalar["kind"], wanted: string, unit?: string): number | undefined => {
    const expression = clauseValue(line, word);
    if (!expression) return undefined;
    const value = amount(expression, kind, wanted, unit, working);
    if (value < 0) throw new Problem("value-negative", `${word} cannot be less than 0.`, { at: expression });
    return value;
  };
  const width = fact("width", "length", "a length", working.units);
  if (width === 0) throw new Problem("fabric-width", "Cloth has some width.", { at: clauseValue(line, "width")! });
  const facts = {
    width,
    weight: fact("weight", "weight", "a weight such as 260 gsm", "gsm"),
    bendingLength: fact("bending-length", "length", "a length", working.units),
    shrinkLength: fact("shrink-length", "number", "a ratio such as 3%"),
    shrinkWidth: fact("shrink-width", "number", "a ratio such as 3%"),
  };
  for (const word of ["shrink-length", "shrink-width"]) {
    const ratio = word === "shrink-length" ? facts.shrinkLength : facts.shrinkWidth;
    if (ratio !== undefined && ratio >= 1) {
      throw new Problem("ratio-range", "Cloth shrinks by less than its whole length: 3% or 0.03.", {
        at: clauseValue(line, word)!,
      });
    }
  }
  const title = line.operands[0] ? text(line.operands[0].value, working) : name.text;
  const fabric = {
    name: name.text,
    title,
    oneWay: line.clauses.some(({ word }) => word.text === "one-way"),
    drawnBy: working.where(line),
    ...withoutUndefined(facts),
  };
  working.declare(name.text, { kind: "fabric", fabric }, name);
  working.fabrics.set(name.text, fabric);
};

type Given<T> = { [K in keyof T]?: Exclude<T[K], undefined> };

const withoutUndefined = <T extends object>(facts: T): Given<T> =>
  Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined)) as Given<T>;
