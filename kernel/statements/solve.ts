// solve: finds a value between two limits at which two measurements agree, by halving.
import { limits } from "../../grammar/limits.ts";
import { statementWords } from "../../grammar/statements.ts";
import type { BinaryValue, Line } from "../../grammar/tree.ts";
import { linesWithin } from "../../grammar/within.ts";
import { LineFailed, type Working } from "../evaluate.ts";
import { compared, missingUnit } from "../expression.ts";
import { Problem } from "../problem.ts";
import { Scope } from "../scope.ts";
import { scalarInWords } from "../units.ts";
import { capital, kindInWords, type Scalar, sharedKind } from "../value.ts";
import { clauseValue, fitStatement, nameOf, scalar } from "./reading.ts";

/** How far apart the two values may end, in mm (or radians, or plain numbers). */
const restAllowed = 0.001;

/** The statements that may stand in a solve block besides drafting steps. */
const allowedInside = new Set(["let", "solve", "if", "else", "repeat"]);

interface Trial {
  readonly left: Scalar;
  readonly right: Scalar;
}

export const solveLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  const name = nameOf(line);
  working.refuseTaken(name.text, name);
  if (working.trials >= limits.solveDepth) {
    throw new Problem("limit-solve", `A solve may stand in a solve, but not deeper than ${limits.solveDepth}.`, {
      at: line.verb,
    });
  }
  refuseOthers(line.block?.lines ?? [], working);
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
      `${capital(kindInWords(from))} and ${kindInWords(to)} cannot be the two limits of one value.`,
      {
        at: clauseValue(line, "to")!,
        ...(from.kind === "length" && missingUnit(to, clauseValue(line, "to")!, working.units)),
      },
    );
  const tried = (value: number): Trial => trial(line, condition, { kind, value }, working);
  const found = halved(from.value, to.value, tried, (low, high) =>
    sameSide(line, { kind, value: from.value }, { kind, value: to.value }, low, high, working),
  );

  working.scope.names.set(name.text, { kind: "value", value: { kind, value: found } });
  working.lines(line.block?.lines ?? []);
  const final = measured(condition, working);
  const rest = off(final);
  if (Math.abs(rest) > restAllowed) {
    throw new Problem(
      "solve-rest",
      `No ${name.text} between the two limits makes the two values agree: at the nearest one side is ${scalarInWords(final.left, working.units)} and the other ${scalarInWords(final.right, working.units)}.`,
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
    `at ${scalarInWords(at, working.units)} it is ${scalarInWords(left, working.units)} against ${scalarInWords(right, working.units)}`;
  return new Problem("solve-limits", `The two limits lie on the same side: ${said(from, low)}, ${said(to, high)}.`, {
    at: clauseValue(line, "until")!,
    hint: "Set the limits further apart.",
  });
};

/** Draws the block with one value, measures, and forgets it all again. */
const trial = (line: Line, condition: BinaryValue, value: Scalar, working: Working): Trial => {
  const { piece, scope } = working;
  working.scope = new Scope(scope, "through", false);
  working.scope.names.set(nameOf(line).text, { kind: "value", value });
  working.trials += 1;
  try {
    working.lines(line.block?.lines ?? []);
    return measured(condition, working);
  } catch (error) {
    if (error instanceof LineFailed && error.reach === "line")
      throw new LineFailed(
        {
          ...error.diagnostic,
          message: `${error.diagnostic.message} (tried with ${nameOf(line).text} ${scalarInWords(value, working.units)})`,
        },
        "line",
      );
    throw error;
  } finally {
    working.trials -= 1;
    working.piece = piece;
    working.scope = scope;
  }
};

const measured = (condition: BinaryValue, working: Working): Trial => {
  const { left, right, kind } = compared(condition, working.filling);
  return { left: { kind, value: left.value }, right: { kind, value: right.value } };
};

/** A trial draws and forgets again, so nothing may stand in the block that leaves more behind than edges and places. */
const refuseOthers = (lines: readonly Line[], working: Working, seen: Set<Line> = new Set()): void => {
  for (const line of linesWithin(lines)) {
    if (seen.has(line)) continue;
    seen.add(line);
    const { text: verb } = line.verb;
    const ofGarment = working.run.steps.get(verb)?.on === "garment";
    if (ofGarment || (statementWords.includes(verb) && !allowedInside.has(verb))) {
      throw new Problem("solve-drafting", `Only drafting steps stand in a solve block, and ${verb} is none.`, {
        at: line.verb,
      });
    }
    const own = working.ownSteps.get(verb)?.line;
    refuseOthers(own?.block?.lines ?? [], working, seen);
  }
};
