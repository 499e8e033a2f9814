// How the rows of a batch came out so far: counts, the commonest findings, and the first of those that could not be worked.
import { listOf, partsOf, textOf, wholeOf } from "./as-wanted.ts";
import { type RowAnswer, type RowVerdict, verdicts } from "./chunk.ts";

export interface Tally {
  /** Rows by how they came out. */
  readonly rows: ReadonlyMap<RowVerdict, number>;
  /** Rows that have a finding, by its code. */
  readonly codes: ReadonlyMap<string, number>;
  /** What is said of the first rows that could not be worked. */
  readonly notWorked: readonly string[];
}

/** More are only counted; the findings file names them all. */
const mostNamed = 10;
const mostCodes = 1000;

export const noRows: Tally = { rows: new Map(), codes: new Map(), notWorked: [] };

/** The tally with these rows. */
export const tallied = (tally: Tally, answers: readonly RowAnswer[]): Tally => {
  const [rows, codes, notWorked] = [new Map(tally.rows), new Map(tally.codes), [...tally.notWorked]];
  for (const { verdict, findings } of answers) {
    rows.set(verdict, (rows.get(verdict) ?? 0) + 1);
    if (verdict === "not worked" && notWorked.length < mostNamed)
      notWorked.push(...findings.map(({ message }) => message));
    for (const code of new Set(findings.map((finding) => finding.code)))
      if (codes.has(code) || codes.size < mostCodes) codes.set(code, (codes.get(code) ?? 0) + 1);
  }
  return { rows, codes, notWorked };
};

export const rowsIn = ({ rows }: Tally): number => [...rows.values()].reduce((sum, count) => sum + count, 0);

/** The codes that most rows have, the commonest first; of two as common the one that comes first in the alphabet. */
export const commonest = ({ codes }: Tally, most: number): (readonly [string, number])[] =>
  [...codes].sort(([a, many], [b, more]) => more - many || (a < b ? -1 : 1)).slice(0, most);

export type TallyData = {
  readonly rows: readonly (readonly [string, number])[];
  readonly codes: readonly (readonly [string, number])[];
  readonly notWorked: readonly string[];
};

/** As data for the journal. */
export const tallyData = ({ rows, codes, notWorked }: Tally): TallyData => ({
  rows: [...rows],
  codes: [...codes],
  notWorked,
});

/** Out of the journal; throws NotAsWanted. */
export const tallyIn = (value: unknown): Tally => {
  const parts = partsOf(value);
  const counts = (name: string): [string, number][] =>
    listOf(parts.get(name), mostCodes, (each) => {
      const [word, count] = listOf(each, 2, (part) => part);
      return [textOf(word), wholeOf(count)];
    });
  const rows = new Map(counts("rows"));
  return {
    rows: new Map(verdicts.flatMap((verdict) => (rows.has(verdict) ? [[verdict, rows.get(verdict)!] as const] : []))),
    codes: new Map(counts("codes")),
    notWorked: listOf(parts.get("notWorked"), mostNamed, (each) => textOf(each, 100_000)),
  };
};
