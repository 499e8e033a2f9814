// Things without the stretches of text they came from, so that two recipes that say the same compare equal.
import type { Expression, Line, Operand, RecipeTree } from "../../grammar/tree.ts";
import type { Outcome } from "../../kernel/kernel.ts";

/** What an outcome comes to: pieces, values, seams, verdicts and the record, as plain data. */
export const comesTo = (outcome: Outcome): unknown => {
  const { garment, values, sizes, fields, judgements, findings, records, uses } = outcome;
  return plain({
    garment,
    values,
    sizes,
    fields,
    uses: [...uses.keys()],
    judgements: judgements.map(({ check, on, verdict, found, wanted, message }) => ({
      check,
      on,
      verdict,
      found,
      wanted,
      message,
    })),
    findings: findings.map(({ code, message }) => ({ code, message })),
    records: records.map(({ piece, step, words, amount }) => ({ piece, step, words, amount })),
  });
};

const placed = new Set(["drawnBy", "where", "calledBy", "related"]);

const plain = (value: unknown): unknown => {
  if (value instanceof Map) return { map: [...value].map(([key, each]) => [key, plain(each)]) };
  if (value instanceof Set) return { set: [...value] };
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, each]) =>
      placed.has(key) || typeof each === "function" ? [] : [[key, plain(each)]],
    ),
  );
};

/** What a tree says, clauses in the order of their words. */
export const treeSays = ({ lines }: RecipeTree): unknown => lines.map(lineSays);

const lineSays = (line: Line): unknown => ({
  verb: line.verb.text,
  names: line.names.map(({ text }) => text),
  operands: line.operands.map(operandSays),
  clauses: line.clauses
    .map(({ word, operands }) => ({ word: word.text, operands: operands.map(operandSays) }))
    .sort((a, b) => (a.word < b.word ? -1 : 1)),
  text: line.text?.value,
  count: line.count?.value,
  parameters: line.parameters?.map(({ type, name, standard }) => [type.text, name.text, standard && says(standard)]),
  entries: line.block?.entries.map(({ name, value }) => [name.text, says(value)]),
  lines: line.block?.lines.map(lineSays),
  otherwise: line.otherwise && lineSays(line.otherwise),
});

const operandSays = ({ value, suffix }: Operand): unknown => [
  says(value),
  suffix && [suffix.word.text, says(suffix.value)],
];

/** An expression with its kinds, words and numbers, and nothing of where they stand or how wide they are spaced. */
const says = (expression: Expression): unknown => withoutStretches(expression);

const withoutStretches = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(withoutStretches);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, each]) =>
      ["from", "to", "sign", "written"].includes(key) ? [] : [[key, withoutStretches(each)]],
    ),
  );
};
