// What a line of the recipe did, in words of the record.
import { tellStep } from "../../kernel/record.ts";
import { recordsWithin } from "./as-of.ts";
import { asText } from "./markdown.ts";
import type { WorkedText } from "./worked-text.ts";
import type { WrittenLine } from "./written.ts";

// A line that was worked more often than this tells the rest as a count.
const mostTold = 3;

/** One paragraph for each time that the line was worked and has something to tell; its own step's lines are told as its own. */
export const lineStory = (worked: WorkedText, line: WrittenLine): string[] => {
  const { garment } = worked.outcome;
  // The line that begins a block is not what the lines of the block did.
  const to = line.block?.from ?? line.to;
  const told = recordsWithin(worked, line.from, to)
    .map((record) => tellStep(record, garment))
    .filter((words) => words !== "");
  const rest = told.length - mostTold;
  return [
    ...told.slice(0, mostTold).map((words) => `This line: ${asText(words)}.`),
    ...(rest > 0 ? [`and ${rest} more like it.`] : []),
  ];
};
