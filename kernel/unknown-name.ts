// What to say of a name that nothing has: a hyphen taken for a minus, a line too far down, or a slip of the finger.
import { didYouMean } from "../grammar/nearest.ts";
import type { Line, Stretch } from "../grammar/tree.ts";
import { Problem } from "./problem.ts";

/** A name that is not among the known ones; `message` says so in the words of the place where it was looked for. */
export const unknown = (name: string, message: string, known: Iterable<string>, at: Stretch): Problem => {
  const hint = didYouMean(name, known);
  return new Problem("name-unknown", message, { at, ...(hint !== undefined && { hint }) });
};

/** A plain name that is unknown where it stands; `later` is the number of the line that gives it further down. */
export const unknownName = (
  name: string,
  at: Stretch,
  known: readonly string[],
  later: number | undefined,
): Problem => {
  const spaced = asSubtraction(name, new Set(known));
  if (spaced !== undefined) {
    return new Problem("name-unknown", `Nothing is called ${name} here: a hyphen without spaces is part of a name.`, {
      at,
      hint: `Write ${spaced} to subtract.`,
      replace: spaced,
    });
  }
  if (later !== undefined) {
    return new Problem(
      "name-unknown",
      `Nothing is called ${name} above this line; line ${later} names it only later.`,
      {
        at,
        hint: "Move that line up.",
      },
    );
  }
  return unknown(name, `Nothing is called ${name} here.`, known, at);
};

/** `hem-ease-2` as "hem - ease - 2", where its parts are known names or numbers; undefined where they are not. */
const asSubtraction = (name: string, known: ReadonlySet<string>): string | undefined => {
  const words = name.split("-");
  let spaced: string | undefined;
  for (let from = 0; from < words.length; ) {
    let to = words.length;
    while (to > from && !isTerm(words.slice(from, to).join("-"), known, from > 0)) to -= 1;
    if (to === from) return undefined;
    const term = words.slice(from, to).join("-");
    spaced = spaced === undefined ? term : `${spaced} - ${term}`;
    from = to;
  }
  return spaced;
};

const isTerm = (word: string, known: ReadonlySet<string>, mayBeNumber: boolean): boolean =>
  known.has(word) || (mayBeNumber && /^\d+$/.test(word));

/** The lines of a block by the names they give, each name's first line. */
const naming = new WeakMap<readonly Line[], ReadonlyMap<string, Line>>();

/** The line further down in one of these blocks that gives a name. */
export const lineNaming = (name: string, blocks: readonly (readonly Line[])[], after: number): Line | undefined => {
  for (const lines of blocks) {
    const line = (naming.get(lines) ?? indexed(lines)).get(name);
    if (line && line.from > after) return line;
  }
  return undefined;
};

const indexed = (lines: readonly Line[]): ReadonlyMap<string, Line> => {
  const index = new Map<string, Line>();
  for (const line of lines) for (const { text } of line.names) if (!index.has(text)) index.set(text, line);
  naming.set(lines, index);
  return index;
};
