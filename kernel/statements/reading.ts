// Small questions that statements ask of their lines: one operand's value, a clause's value, a text.
import type { Expression, Line, Word } from "../../grammar/tree.ts";
import type { Working } from "../evaluate.ts";
import { evaluate, missingUnit } from "../expression.ts";
import { formFor } from "../fill.ts";
import { Problem } from "../problem.ts";
import { capital, isScalar, kindInWords, type Scalar, type Value } from "../value.ts";

/** Makes sure the line has its statement's form. */
export const fitStatement = (line: Line, working: Working): void => {
  formFor(line, working.formsOf(line.verb.text));
};

/** Statements that declare things of the whole garment do not stand inside a piece or a block. */
export const atTopLevel = (line: Line, working: Working): void => {
  if (working.scope.outer === undefined && !working.piece) return;
  throw new Problem(
    "statement-inside",
    `${line.verb.text} belongs to the whole recipe, and this line stands inside a block.`,
    {
      at: line.verb,
      hint: "Move it out of the { }.",
    },
  );
};

export const clauseValue = (line: Line, word: string): Expression | undefined =>
  line.clauses.find((clause) => clause.word.text === word)?.operands[0]?.value;

export const operandValue = (line: Line): Expression => line.operands[0]!.value;

export const nameOf = (line: Line): Word => line.names[0]!;

/** The name behind a clause word: `as NAME`. */
export const clauseName = (line: Line, word: string): Word => {
  const value = clauseValue(line, word);
  if (value?.kind === "name" && value.path.length === 1) return value.path[0]!;
  throw new Problem("name-missing", `A name is wanted after ${word}.`, { at: line });
};

export const scalar = (expression: Expression, working: Working): Scalar => {
  const value = evaluate(expression, working.filling);
  if (isScalar(value)) return value;
  throw new Problem("value-kind", `A number, a length or an angle is wanted here, and this is ${kindInWords(value)}.`, {
    at: expression,
  });
};

export const text = (expression: Expression, working: Working): string => {
  const value = orUnquoted(expression, working.tree.text, () => evaluate(expression, working.filling));
  if (value.kind === "text") return value.text;
  throw new Problem("value-kind", `A text in quotes is wanted here, and this is ${kindInWords(value)}.`, {
    at: expression,
  });
};

/** Where a text is wanted, a name that nothing has is a text without its quotes. */
const orUnquoted = (expression: Expression, source: string, work: () => Value): Value => {
  try {
    return work();
  } catch (problem) {
    const written = source.slice(expression.from, expression.to);
    if (!(problem instanceof Problem) || problem.code !== "name-unknown" || written.includes('"')) throw problem;
    const replace = `"${written}"`;
    throw new Problem("text-unquoted", "A text stands in quotes.", {
      at: expression,
      hint: `Write ${replace}.`,
      replace,
    });
  }
};

/** A scalar of one kind, as a statement's clause wants it: `wanted` with its article, `unit` what a bare number may have meant. */
export const amount = (
  expression: Expression,
  kind: Scalar["kind"],
  wanted: string,
  unit: string | undefined,
  working: Working,
): number => {
  const value = evaluate(expression, working.filling);
  if (isScalar(value) && (value.kind === kind || value.bareZero)) return value.value;
  throw new Problem("value-kind", `${capital(wanted)} is wanted here, and this is ${kindInWords(value)}.`, {
    at: expression,
    ...(unit !== undefined && missingUnit(value, expression, unit)),
  });
};

/** A whole number of at least 0. */
export const wholeNumber = (expression: Expression, working: Working): number => {
  const { kind, value } = scalar(expression, working);
  if (kind === "number" && Number.isInteger(value) && value >= 0) return value;
  throw new Problem("whole-number", "A whole number, 0 or more, is wanted here.", { at: expression });
};
