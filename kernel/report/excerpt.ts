// The line of a recipe that a finding is about, with carets under the stretch to blame.
import type { Where } from "../../grammar/diagnostic.ts";
import { lineStretch, type SourceTexts } from "../../grammar/source.ts";
import { columnsOf, readable } from "./readable.ts";
import { plain, quiet, type SaidLine, type Tone } from "./said.ts";

// Characters of a line that are shown; of a longer line, the stretch around the carets.
const mostShown = 100;
// Shown before the carets when a line is cut.
const leadIn = 20;

/** Two lines: "  14 | dart on waist" and the carets below; nothing where the text is not at hand. */
export const excerpt = (where: Where, texts: SourceTexts, gutter: number, tone: Tone): SaidLine[] => {
  const source = texts.get(where.file);
  if (!source || where.line > source.starts.length) return [];
  const whole = lineStretch(source, where.line);
  const blamed = { from: clamp(where.from, whole), to: clamp(where.to, whole) };
  const shown = window(whole, blamed);
  const piece = (from: number, to: number): string => readable(source.text.slice(from, Math.max(from, to)));
  const until = Math.min(blamed.to, shown.to);
  const before = `${shown.from > whole.from ? "…" : ""}${piece(shown.from, blamed.from)}`;
  const text = `${before}${piece(blamed.from, shown.to)}${shown.to < whole.to ? "…" : ""}`;
  const carets = "^".repeat(Math.max(1, columnsOf(piece(blamed.from, until))));
  return [
    [quiet(`  ${String(where.line).padStart(gutter)} | `), plain(text.trimEnd())],
    [quiet(`  ${" ".repeat(gutter)} | `), plain(" ".repeat(columnsOf(before))), { text: carets, tone }],
  ];
};

const clamp = (offset: number, { from, to }: { from: number; to: number }): number =>
  Math.min(Math.max(offset, from), to);

const window = (whole: { from: number; to: number }, blamed: { from: number }): { from: number; to: number } => {
  if (whole.to - whole.from <= mostShown) return whole;
  const from = blamed.from - whole.from <= mostShown - leadIn ? whole.from : blamed.from - leadIn;
  return { from, to: Math.min(whole.to, from + mostShown) };
};
