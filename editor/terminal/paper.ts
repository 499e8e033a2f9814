// Where a command writes: lines of said words on one of the two streams, in colour where somebody looks at a terminal.
import pc from "picocolors";
import { readable } from "../../kernel/report/readable.ts";
import type { SaidLine, Tone } from "../../kernel/report/said.ts";

export interface Paper {
  /** Columns that sentences are broken at. */
  readonly width: number;
  say(lines: readonly SaidLine[]): void;
  /** Text as it is: JSON, a tidied recipe. */
  print(text: string): void;
  /** How far a long piece of work is ("3 of 10 tried"); only where somebody looks at a terminal. */
  progress(done: number, of: number, what: string): void;
}

// Where nobody looks, so that the same recipe gives the same bytes in every window.
const usualWidth = 100;
const narrowest = 60;

/** A stream as paper. */
export const paperOn = (stream: NodeJS.WriteStream, color: boolean): Paper => {
  const paint = painter(color && isLookedAt(stream));
  return {
    width: stream.isTTY ? Math.max(narrowest, Math.min(usualWidth, stream.columns || usualWidth)) : usualWidth,
    say: (lines) => {
      // To write nothing fails as well where nothing can be written.
      if (lines.length === 0) return;
      stream.write(
        lines
          .map(
            (line) =>
              `${line
                .map(({ text, tone }) => paint[tone](readable(text)))
                .join("")
                .trimEnd()}\n`,
          )
          .join(""),
      );
    },
    print: (text) => {
      stream.write(text);
    },
    progress: (done, of, what) => {
      if (!stream.isTTY) return;
      stream.write(done === of ? "\r\u001b[K" : `\r${done} of ${of} ${what}`);
    },
  };
};

// https://no-color.org: any value that is not empty counts. FORCE_COLOR is the wish of those who page through less -R.
const isLookedAt = (stream: NodeJS.WriteStream): boolean => {
  const { NO_COLOR, FORCE_COLOR, TERM } = process.env;
  if (NO_COLOR) return false;
  if (FORCE_COLOR !== undefined) return FORCE_COLOR !== "0";
  return stream.isTTY === true && TERM !== "dumb";
};

const painter = (color: boolean): Readonly<Record<Tone, (text: string) => string>> => {
  const ink = pc.createColors(color);
  return {
    plain: (text) => text,
    strong: ink.bold,
    quiet: ink.dim,
    good: ink.green,
    warning: ink.yellow,
    bad: ink.red,
  };
};
