// chalkline explain: the life of one edge of a piece, line by line.
import { nearest } from "../../grammar/nearest.ts";
import { edgeLife } from "../../kernel/compare/edge-life.ts";
import { isHidden } from "../../kernel/hidden-names.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { explainJson, explainReport, type LineText } from "../../kernel/report/explain-report.ts";
import { jsonText } from "../../kernel/report/json.ts";
import { openNamed } from "./opened.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal } from "./told.ts";
import { type Given, worked } from "./worked.ts";

export interface ExplainOptions extends Given {
  readonly root?: string;
  readonly form: "long" | "json";
}

/** Explains PIECE.EDGE of a recipe. */
export const explain = async (
  path: string,
  written: string,
  options: ExplainOptions,
  out: Paper,
  err: Paper,
): Promise<number> => {
  const opened = await openNamed(path, options.root);
  if ("problem" in opened) {
    err.say(refusal(opened.problem.message, opened.problem.hint));
    return exitCode.unreadable;
  }
  const result = worked(opened, options);
  if ("problem" in result) {
    err.say(refusal(result.problem));
    return exitCode.unreadable;
  }
  const { outcome } = result;
  const dot = written.lastIndexOf(".");
  const [piece, edge] = [written.slice(0, Math.max(0, dot)), written.slice(dot + 1)];
  const unknown = unknownEdge(piece, edge, outcome);
  if (unknown !== undefined) {
    err.say(refusal(unknown.message, unknown.hint));
    return exitCode.unreadable;
  }
  const stages = edgeLife(outcome, piece, edge);
  const textOf: LineText = (file, from, to) =>
    (opened.texts.get(file)?.text ?? "").slice(from, to).replace(/\s+/g, " ").trim();
  if (options.form === "json") out.print(jsonText(explainJson(piece, edge, stages, textOf)));
  else out.say(explainReport(written, stages, outcome.garment, textOf, out.width));
  return codeFor(outcome);
};

const unknownEdge = (
  name: string,
  edge: string,
  { garment }: Outcome,
): { readonly message: string; readonly hint?: string } | undefined => {
  if (name === "") return { message: "Name a piece and an edge of it, such as back.hem." };
  const piece = garment.pieces.get(name);
  if (!piece) return { message: `The recipe has no piece called ${name}.`, ...hintFrom(name, garment.pieces.keys()) };
  if (piece.edges.has(edge)) return undefined;
  const edges = [...piece.edges.keys()].filter((each) => !isHidden(each));
  return { message: `${name} has no edge called ${edge}.`, ...hintFrom(edge, edges) };
};

const hintFrom = (name: string, known: Iterable<string>): { readonly hint?: string } => {
  const all = [...known];
  const near = nearest(name, all);
  if (near.length > 0) return { hint: `Did you mean ${near.join(" or ")}?` };
  return all.length === 0 ? {} : { hint: `It has ${all.join(", ")}.` };
};
