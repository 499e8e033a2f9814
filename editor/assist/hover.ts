// What there is to say of the word under the cursor: what it stands for and measures now, what its line did, and what the
// manual says of it.
import { statements } from "../../grammar/statements.ts";
import { functions } from "../../kernel/functions.ts";
import { describeCheck, describeStep } from "../../kernel/manual.ts";
import { describeClause } from "./describe-clause.ts";
import { describeName } from "./describe-name.ts";
import { describeNumber } from "./describe-number.ts";
import { spotAt } from "./line-at.ts";
import { lineStory } from "./line-story.ts";
import { describeFunction, describeOwnStep, describeStatement } from "./statement-entry.ts";
import type { WorkedText } from "./worked-text.ts";
import { type WrittenLine, written } from "./written.ts";
import type { WrittenWord } from "./written-word.ts";

/** Words about a stretch of the text; the Markdown holds no HTML, and nothing that people wrote becomes a link. */
export interface Hover {
  readonly from: number;
  readonly to: number;
  readonly markdown: string;
}

/** What to show over an offset; undefined where there is nothing to say. */
export const hover = (worked: WorkedText, offset: number): Hover | undefined => {
  const { lines, comments } = written(worked);
  if (comments.some(({ from, to }) => from <= offset && offset < to)) return undefined;
  const { line, word } = spotAt(worked.source.text, lines, offset);
  if (!line || !word) return undefined;
  const said = describeWord(worked, line, word);
  const story = word.means === "Verb" || word.means === "NewName" ? lineStory(worked, line) : [];
  // A verb's line first: the manual is long.
  const parts = word.means === "Verb" ? [...story, ...said] : [...said, ...story];
  return parts.length > 0 ? { from: word.from, to: word.to, markdown: parts.join("\n\n") } : undefined;
};

const describeWord = (worked: WorkedText, line: WrittenLine, word: WrittenWord): string[] => {
  switch (word.means) {
    case "Verb":
      return describeVerb(worked, line, word);
    case "ClauseWord":
    case "SuffixWord":
      return describeClause(line, word);
    case "ChoiceWord": {
      const check = worked.kernel.vocabulary.checks.find(({ name }) => name === word.text);
      return check && line.verb === "accept" ? [describeCheck(check)] : describeClause(line, word);
    }
    case "Number":
    case "Count":
    case "Unit":
      return describeNumber(line, word, worked.outcome.garment.units);
    case "Name": {
      const entry = functions.get(word.text);
      const isCall = line.words.some(({ text, from }) => text === "(" && from === word.to);
      return entry && isCall ? [describeFunction(entry)] : describeName(worked, line, word);
    }
    case "NewName":
      return describeName(worked, line, word);
    default:
      return [];
  }
};

const describeVerb = ({ kernel }: WorkedText, line: WrittenLine, { text }: WrittenWord): string[] => {
  const step = kernel.vocabulary.steps.find(({ name }) => name === text);
  if (step) return [describeStep(step)];
  const statement = statements.find(({ verb }) => verb === text);
  if (statement) return [describeStatement(statement)];
  const [own] = line.forms;
  return own ? [describeOwnStep(own, undefined)] : [];
};
