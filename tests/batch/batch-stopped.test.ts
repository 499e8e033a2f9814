// A batch that was stopped or killed goes on where it was: nothing is lost, nothing is done twice, and the bytes are those of a
// run that nobody disturbed.
import {
  appendFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { drawBetween, seeded } from "../../kernel/stress/seeded.ts";
import { build, workroom } from "../terminal/chalkline.ts";
import { batch, batchArgs, interrupted, journalLines, sash, table, ushers } from "./batch-runs.ts";

const rows = 480;
const room = (): string => workroom(["sash.chalk", sash], ["ushers.csv", ushers(rows)]);

let undisturbed: { readonly measures: string; readonly findings: string };

beforeAll(() => {
  build();
  const folder = room();
  expect(batch(folder).code).toBe(1);
  undisturbed = { measures: table(folder, "measures.csv"), findings: table(folder, "findings.csv") };
});

const expectUndisturbed = (folder: string): void => {
  expect(table(folder, "measures.csv")).toBe(undisturbed.measures);
  expect(table(folder, "findings.csv")).toBe(undisturbed.findings);
  expect(readdirSync(join(folder, "out")).sort()).toEqual(["batch.journal", "findings.csv", "measures.csv"]);
};

test("killed again and again, at any point", async () => {
  const folder = room();
  const draw = seeded(11);
  let kills = 0;
  for (let runs = 0; runs < 6; runs += 1) {
    const [before, further] = [journalLines(folder), Math.floor(drawBetween(draw, 0, 4))];
    const { signal } = await interrupted(folder, batchArgs(), "SIGKILL", () => journalLines(folder) > before + further);
    if (signal !== "SIGKILL") break;
    kills += 1;
    // What is not whole has not got its name.
    if (existsSync(join(folder, "out", "measures.csv")))
      expect(table(folder, "measures.csv")).toBe(undisturbed.measures);
  }
  expect(kills).toBeGreaterThan(1);
  batch(folder);
  expectUndisturbed(folder);
});

test("Ctrl-C stops it cleanly and says how to go on; the next run does the rest alone", async () => {
  const folder = room();
  const { code, said } = await interrupted(folder, batchArgs(), "SIGINT", () => journalLines(folder) > 2);
  expect(code).toBe(130);
  const done = Number(/stopped: (\d+) of 480 rows are done, and kept\./.exec(said)![1]);
  expect(said).toContain("The same command again goes on with the next row.");
  expect(existsSync(join(folder, "out", "batch.lock"))).toBe(false);
  const { code: after, err } = batch(folder);
  expect(after).toBe(1);
  expect(err).toContain(`going on: ${done} of 480 rows were done before.`);
  expect(err).toMatch(new RegExp(`^${rows - done} rows in `, "m"));
  expectUndisturbed(folder);
});

test("what is said behind a stopped --anew leads on, and not back to the first row", async () => {
  const folder = room();
  batch(folder);
  const { said } = await interrupted(folder, batchArgs("--anew"), "SIGTERM", () => {
    const lines = journalLines(folder);
    return lines > 2 && lines < 10;
  });
  const [, without] = /The same command, without (--\w+), goes on with the next row\./.exec(said)!;
  const { err } = batch(folder, ...["--anew"].filter((option) => option !== without));
  expect(err).toMatch(/^going on: [1-9]\d* of 480 rows were done before\./);
  expectUndisturbed(folder);
});

test("a shutdown and a closed terminal stop it as Ctrl-C does, each with its own code", async () => {
  const folder = room();
  for (const [signal, code] of [
    ["SIGTERM", 143],
    ["SIGHUP", 129],
  ] as const) {
    const before = journalLines(folder);
    const ended = await interrupted(folder, batchArgs(), signal, () => journalLines(folder) > before + 1);
    // POSIX.1-2017, Shell Command Language, 2.8.2 and <signal.h>: 128 and the number, SIGHUP 1, SIGTERM 15.
    expect([ended.code, ended.signal]).toEqual([code, null]);
  }
  batch(folder);
  expectUndisturbed(folder);
});

test("a torn last line of the journal does not count, and what was written behind the last whole one is done again", async () => {
  const folder = room();
  await interrupted(folder, batchArgs(), "SIGKILL", () => journalLines(folder) > 4);
  const journal = join(folder, "out", "batch.journal");
  const text = readFileSync(journal, "utf8");
  // The kill came in the middle of the third chunk's line; the tables are further already.
  const lines = text.split("\n");
  writeFileSync(journal, `${lines.slice(0, 3).join("\n")}\n${lines[3]!.slice(0, 25)}`);
  appendFileSync(join(folder, "out", "measures.csv.part"), "65,Usher 6");
  expect(batch(folder).err).toContain("going on: 60 of 480 rows were done before.");
  // Nothing of the torn line is left, so that the next kill finds whole lines again.
  for (const line of readFileSync(journal, "utf8").split("\n").slice(0, -1))
    expect(() => JSON.parse(line)).not.toThrow();
  expectUndisturbed(folder);
});

test("killed between the last row and the names of the tables", async () => {
  const folder = room();
  batch(folder);
  const at = (name: string): string => join(folder, "out", name);
  const lines = readFileSync(at("batch.journal"), "utf8").split("\n");
  writeFileSync(at("batch.journal"), `${lines.slice(0, -2).join("\n")}\n`);
  renameSync(at("findings.csv"), at("findings.csv.part"));
  expect(batch(folder).err).toContain("going on: 480 of 480 rows were done before.");
  expectUndisturbed(folder);
});

test("tables that were shortened, and a journal that is none, are not gone on with", async () => {
  const folder = room();
  await interrupted(folder, batchArgs(), "SIGKILL", () => journalLines(folder) > 4);
  truncateSync(join(folder, "out", "measures.csv.part"), 300);
  const shortened = batch(folder);
  expect([shortened.code, shortened.err]).toEqual([
    2,
    "error: out/measures.csv.part is not as long as it was, so this batch cannot go on. Draft it again with --anew.\n",
  ]);
  writeFileSync(join(folder, "out", "batch.journal"), '{"a":1}\n');
  const damaged = batch(folder);
  expect(damaged.code).toBe(2);
  expect(damaged.err).toContain("out/batch.journal is damaged, or no journal of a batch");
  expect(batch(folder, "--anew").code).toBe(1);
  expectUndisturbed(folder);
});

test("two batches do not write into one folder", async () => {
  // Long enough that the first is still at work when the second has started, on however busy a machine.
  const folder = workroom(["sash.chalk", sash], ["ushers.csv", ushers(50_000)]);
  let second: ReturnType<typeof batch> | undefined;
  await interrupted(folder, batchArgs(), "SIGINT", () => {
    if (journalLines(folder) < 2) return false;
    second ??= batch(folder);
    return true;
  });
  expect(second!.code).toBe(2);
  expect(second!.err).toMatch(/^error: Another batch \(process \d+\) is working in this folder\. Wait for it/);
});
