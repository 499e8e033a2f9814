// use: another recipe's pieces and values, worked with the params given here, for the same body.
import { limits } from "../../grammar/limits.ts";
import { didYouMean } from "../../grammar/nearest.ts";
import type { Expression, Line, Word } from "../../grammar/tree.ts";
import { type Evaluated, parsedIn, Working } from "../evaluate.ts";
import { LimitReached, Problem, Withheld } from "../problem.ts";
import type { Scope } from "../scope.ts";
import { usedAgain } from "../used-before.ts";
import type { BundleValue, Scalar, Value } from "../value.ts";
import { givenProblem } from "./declarations.ts";
import { atTopLevel, clauseName, fitStatement, operandValue, scalar, text } from "./reading.ts";

export const useLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  const name = clauseName(line, "as");
  working.refuseTaken(name.text, name);
  const path = text(operandValue(line), working);
  const { run } = working;
  const source = run.sources.read(path, working.file);
  run.asked.push({ kind: "recipe", path, from: working.file, found: source });
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
    throw new Problem("limit-use-depth", `Recipes use one another more than ${limits.useDepth} deep here.`, {
      at: operandValue(line),
    });
  }
  const use = { source, given: givenParams(line, working), chain: [...working.chain, source.file] };
  const { working: inner, evaluated } = usedAgain(use, run, () => {
    const { given, chain } = use;
    const fresh = new Working(parsedIn(run, source.file, source.text), run, { isRoot: false, given, chain });
    return { evaluated: fresh.all(), working: fresh };
  });
  if (inner.endedBy) {
    const { diagnostic, reach } = inner.endedBy;
    const Kind = reach === "run" ? LimitReached : Problem;
    throw new Kind(diagnostic.code, `${path}: ${diagnostic.message}`, { at: operandValue(line) });
  }
  for (const { name: param, value } of line.block?.entries ?? []) {
    const problem = entryProblem(param, value, inner, path);
    if (problem) working.say(problem, line);
  }
  takeOver(evaluated, working);
  working.uses.set(name.text, evaluated);
  working.scope.names.set(name.text, { kind: "value", value: bundle(name.text, inner.scope) });
};

const givenParams = (line: Line, working: Working): Map<string, Scalar> => {
  const given = new Map<string, Scalar>();
  for (const { name, value } of line.block?.entries ?? []) {
    if (given.has(name.text))
      working.say(new Problem("name-taken", `${name.text} is given twice here.`, { at: name }), line);
    else given.set(name.text, scalar(value, working));
  }
  return given;
};

/** What is wrong with an entry of the line's block; the used recipe has then been worked without it. */
const entryProblem = (name: Word, value: Expression, used: Working, path: string): Problem | undefined => {
  const known = used.values.get(name.text);
  if (known?.kind === "measure") {
    return new Problem("use-measure", `${name.text} is a body measure, and one body serves the whole garment.`, {
      at: name,
      hint: `Declare measure ${name.text} in this recipe; it reaches every recipe it uses.`,
    });
  }
  if (known)
    return known.kind === "param"
      ? givenProblem(name.text, used.given.get(name.text)!, known, value, used)
      : notAParam(name, used, path);
  return used.scope.names.get(name.text)?.kind === "withheld" ? undefined : notAParam(name, used, path);
};

const notAParam = (name: Word, used: Working, path: string): Problem => {
  const params = [...used.values].filter(([, { kind }]) => kind === "param").map(([each]) => each);
  const hint = didYouMean(name.text, params);
  return new Problem("param-unknown", `${path} has no param called ${name.text}.`, {
    at: name,
    ...(hint !== undefined && { hint }),
  });
};

/** Findings, checks, sizes and fabrics carry over; cuts and seams do not. */
const takeOver = (evaluated: Evaluated, working: Working): void => {
  const known = new Set(working.diagnostics.map(keyOf));
  working.untold += evaluated.untold;
  for (const diagnostic of evaluated.diagnostics) if (!known.has(keyOf(diagnostic))) working.report(diagnostic);
  for (const [size, facts] of evaluated.sizes)
    if (!working.sizes.has(size)) working.sizes.set(size, { ...facts, base: false });
  for (const [fabric, facts] of evaluated.garment.fabrics)
    if (!working.fabrics.has(fabric)) working.fabrics.set(fabric, facts);
};

const keyOf = ({ code, message, where }: Evaluated["diagnostics"][number]): string =>
  `${where.file}:${where.from}:${code}:${message}`;

/** What the recipe named, under the name it goes by here. */
const bundle = (called: string, { names }: Scope): BundleValue => ({
  kind: "recipe",
  called,
  names: [...names.keys()],
  find: (name) => {
    const bound = names.get(name);
    if (bound?.kind === "withheld") throw new Withheld();
    return bound?.kind === "value" ? within(called, bound.value) : undefined;
  },
});

/** A value of a used recipe, spoken of from outside: its `back` is `straight.back`. */
const within = (outer: string, value: Value): Value => {
  if (value.kind === "piece") return { ...value, called: `${outer}.${value.called}` };
  if (value.kind !== "recipe") return value;
  const find = (name: string): Value | undefined => {
    const found = value.find(name);
    return found && within(outer, found);
  };
  return { ...value, called: `${outer}.${value.called}`, find };
};
