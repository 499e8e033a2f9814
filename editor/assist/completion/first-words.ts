// What a line may begin with, at this place of the recipe: statements, steps, and steps of the recipe's own.
import type { Form } from "../../../grammar/phrase.ts";
import { signature } from "../../../grammar/phrase.ts";
import { type Statement, statements } from "../../../grammar/statements.ts";
import { describeStep } from "../../../kernel/manual.ts";
import type { Step } from "../../../kernel/step.ts";
import type { Piece } from "../../../kernel/working.ts";
import type { WorkedText } from "../worked-text.ts";
import { type WrittenLine, written } from "../written.ts";
import { lineSnippet } from "./snippet.ts";
import type { Suggested } from "./suggested.ts";

// In a solve block, where every line is tried many times, only these stand besides drafting steps.
const inSolve = new Set(["let", "solve", "if", "else", "repeat"]);

/** First words for a line at an offset, in the block of the line `around`. */
export const firstWords = (
  worked: WorkedText,
  offset: number,
  around: WrittenLine | undefined,
  piece: Piece | undefined,
): Suggested[] => {
  const { lines, forms } = written(worked);
  const above = lines.filter((line) => line.from < offset);
  if (!lines.some(({ verb, from }) => verb === "chalkline" && from !== offset)) {
    const [chalkline] = statements;
    if (above.length === 0) return [{ ...ofStatement(chalkline!, 0), insert: "chalkline 1", isSnippet: false }];
  }
  const chain: WrittenLine[] = [];
  for (let each = around; each; each = each.around) chain.push(each);
  const inside = chain.find(({ verb }) => verb === "piece" || verb === "step")?.verb;
  const isSolve = chain.some(({ verb }) => verb === "solve");
  const isBranch = above.findLast((line) => line.around === around)?.block !== undefined;
  const own = above.flatMap((line, index) => ownStep(line, forms.get(line.words[1]?.text ?? ""), index));
  const hasPieces = above.some(({ verb }) => verb === "piece");
  const steps = worked.kernel.vocabulary.steps.flatMap((step, index) => {
    const isHere = step.on === "piece" ? inside !== undefined || isSolve : !isSolve && inside !== "piece";
    if (!isHere) return [];
    if (inside === undefined)
      return [ofStep(step, finishes(step) ? (hasPieces ? 20 : 60) + index / 100 : 70 + index / 100)];
    const isAway = step.on === "garment";
    return [ofStep(step, index / 10 + (isAway ? 50 : 0) + (isDrawn(piece) && isDrafting(step) ? 20 : 0))];
  });
  const said = statements.flatMap((statement) => {
    const { verb, place } = statement;
    if (verb === "chalkline" || (verb === "else" && !isBranch) || (isSolve && !inSolve.has(verb))) return [];
    if (inside !== undefined && (place === "garment" || verb === "piece")) return [];
    if (onceOnly.has(verb) && above.some((line) => line.verb === verb)) return [];
    const order = (hasPieces ? behindPieces : beforePieces).indexOf(verb);
    return [ofStatement(statement, inside === undefined ? (order < 0 ? 50 : order) : 30)];
  });
  return [...own, ...steps, ...said];
};

// Said once in a recipe.
const onceOnly = new Set(["recipe", "units", "base"]);

// The order in which a recipe says things, before its first piece and after it; what is not named here comes later.
const beforePieces = ["recipe", "units", "use", "measure", "param", "fabric", "piece", "let", "size", "base", "step"];
const behindPieces = ["piece", "check", "accept", "let"];

/** A step of the garment that names no piece of its own sews, cuts or compares those that are there. */
const finishes = ({ phrases }: Step): boolean => phrases.every(({ naming }) => naming === undefined);

const ownStep = (line: WrittenLine, forms: readonly Form[] | undefined, index: number): Suggested[] => {
  const form = forms?.[0];
  if (line.verb !== "step" || !form?.parts) return [];
  return [
    {
      label: form.verb,
      kind: "own-step",
      detail: signature(form.parts),
      insert: lineSnippet(form),
      isSnippet: true,
      rank: 45 + index / 1e6,
    },
  ];
};

const ofStep = (step: Step, rank: number): Suggested => {
  const known = kept.get(step);
  if (known) return { ...known, rank };
  const made: Suggested = {
    label: step.name,
    kind: "step",
    detail: signature(step.phrases[0]!.parts),
    insert: lineSnippet(step.phrases[0]!),
    isSnippet: true,
    documentation: describeStep(step),
    rank,
  };
  kept.set(step, made);
  return made;
};

// A step says the same wherever it is offered, and all of them are offered at every line that begins.
const kept = new WeakMap<Step, Suggested>();

const ofStatement = (statement: Statement, rank: number): Suggested => ({
  label: statement.verb,
  kind: "statement",
  detail: signature(statement.parts),
  insert: lineSnippet(statement),
  isSnippet: true,
  documentation: statement.summary,
  rank,
});

/** Once the outline stands, a piece is altered and finished more often than drafted on. */
const isDrawn = (piece: Piece | undefined): boolean => piece !== undefined && piece.outline.length > 0;

/** A step that names an edge or a place drafts. */
const isDrafting = ({ phrases }: Step): boolean =>
  phrases.some(({ naming, verb }) => naming !== undefined || verb === "outline");
