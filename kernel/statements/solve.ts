// solve: finds a value between two limits at which two measurements agree, by halving.
import { limits } from "../../grammar/limits.ts";
import type { Expression, Line } from "../../grammar/tree.ts";
import { LineFailed, type Working } from "../evaluate.ts";
import { evaluate } from "../expression.ts";
import { LimitReached, Problem } from "../problem.ts";
import { Scope } from "../scope.ts";
import { isScalar, kindInWords, type Scalar, sharedKind } from "../value.ts";
import { inWords } from "./declarations.ts";
import { clauseValue, fitStatement, nameOf, scalar } from "./reading.ts";

/** How far apart the two values may end, in mm (or radians, or plain numbers). */
const restAllowed = 0.001;

/** The statements that may stand in a solve block besides drafting steps. */
const allowedInside = new Set(["let", "solve", "if", "repeat"]);

interface Trial {
  readonly left: Scalar;
  readonly right: Scalar;
}

export const solveLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  const name = nameOf(line);
  working.refuseTaken(name.text, name);
  if (working.trials >= limits.solveDepth) {
    throw new LimitReached("limit-solve", `A solve may stand in a solve, but not deeper than ${limits.solveDepth}.`, {
      at: line.verb,
    });
  }
  refuseOthers(line);
  const condition = clauseValue(line, "until")!;
  if (condition.kind !== "binary" || condition.operator !== "=") {
    throw new Problem(
      "solve-condition",
      "solve works until one value equals another: until length(cap) = armhole + ease.",
      { at: condition },
    );
  }
  const from = scalar(clauseValue(line, "from")!, working);
  const to = scalar(clauseValue(line, "to")!, working);
  const kind = sharedKind(from, to);
  if (kind === undefined)
    throw new Problem(
      "dimension",
      `${kindInWords(from)} and ${kindInWords(to)} cannot be the two limits of one value.`,
      { at: clauseValue(line, "to")! },
    );
  const tried = (value: number): Trial => trial(line, condition, { kind, value }, working);
  const found = halved(from.value, to.value, tried, (low, high) =>
    sameSide(line, { kind, value: from.value }, { kind, value: to.value }, low, high, working),
  );

  working.scope.names.set(name.text, { kind: "value", value: { kind, value: found } });
  working.lines(line.block?.lines ?? []);
  const rest = off(measured(condition, working));
  if (Math.abs(rest) > restAllowed) {
    throw new Problem(
      "solve-rest",
      `No ${name.text} between the two limits makes the two values agree: the nearest leaves ${rest.toFixed(3)} between them.`,
      { at: condition },
    );
  }
};

const off = ({ left, right }: Trial): number => left.value - right.value;

/** Halves the interval until nothing is left of it, or the two values agree. */
const halved = (
  from: number,
  to: number,
  tried: (value: number) => Trial,
  refuse: (low: Trial, high: Trial) => Problem,
): number => {
  const [atFrom, atTo] = [tried(from), tried(to)];
  if (off(atFrom) === 0) return from;
  if (off(atTo) === 0) return to;
  if (off(atFrom) > 0 === off(atTo) > 0) throw refuse(atFrom, atTo);
  let [low, high] = [from, to];
  const risesFrom = off(atFrom);
  for (let halving = 0; halving < limits.halvings; halving += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    const rest = off(tried(middle));
    if (rest === 0) return middle;
    if (rest > 0 === risesFrom > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

const sameSide = (line: Line, from: Scalar, to: Scalar, low: Trial, high: Trial, working: Working): Problem => {
  const said = (at: Scalar, { left, right }: Trial): string =>
    `at ${inWords(at, working)} it is ${inWords(left, working)} against ${inWords(right, working)}`;
  return new Problem("solve-limits", `The two limits lie on the same side: ${said(from, low)}, ${said(to, high)}.`, {
    at: clauseValue(line, "until")!,
    hint: "Set the limits further apart.",
  });
};

/** Draws the block with one value, measures, and forgets it all again. */
const trial = (line: Line, condition: Expression & { kind: "binary" }, value: Scalar, working: Working): Trial => {
  const { piece, scope } = working;
  working.scope = new Scope(scope, false, false);
  working.scope.names.set(nameOf(line).text, { kind: "value", value });
  working.trials += 1;
  try {
    working.lines(line.block?.lines ?? []);
    return measured(condition, working);
  } catch (error) {
    if (error instanceof LineFailed && !error.isLimit)
      throw new LineFailed(
        {
          ...error.diagnostic,
          message: `${error.diagnostic.message} (tried with ${nameOf(line).text} ${inWords(value, working)})`,
        },
        false,
      );
    throw error;
  } finally {
    working.trials -= 1;
    working.piece = piece;
    working.scope = scope;
  }
};

const measured = (condition: Expression & { kind: "binary" }, working: Working): Trial => {
  const [left, right] = [evaluate(condition.left, working.filling), evaluate(condition.right, working.filling)];
  const kind = isScalar(left) && isScalar(right) ? sharedKind(left, right) : undefined;
  if (!isScalar(left) || !isScalar(right) || kind === undefined) {
    throw new Problem("dimension", `${kindInWords(left)} cannot be held against ${kindInWords(right)}.`, {
      at: condition,
    });
  }
  return { left: { kind, value: left.value }, right: { kind, value: right.value } };
};

const refuseOthers = (line: Line): void => {
  for (const inner of line.block?.lines ?? []) {
    if (statementVerbs.has(inner.verb.text) && !allowedInside.has(inner.verb.text)) {
      throw new Problem(
        "solve-drafting",
        `Only drafting steps stand in a solve block, and ${inner.verb.text} is none.`,
        { at: inner.verb },
      );
    }
  }
};

const statementVerbs = new Set([
  "chalkline",
  "recipe",
  "units",
  "measure",
  "param",
  "size",
  "base",
  "fabric",
  "use",
  "step",
  "piece",
  "check",
  "accept",
]);
