// A value given from outside a recipe, read as a recipe would read it: "12 cm", "4 5/8 in", "-5 deg", "50%".
import { parse } from "../../grammar/parse.ts";
import type { Expression } from "../../grammar/tree.ts";
import { evaluate } from "../../kernel/expression.ts";
import { Problem } from "../../kernel/problem.ts";
import { isScalar, type Scalar } from "../../kernel/value.ts";

/** The value a text stands for; undefined when it is anything but one number, perhaps with a unit and a minus. */
export const readAmount = (text: string): Scalar | undefined => {
  if (/[\n#{}]/.test(text) || text.length > 100) return undefined;
  const { tree, diagnostics } = parse(`let value = ${text.trim()}`, "", new Map());
  const expression = tree.lines[0]?.operands[0]?.value;
  if (diagnostics.length > 0 || tree.lines.length !== 1 || !expression || !isNumber(expression)) return undefined;
  try {
    const value = evaluate(expression, nothingNamed);
    return isScalar(value) ? value : undefined;
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
};

const isNumber = (expression: Expression): boolean =>
  expression.kind === "number" ||
  (expression.kind === "unary" && expression.operator === "-" && expression.value.kind === "number");

const nothingNamed = {
  units: "cm",
  valueOf: (name: string) => {
    throw new Problem("name-unknown", `Nothing is called ${name} here.`);
  },
} as const;
