// What the title block of a sheet says, as a narrow column: for a printed page that has the title and squares of its own.

import type { Garment } from "../working.ts";
import { cautionsFor } from "./cautions.ts";
import type { Group, StrokeKind, Text } from "./drawing.ts";
import { isNet } from "./label-block.ts";
import { wrapped } from "./lettering.ts";
import type { Remarks } from "./remarks.ts";
import { linesShown, sampleOf, unitWords } from "./title-block.ts";

/** How wide the column is, mm: beside a square of 4 in it fits on a page of A4 and of Letter. */
export const columnWidth = 82;

/** The column with its top left corner at (0, 0). */
export const titleColumn = (garment: Garment, kinds: ReadonlySet<StrokeKind>, remarks: Remarks): Group => {
  const { unfit, choices, version } = remarks;
  const cautions = cautionsFor(garment);
  const words = [
    ...(choices.length === 0 ? [] : [`Drafted with ${choices.join(", ")}.`]),
    ...(version === undefined ? [] : [`Recipe version ${version}.`]),
    `All measures in ${unitWords.get(garment.units)}.`,
  ];
  const heading = [...(unfit === undefined ? [] : linesOf(unfit, "bold", 0))];
  const notes = linesUnder(heading, words, "plain", 0);
  const top = below([...heading, ...notes]) + paragraph;
  const shown = linesShown(kinds, [...garment.pieces.values()].every(isNet)).map(([kind, meaning], index) => ({
    kind,
    meaning,
    y: top + rowHeight / 2 + index * rowHeight,
  }));
  const legend = shown.map(({ meaning, y }) =>
    textAt(meaning, { x: sampleWidth + 4, y: y + textSize * 0.36 }, "plain"),
  );
  const under = top + shown.length * rowHeight + paragraph;
  return {
    of: "title-block",
    name: "title-column",
    words: [...(unfit === undefined ? [] : [`${unfit}.`]), ...words, ...cautions].join(" "),
    strokes: shown.flatMap(({ kind, y }) => sampleOf(kind, { x: 0, y }, sampleWidth)),
    texts: [...heading, ...notes, ...legend, ...linesUnder([], cautions, "plain", under)],
  };
};

const textSize = 3.6;
const lineHeight = 5;
const rowHeight = 7;
const sampleWidth = 30;
const paragraph = 3;

const textAt = (text: string, at: Text["at"], weight: Text["weight"]): Text => ({
  text,
  at,
  size: textSize,
  turn: 0,
  align: "start",
  weight,
});

const linesOf = (words: string, weight: Text["weight"], top: number): Text[] =>
  wrapped(words, textSize, weight, columnWidth).map((text, index) =>
    textAt(text, { x: 0, y: top + textSize + index * lineHeight }, weight),
  );

/** Sentences one under the other, under some texts. */
const linesUnder = (
  texts: readonly Text[],
  sentences: readonly string[],
  weight: Text["weight"],
  from: number,
): Text[] => {
  let top = texts.length === 0 ? from : below(texts);
  return sentences.flatMap((sentence) => {
    const lines = linesOf(sentence, weight, top);
    top = below(lines);
    return lines;
  });
};

const below = (texts: readonly Text[]): number => Math.max(0, ...texts.map(({ at }) => at.y - textSize + lineHeight));
