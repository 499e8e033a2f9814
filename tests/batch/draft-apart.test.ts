// A row over which its thread dies is given up by its table and number; the others of its chunk are drafted.
import { expect, test } from "vitest";
import { answerText, chunkIn, chunkText, ownAnswer, type RowAnswer } from "../../editor/batch/chunk.ts";
import { draftApart } from "../../editor/batch/draft-apart.ts";

const rows = [7, 8, 9].map((row) => ({ row, fields: [`Usher ${row}`, "70"] }));
const task = { table: "cast.csv", parcel: "{}", chunk: chunkText(rows) };

const drafted = (row: number): RowAnswer => ({
  row,
  name: `Usher ${row}`,
  verdict: "clean",
  cells: [],
  also: "",
  findings: [],
  files: [],
});

/** A thread that dies over row 8. */
const thread = async ({ chunk }: typeof task): Promise<string> => {
  const numbers = chunkIn(chunk).map(({ row }) => row);
  if (numbers.includes(8)) throw new Error("out of memory");
  return answerText({ rows: numbers.map(drafted) });
};

test("only the row that kills a thread is given up, and it is named as every other", async () => {
  const answer = ownAnswer(await draftApart(thread, task, () => undefined));
  if (!("rows" in answer)) throw new Error("rows are wanted");
  expect(answer.rows.map(({ row, name, verdict }) => [row, name, verdict])).toEqual([
    [7, "Usher 7", "clean"],
    [8, "Usher 8", "not worked"],
    [9, "Usher 9", "clean"],
  ]);
  expect(answer.rows[1]!.findings).toEqual([
    {
      severity: "error",
      code: "row-not-worked",
      file: "cast.csv",
      line: 8,
      message: "cast.csv, row 8: the thread that drafted it died: out of memory",
      hint: "",
    },
  ]);
});

test("once all is over nothing is tried again", async () => {
  const answer = ownAnswer(await draftApart(thread, task, () => ({ stopped: true })));
  expect(answer).toEqual({ stopped: true });
});
