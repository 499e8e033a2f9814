// check and accept: the recipe's own constraints, and built-in checks waived with a reason.
import { didYouMean } from "../../grammar/nearest.ts";
import type { Expression, Line } from "../../grammar/tree.ts";
import type { Working } from "../evaluate.ts";
import { type Comparing, compared, evaluate, holds, missingUnit, pinned } from "../expression.ts";
import { Problem } from "../problem.ts";
import { scalarInWords } from "../units.ts";
import { capital, kindInWords, type Scalar, sharedKind } from "../value.ts";
import { clauseValue, fitStatement, operandValue, scalar, text } from "./reading.ts";

const signInWords: Record<Comparing, string> = {
  "=": "equal to",
  "<>": "different from",
  "<": "less than",
  ">": "more than",
  "<=": "at most",
  ">=": "at least",
};

export const checkLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  const condition = operandValue(line);
  const within = clauseValue(line, "within");
  const because = clauseValue(line, "because");
  const reason = because ? text(because, working) : undefined;
  const { ok, found, wanted, told } = judged(condition, within, working);
  if (working.trials > 0) return;
  const on = sourceOf(condition, working);
  working.judged.push({
    check: "check",
    on,
    verdict: ok ? "pass" : "error",
    found,
    wanted,
    where: working.where(condition),
    message: ok ? `${on} holds.` : `${told}${reason === undefined ? "" : `, because ${reason.replace(/[.!]$/, "")}`}.`,
  });
};

interface Outcome {
  readonly ok: boolean;
  readonly found: number | string;
  readonly wanted: number | string;
  readonly told: string;
}

const judged = (condition: Expression, within: Expression | undefined, working: Working): Outcome => {
  const tolerance = within && scalar(within, working);
  if (condition.kind === "binary" && condition.operator in signInWords) {
    const operator = condition.operator as Comparing;
    const { holds: ok, left, right, kind } = compared(condition, working.filling, tolerance?.value);
    if (within) refuseTolerance(tolerance!, kind, operator, within, working);
    const shown = (value: Scalar): string => scalarInWords({ kind, value: value.value }, working.units);
    const margin = tolerance ? `, within ${scalarInWords({ kind, value: tolerance.value }, working.units)}` : "";
    return {
      ok,
      found: outward(left.value, kind),
      wanted: outward(right.value, kind),
      told: `${sourceOf(condition.left, working)} is ${shown(left)}, and has to be ${signInWords[operator]} ${shown(right)}${margin}`,
    };
  }
  if (within) {
    throw new Problem("tolerance-idle", "A tolerance goes with a comparison of two values, and this is none.", {
      at: within,
    });
  }
  const value = evaluate(condition, working.filling);
  const ok = pinned(condition, () => holds(value));
  return { ok, found: ok ? "true" : "false", wanted: "true", told: `${sourceOf(condition, working)} does not hold` };
};

const refuseTolerance = (
  tolerance: Scalar,
  kind: Scalar["kind"],
  operator: Comparing,
  at: Expression,
  working: Working,
): void => {
  if (operator === "<" || operator === ">") {
    throw new Problem("tolerance-idle", "A tolerance says what counts as equal, so it goes with =, <>, <= and >=.", {
      at,
    });
  }
  if (sharedKind(tolerance, { kind, value: 0 }) === undefined) {
    const compared = kindInWords({ kind });
    throw new Problem(
      "dimension",
      `${capital(compared)} is compared, and the tolerance is ${kindInWords(tolerance)}.`,
      {
        at,
        ...(kind === "length" && missingUnit(tolerance, at, working.units)),
      },
    );
  }
  if (tolerance.value < 0) throw new Problem("tolerance-negative", "A tolerance cannot be less than 0.", { at });
};

/** Reports speak of degrees. */
const outward = (value: number, kind: Scalar["kind"]): number => (kind === "angle" ? (value * 180) / Math.PI : value);

/** The condition as it is written, on one line. */
const sourceOf = (expression: Expression, working: Working): string =>
  working.tree.text.slice(expression.from, expression.to).replace(/\s+/g, " ");

export const acceptLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  const check = operandValue(line);
  const name = check.kind === "name" ? check.path.map(({ text }) => text).join(".") : "";
  if (!working.run.checkNames.includes(name)) {
    const hint = didYouMean(name, working.run.checkNames);
    const message = name === "" ? "The name of a check is wanted here." : `There is no check called ${name}.`;
    throw new Problem("check-unknown", message, {
      at: check,
      ...(hint !== undefined && { hint }),
    });
  }
  const thing = clauseValue(line, "on")!;
  const because = text(clauseValue(line, "because")!, working);
  if (because.trim() === "")
    throw new Problem("accept-reason", "A check is waived for a reason, and this text is empty.", {
      at: clauseValue(line, "because")!,
    });
  working.accepts.push({ check: name, on: thingName(thing, working), because, drawnBy: working.where(line) });
};

/** "back", "back.hem": what the acceptance speaks of; it has to be there. */
const thingName = (thing: Expression, working: Working): string => {
  const value = evaluate(thing, working.filling);
  if (thing.kind !== "name" || !["piece", "edge", "place", "dart"].includes(value.kind)) {
    throw new Problem("accept-thing", "A check is waived on a piece, an edge, a dart or a place, by its name.", {
      at: thing,
    });
  }
  const words = thing.path.map(({ text }) => text);
  const { piece } = working;
  if (piece && [piece.edges, piece.places, piece.darts].some((names) => names.has(words[0]!)))
    return [piece.name, ...words].join(".");
  return words.join(".");
};
