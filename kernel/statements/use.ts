// use: another recipe's pieces and values, worked afresh with the params given here, for the same body.
import { limits } from "../../grammar/limits.ts";
import { didYouMean } from "../../grammar/nearest.ts";
import type { Line } from "../../grammar/tree.ts";
import { type Evaluated, parsedIn, Working } from "../evaluate.ts";
import { LimitReached, Problem } from "../problem.ts";
import type { BundleValue, Scalar, Value } from "../value.ts";
import { atTopLevel, clauseName, fitStatement, operandValue, scalar, text } from "./reading.ts";

export const useLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  const name = clauseName(line, "as");
  working.refuseTaken(name.text, name);
  const path = text(operandValue(line), working);
  const { run } = working;
  const source = run.sources.read(path, working.file);
  if ("problem" in source) {
    const { code, message, hint } = source.problem;
    throw new Problem(code, message, { at: operandValue(line), ...(hint !== undefined && { hint }) });
  }
  if (working.chain.includes(source.file)) {
    throw new Problem("use-cycle", `${path} uses, in the end, this very recipe.`, { at: operandValue(line) });
  }
  run.spent.files += 1;
  if (run.spent.files > limits.usedFiles) {
    throw new LimitReached("limit-uses", `This recipe uses more than ${limits.usedFiles} others.`, {
      at: operandValue(line),
    });
  }
  if (working.chain.length > limits.useDepth) {
    throw new LimitReached("limit-use-depth", `Recipes use one another more than ${limits.useDepth} deep here.`, {
      at: operandValue(line),
    });
  }
  const given = givenParams(line, working);
  const inner = new Working(parsedIn(run, source.file, source.text), run, {
    isRoot: false,
    given,
    chain: [...working.chain, source.file],
  });
  const evaluated = inner.all();
  if (inner.overLimit)
    throw new LimitReached(inner.overLimit.code, inner.overLimit.message, { at: operandValue(line) });
  for (const entry of line.block?.entries ?? []) checkEntry(entry.name, evaluated, path);
  takeOver(evaluated, working);
  working.uses.set(name.text, evaluated);
  const value = bundle(name.text, evaluated, inner);
  working.scope.names.set(name.text, { kind: "value", value });
};

const givenParams = (line: Line, working: Working): Map<string, Scalar> => {
  const given = new Map<string, Scalar>();
  for (const { name, value } of line.block?.entries ?? []) {
    if (given.has(name.text)) throw new Problem("name-taken", `${name.text} is given twice here.`, { at: name });
    given.set(name.text, scalar(value, working));
  }
  return given;
};

const checkEntry = (name: Line["verb"], evaluated: Evaluated, path: string): void => {
  const value = evaluated.values.get(name.text);
  if (value?.kind === "param") return;
  if (value?.kind === "measure") {
    throw new Problem("use-measure", `${name.text} is a body measure, and one body serves the whole garment.`, {
      at: name,
      hint: `Declare measure ${name.text} in this recipe; it reaches every recipe it uses.`,
    });
  }
  const params = [...evaluated.values].filter(([, each]) => each.kind === "param").map(([each]) => each);
  const hint = didYouMean(name.text, params);
  throw new Problem("param-unknown", `${path} has no param called ${name.text}.`, {
    at: name,
    ...(hint !== undefined && { hint }),
  });
};

/** Findings, checks, sizes and fabrics carry over; cuts and seams do not. */
const takeOver = (evaluated: Evaluated, working: Working): void => {
  const known = new Set(working.diagnostics.map(keyOf));
  for (const diagnostic of evaluated.diagnostics) if (!known.has(keyOf(diagnostic))) working.report(diagnostic);
  for (const [size, facts] of evaluated.sizes)
    if (!working.sizes.has(size)) working.sizes.set(size, { ...facts, base: false });
  for (const [fabric, facts] of evaluated.garment.fabrics) {
    if (working.fabrics.has(fabric)) continue;
    working.fabrics.set(fabric, facts);
    if (!working.scope.names.has(fabric))
      working.scope.names.set(fabric, { kind: "value", value: { kind: "fabric", fabric: facts } });
  }
};

const keyOf = ({ code, message, where }: Evaluated["diagnostics"][number]): string =>
  `${where.file}:${where.from}:${code}:${message}`;

const bundle = (called: string, { garment, values, uses, incomplete }: Evaluated, inner: Working): BundleValue => {
  const nested = new Map([...uses].map(([name]) => [name, inner.scope.names.get(name)] as const));
  const find = (name: string): Value | undefined => {
    const piece = garment.pieces.get(name);
    if (piece) return { kind: "piece", piece, called: `${called}.${name}` };
    const value = values.get(name);
    if (value) return value.value;
    const fabric = garment.fabrics.get(name);
    if (fabric) return { kind: "fabric", fabric };
    const bound = nested.get(name);
    return bound?.kind === "value" ? bound.value : undefined;
  };
  return {
    kind: "recipe",
    called,
    find,
    incomplete,
    names: [...garment.pieces.keys(), ...values.keys(), ...nested.keys()],
  };
};
