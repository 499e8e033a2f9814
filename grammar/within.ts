// All that stands within a recipe's lines and values, for whoever looks at every one of them. Lists and no recursion: a sum
// of a thousand terms is a thousand values deep.
import type { Expression, Line } from "./tree.ts";

/** These lines with those of their blocks and of their `else` branches, in the order of the text. */
export const linesWithin = (lines: readonly Line[]): Line[] =>
  withAllBelow(lines, ({ block, otherwise }) => [...(block?.lines ?? []), ...(otherwise ? [otherwise] : [])]);

/** An expression with all that it is made of, in the order of the text. */
export const valuesWithin = (expression: Expression): Expression[] => withAllBelow([expression], partsOf);

/** Every expression of a line, with all that each is made of; the lines of its block and its `else` have their own. */
export const expressionsWithin = ({ operands, count, clauses, text, parameters = [], block }: Line): Expression[] =>
  [
    ...[...operands, ...clauses.flatMap((clause) => clause.operands)].flatMap(({ value, suffix }) =>
      suffix ? [value, suffix.value] : [value],
    ),
    ...(count ? [count] : []),
    ...(text ? [text] : []),
    ...parameters.flatMap(({ standard }) => (standard ? [standard] : [])),
    ...(block?.entries ?? []).map(({ value }) => value),
  ].flatMap(valuesWithin);

const withAllBelow = <T>(things: readonly T[], below: (thing: T) => readonly T[]): T[] => {
  const found: T[] = [];
  const left = [...things].reverse();
  for (let each = left.pop(); each !== undefined; each = left.pop()) {
    found.push(each);
    const parts = below(each);
    for (let index = parts.length - 1; index >= 0; index -= 1) left.push(parts[index]!);
  }
  return found;
};

const partsOf = (expression: Expression): readonly Expression[] => {
  switch (expression.kind) {
    case "number":
    case "text":
    case "name":
      return [];
    case "call":
      return expression.values;
    case "member":
      return [expression.of];
    case "unary":
      return [expression.value];
    case "binary":
      return [expression.left, expression.right];
    case "place":
      return [expression.x, expression.y];
    case "at":
      return expression.amount ? [expression.edge, expression.amount] : [expression.edge];
    case "offset":
      return [expression.origin, expression.amount];
    case "toward":
      return [expression.origin, expression.aim, expression.amount];
    case "bearing":
      return [expression.origin, expression.angle, expression.amount];
    case "join":
      return [expression.start, expression.end];
    case "direction":
      return expression.aim ? [expression.aim] : [];
  }
};
