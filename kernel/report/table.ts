// Columns of words that stand under one another, amounts with their decimal points in one line.
import { columnsOf, readable } from "./readable.ts";
import { plain, type Said, type SaidLine, type Tone } from "./said.ts";

/** One cell; an amount lines up at the end of its whole number. */
export interface Cell extends Said {
  readonly amount?: boolean;
}

export const words = (text: string, tone: Tone = "plain"): Cell => ({ text, tone });
export const amount = (text: string, tone: Tone = "plain"): Cell => ({ text, tone, amount: true });
export const empty: Cell = { text: "", tone: "plain" };

/** The rows as lines, every column as wide as its widest cell, two blanks between columns, nothing behind the last. */
export const aligned = (rows: readonly (readonly Cell[])[], indent = 2): SaidLine[] => {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, column) => widthOf(rows.flatMap((row) => row[column] ?? [])));
  return rows.map((row) => {
    const last = row.findLastIndex(({ text }) => text !== "");
    const cells = row.slice(0, last + 1).map((cell, column) => filled(cell, widths[column]!, column === last));
    return [
      plain(" ".repeat(indent)),
      ...cells.flatMap((cell, column) => (column === 0 ? cell : [plain("  "), ...cell])),
    ];
  });
};

interface Width {
  /** Of the whole numbers in a column of amounts. */
  readonly whole: number;
  readonly all: number;
}

const widthOf = (cells: readonly Cell[]): Width => {
  const whole = Math.max(0, ...cells.filter(isAmount).map(({ text }) => columnsOf(halves(text)[0])));
  const all = cells.map((cell) => {
    if (!isAmount(cell)) return columnsOf(readable(cell.text));
    return whole + columnsOf(halves(cell.text)[1]);
  });
  return { whole, all: Math.max(0, ...all) };
};

const isAmount = ({ amount, text }: Cell): boolean => amount === true && text !== "";

const filled = (cell: Cell, { whole, all }: Width, isLast: boolean): Said[] => {
  const text = readable(cell.text);
  const [before] = isAmount(cell) ? halves(text) : [""];
  const left = isAmount(cell) ? " ".repeat(whole - columnsOf(before)) : "";
  // "3/8 in" has no whole number: it starts where the fraction of "12 3/8 in" does.
  const shown = isAmount(cell) ? halves(text).join("") : text;
  const right = isLast ? "" : " ".repeat(all - columnsOf(left) - columnsOf(shown));
  return [plain(left), { text: shown, tone: cell.tone }, plain(right)];
};

/** An amount cut behind its whole number: "12" and " 3/8 in", "-0" and ".06 mm", "" and "-3/8 in". */
const halves = (text: string): readonly [string, string] => {
  const fraction = /^([+-]?)(\d+\/\d.*)$/.exec(text);
  if (fraction) return ["", `${fraction[1] || " "}${fraction[2]}`];
  const [whole] = /^[+-]?\d*/.exec(text)!;
  return [whole, text.slice(whole.length)];
};
