// if, else and repeat.
import { limits } from "../../grammar/limits.ts";
import type { Line } from "../../grammar/tree.ts";
import type { Working } from "../evaluate.ts";
import { evaluate, holds } from "../expression.ts";
import { Problem } from "../problem.ts";
import { clauseName, fitStatement, operandValue, wholeNumber } from "./reading.ts";

export const ifLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  const condition = operandValue(line);
  const value = evaluate(condition, working.filling);
  if (value.kind !== "truth")
    throw new Problem("value-kind", "if takes a condition, such as flare > 0 cm.", { at: condition });
  if (holds(value)) working.inside(line.block?.lines ?? []);
  else if (line.otherwise?.verb.text === "if") working.line(line.otherwise);
  else if (line.otherwise) working.inside(line.otherwise.block?.lines ?? []);
};

export const repeatLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  const count = wholeNumber(operandValue(line), working);
  if (count > limits.rounds) {
    throw new Problem(
      "limit-rounds",
      `A repeat goes round at most ${limits.rounds} times, and this asks for ${count}.`,
      { at: operandValue(line) },
    );
  }
  const name = clauseName(line, "as");
  working.refuseTaken(name.text, name);
  const lines = line.block?.lines ?? [];
  for (let round = 1; round <= count && lines.length > 0; round += 1) {
    working.inside(lines, [[name.text, { kind: "number", value: round }]]);
  }
};
