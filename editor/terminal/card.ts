// chalkline card: a garment's cutting card, as text for people, and as a page for the workroom's wall.
import { cardEntries } from "../../kernel/report/card-entries.ts";
import { cuttingCard } from "../../kernel/report/cutting-card.ts";
import { blank } from "../../kernel/report/said.ts";
import { entryLines } from "../../kernel/written/entry-lines.ts";
import { remarksOn } from "../files/drawn-files.ts";
import { lettersTold } from "./letters-told.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal } from "./told.ts";
import type { Given } from "./worked.ts";
import { workFile } from "./worked-file.ts";
import { type Asked, asText, cannotBeHad, saveSheet, typedWidth } from "./written.ts";

export interface CardOptions extends Given, Asked {
  readonly root?: string;
}

/** The formats of a card. */
export const cardFormats: readonly string[] = ["text", "svg", "pdf"];

/** Tells one recipe's card, or saves it; findings go to the other stream. */
export const card = async (path: string, options: CardOptions, out: Paper, err: Paper): Promise<number> => {
  const lacking = cannotBeHad(options, cardFormats);
  if (lacking !== undefined) {
    err.say(refusal(lacking));
    return exitCode.unreadable;
  }
  const file = await workFile(path, options, err);
  if (!file) return exitCode.unreadable;
  const { outcome, told } = file;
  const made = cuttingCard(outcome, remarksOn(outcome, options));
  const entries = cardEntries(made);
  if (options.out === undefined) {
    out.say(entryLines(entries, out.width));
    err.say([blank, ...told]);
    return codeFor(outcome);
  }
  const saved = await saveSheet(
    {
      name: "card",
      title: made.title,
      entries,
      texts: new Map([["text", () => asText(entryLines(entries, typedWidth))]]),
    },
    options,
    options.out,
  );
  if ("problem" in saved) {
    err.say([...told, blank, ...refusal(saved.problem)]);
    return exitCode.unreadable;
  }
  out.say(saved.said);
  err.say([blank, ...(await lettersTold(file, saved.lettered))]);
  return codeFor(outcome);
};
