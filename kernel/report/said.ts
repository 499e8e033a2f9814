// Report text before it has a colour: a line is a row of words, each with a tone. A terminal or a page decides what a tone looks like.

/** What a word is worth to the eye. */
export type Tone = "plain" | "strong" | "quiet" | "good" | "warning" | "bad";

export interface Said {
  readonly text: string;
  readonly tone: Tone;
}

/** One line of a report. */
export type SaidLine = readonly Said[];

export const plain = (text: string): Said => ({ text, tone: "plain" });
export const strong = (text: string): Said => ({ text, tone: "strong" });
export const quiet = (text: string): Said => ({ text, tone: "quiet" });
export const good = (text: string): Said => ({ text, tone: "good" });
export const warning = (text: string): Said => ({ text, tone: "warning" });
export const bad = (text: string): Said => ({ text, tone: "bad" });

/** A line without anything on it. */
export const blank: SaidLine = [];

/** The line's letters alone. */
export const lettersOf = (line: SaidLine): string => line.map(({ text }) => text).join("");
