// Steps of the recipe's own: declared with `step`, called like any step.
import { withArticle } from "../../grammar/article.ts";
import { listWithOr } from "../../grammar/nearest.ts";
import type { Expression, Line, Parameter } from "../../grammar/tree.ts";
import type { Working } from "../evaluate.ts";
import { evaluate, missingUnit } from "../expression.ts";
import { formFor } from "../fill.ts";
import { Problem } from "../problem.ts";
import { type Bound, Scope } from "../scope.ts";
import { isScalar, isScalarKind, kindInWords, scalarKinds, type Value } from "../value.ts";
import { atTopLevel, fitStatement, nameOf } from "./reading.ts";

/** A step of the recipe's own: the line that declared it, and the names of the recipe above that line. */
export interface OwnStep {
  readonly line: Line;
  readonly above: Scope;
}

const parameterKinds = ["edge", "place", ...scalarKinds, "text", "truth", "direction", "piece", "fabric"];

export const stepLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  const seen = new Set<string>();
  for (const { type, name } of line.parameters ?? []) {
    if (!parameterKinds.includes(type.text)) {
      throw new Problem("parameter-kind", `There is no kind of parameter called ${type.text}.`, {
        at: type,
        hint: `Write one of ${listWithOr(parameterKinds)}.`,
      });
    }
    if (seen.has(name.text))
      throw new Problem("name-taken", `${name.text} names two parameters of this step.`, { at: name });
    seen.add(name.text);
  }
  working.ownSteps.set(nameOf(line).text, { line, above: working.scope.asItIs() });
};

/** Works the lines of a step of the recipe's own on the piece at hand; names made inside stay inside. */
export const callOwnStep = (line: Line, { line: declared, above }: OwnStep, working: Working): void => {
  formFor(line, working.formsOf(line.verb.text));
  const inner = new Scope(above, "called", working.piece !== undefined);
  for (const parameter of declared.parameters ?? []) {
    const given = line.clauses.find(({ word }) => word.text === parameter.name.text)?.operands[0]?.value;
    const bound = given ? argument(parameter, given, working) : standard(parameter, inner, working);
    inner.names.set(parameter.name.text, bound);
  }
  const { calledBy } = working;
  working.calledBy = working.where(line);
  try {
    working.insideBlock(inner, declared.block?.lines ?? []);
  } finally {
    working.calledBy = calledBy;
  }
};

/** What a parameter is worth where the call does not say: it knows the names above the step, and the parameters before it. */
const standard = (parameter: Parameter, inner: Scope, working: Working): Bound => {
  const { scope } = working;
  working.scope = inner;
  try {
    return argument(parameter, parameter.standard!, working);
  } finally {
    working.scope = scope;
  }
};

/** What a parameter stands for: an edge or named place of the piece stays that edge or place, however it is altered meanwhile. */
const argument = ({ type, name }: Parameter, expression: Expression, working: Working): Bound => {
  const value = evaluate(expression, working.filling);
  const kind = type.text;
  const fits =
    value.kind === kind ||
    (kind === "direction" && value.kind === "angle") ||
    (isScalar(value) && value.bareZero && isScalarKind(kind));
  if (!fits) {
    const unit = kind === "length" ? working.units : kind === "angle" ? "deg" : undefined;
    throw new Problem("value-kind", `${name.text} is ${withArticle(kind)}, and this is ${kindInWords(value)}.`, {
      at: expression,
      ...(unit !== undefined && missingUnit(value, expression, unit)),
    });
  }
  const own = ownName(value, working);
  if (own !== undefined) return { kind: "alias", of: own };
  return { kind: "value", value: isScalar(value) && isScalarKind(kind) ? { kind, value: value.value } : value };
};

/** The name under which the piece at hand has a whole edge or a place. */
const ownName = (value: Value, working: Working): string | undefined => {
  if (value.kind === "edge" && value.whole && !value.turned && value.of?.piece === working.piece?.name)
    return value.of?.edge;
  if (value.kind === "place" && value.of?.piece === working.piece?.name) return value.of?.place;
  return undefined;
};
