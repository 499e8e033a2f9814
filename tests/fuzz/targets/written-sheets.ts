// The sheets of words: the cutting card and the table for chalking off, on the screen, on pages and as CSV.

import { remarksOn } from "../../../editor/files/drawn-files.ts";
import { chalkOff } from "../../../kernel/chalk/chalk-off.ts";
import { svg } from "../../../kernel/export/svg.ts";
import { cardEntries } from "../../../kernel/report/card-entries.ts";
import { chalkOffCsv } from "../../../kernel/report/chalk-off-csv.ts";
import { chalkOffEntries } from "../../../kernel/report/chalk-off-entries.ts";
import { cuttingCard } from "../../../kernel/report/cutting-card.ts";
import type { Entry } from "../../../kernel/written/entry.ts";
import { entryLines } from "../../../kernel/written/entry-lines.ts";
import { writtenPages } from "../../../kernel/written/written-pages.ts";
import { finite, plainlyTold } from "../figures-told.ts";
import { toldOnScreen } from "../on-screen.ts";
import type { Target } from "../target.ts";
import { workedOnce } from "../worked-once.ts";
import { isXml } from "./exporting.ts";
import { evenRows } from "./measuring.ts";

export const carding: Target = {
  name: "card",
  run({ text }) {
    const outcome = workedOnce(text);
    const card = cuttingCard(outcome, remarksOn(outcome, {}));
    finite(card, "the card");
    written(cardEntries(card), text);
  },
};

export const chalking: Target = {
  name: "chalk-off",
  run({ text }) {
    const { garment } = workedOnce(text);
    finite(chalkOff(garment), "the points to chalk");
    written(chalkOffEntries(garment), text);
    const csv = chalkOffCsv(garment);
    plainlyTold(csv, text, "the points as CSV");
    evenRows(csv);
  },
};

// A screen so narrow that words are broken, and one as wide as a page is typed.
const widths = [24, 100];

const written = (entries: readonly Entry[], text: string): void => {
  for (const width of widths) toldOnScreen(entryLines(entries, width), text, "the sheet");
  for (const page of writtenPages("sheet", entries)) {
    const drawn = svg(page);
    isXml(drawn);
    plainlyTold(drawn, text, "the page");
  }
};
