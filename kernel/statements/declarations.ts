// measure, param, let, size, base size and fabric: what a recipe is given to work with.
import { didYouMean } from "../../grammar/nearest.ts";
import type { Line } from "../../grammar/tree.ts";
import type { NamedValue, Working } from "../evaluate.ts";
import { evaluate } from "../expression.ts";
import { Problem } from "../problem.ts";
import { angleInWords, lengthIn, plainNumber } from "../units.ts";
import { isScalar, kindInWords, type Scalar, sharedKind } from "../value.ts";
import { atTopLevel, clauseName, clauseValue, fitStatement, nameOf, operandValue, scalar } from "./reading.ts";

export const measureLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  const name = nameOf(line);
  working.refuseTaken(name.text, name);
  const { standard, range } = declared(line, working);
  const { body } = working.run;
  const where = working.where(line);
  const known = working.isRoot ? body.root : body.used;
  const other = working.isRoot ? undefined : (body.root.get(name.text) ?? body.used.get(name.text));
  const conflict =
    !working.isRoot && !body.root.has(name.text) && other !== undefined && other.standard.value !== standard.value;
  if (!known.has(name.text)) known.set(name.text, { standard, where });
  keepValue(line, working, "measure", sameKind(body.worth(name.text, standard), standard, line), range);
  if (conflict) {
    throw new Problem(
      "measure-differs",
      `${name.text} is ${inWords(standard, working)} here and ${inWords(other.standard, working)} in ${other.where.file}, and one body serves the whole garment.`,
      {
        at: operandValue(line),
        hint: `Declare measure ${name.text} in the recipe that uses both.`,
        related: [{ where: other.where, message: "declared here with another default" }],
      },
    );
  }
};

export const paramLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  const name = nameOf(line);
  working.refuseTaken(name.text, name);
  const { standard, range } = declared(line, working);
  keepValue(line, working, "param", sameKind(working.given.get(name.text) ?? standard, standard, line), range);
};

/** The default and the range of a measure or param, all of one kind. */
const declared = (line: Line, working: Working): { standard: Scalar; range: NamedValue["range"] } => {
  const standard = scalar(operandValue(line), working);
  const [from, to] = [clauseValue(line, "from"), clauseValue(line, "to")];
  if (!from || !to) return { standard, range: undefined };
  const least = sameKind(scalar(from, working), standard, line);
  const most = sameKind(scalar(to, working), standard, line);
  if (least.value > most.value) throw new Problem("range-order", "The smaller limit stands first.", { at: from });
  return { standard: { ...standard, kind: standard.bareZero ? most.kind : standard.kind }, range: { least, most } };
};

const sameKind = (value: Scalar, like: Scalar, line: Line): Scalar => {
  const kind = sharedKind(value, like);
  if (kind !== undefined) return { kind, value: value.value };
  throw new Problem("dimension", `${nameOf(line).text} is ${kindInWords(like)}, and cannot be ${kindInWords(value)}.`, {
    at: line,
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
  if (range && (value.value < range.least.value - 1e-9 || value.value > range.most.value + 1e-9)) {
    working.report({
      code: "value-out-of-range",
      severity: "error",
      where: working.where(line),
      message: `${name} is ${inWords(value, working)}, outside ${inWords(range.least, working)} to ${inWords(range.most, working)}.`,
    });
  }
};

/** A scalar in words, in the recipe's units. */
export const inWords = ({ kind, value }: Scalar, working: { readonly units: Working["units"] }): string => {
  if (kind === "length") return lengthIn(value, working.units);
  if (kind === "angle") return angleInWords(value);
  if (kind === "weight") return `${plainNumber(value, 1)} g/m2`;
  if (kind === "area") return `${plainNumber(value / 100, 1)} cm2`;
  return plainNumber(value, 4);
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
  if (working.sizes.has(name.text))
    throw new Problem("name-taken", `There is already a size called ${name.text}.`, { at: name });
  const measures = new Map<string, Scalar>();
  for (const entry of line.block?.entries ?? []) {
    const known = working.values.get(entry.name.text);
    if (known && known.kind !== "measure") {
      throw new Problem("size-measure", `${entry.name.text} is not a measure, and a size holds measures.`, {
        at: entry.name,
      });
    }
    if (measures.has(entry.name.text))
      throw new Problem("name-taken", `${entry.name.text} stands in this size twice.`, { at: entry.name });
    const value = scalar(entry.value, working);
    if (known && isScalar(known.value) && sharedKind(known.value, value) === undefined) {
      throw new Problem(
        "dimension",
        `${entry.name.text} is ${kindInWords(known.value)}, and cannot be ${kindInWords(value)}.`,
        { at: entry.value },
      );
    }
    measures.set(entry.name.text, value);
  }
  working.sizes.set(name.text, { name: name.text, measures, base: false, where: working.where(line) });
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
  const amount = (word: string, kind: Scalar["kind"], wanted: string): number | undefined => {
    const expression = clauseValue(line, word);
    if (!expression) return undefined;
    const value = scalar(expression, working);
    if (value.kind !== kind)
      throw new Problem("value-kind", `${word} takes ${wanted}, and this is ${kindInWords(value)}.`, {
        at: expression,
      });
    if (value.value < 0) throw new Problem("value-negative", `${word} cannot be less than 0.`, { at: expression });
    return value.value;
  };
  const width = amount("width", "length", "a length");
  if (width === 0) throw new Problem("fabric-width", "Cloth has some width.", { at: clauseValue(line, "width")! });
  const facts = {
    width,
    weight: amount("weight", "weight", "a weight such as 260 gsm"),
    bendingLength: amount("bending-length", "length", "a length"),
    shrinkLength: amount("shrink-length", "number", "a ratio such as 3%"),
    shrinkWidth: amount("shrink-width", "number", "a ratio such as 3%"),
  };
  const title = line.operands[0] ? evaluate(line.operands[0].value, working.filling) : undefined;
  const fabric = {
    name: name.text,
    title: title?.kind === "text" ? title.text : name.text,
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
