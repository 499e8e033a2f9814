// Every call to the file system may fail, and one after another does: nothing old is lost, nothing half is left, and a sentence
// says what is the matter. Which calls do is drawn by lot, the same on every run; CHALKLINE_FAULTS=all takes every single one.
import { readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, panel, workroom } from "../terminal/chalkline.ts";
import { callsOf, filesIn, runFaulty, someOf, stackTrace } from "./faulty.ts";

beforeAll(build);

test.each([["ENOSPC"], ["EIO"], ["EMFILE"]])(
  "%s at any call of draw: all old or all new, and nothing aside",
  (what) => {
    const folder = workroom(["panel.chalk", panel]);
    const drawn = join(folder, "drawn");
    const args = ["draw", "panel.chalk", "--out", "drawn"];
    chalkline(folder, args);
    const after = filesIn(drawn);
    const before = new Map([...after.keys()].map((name) => [name, "the old drawing"]));
    const layBack = (): void => {
      for (const [name, text] of before) writeFileSync(join(drawn, name), text);
    };
    layBack();
    const most = callsOf(folder, args);
    for (const at of someOf(most, 3, what.length + what.charCodeAt(1))) {
      layBack();
      const { code, err } = runFaulty(folder, args, { at, what });
      expect(err, `call ${at}`).not.toMatch(stackTrace);
      const now = filesIn(drawn);
      // Renaming itself may fail between one file and the next: then those that are new are named.
      const fresh = [...after].filter(([name, content]) => now.get(name) === content).map(([name]) => name);
      if (code === 0) expect(now).toEqual(after);
      else {
        expect(code, `call ${at}`).toBe(2);
        expect(err, `call ${at}`).toMatch(/cannot (?:be written|be read|go on): /);
        expect([...now.keys()]).toEqual([...after.keys()]);
        if (fresh.length > 0) for (const name of fresh) expect(err).toContain(`drawn/${name}`);
        else expect(now).toEqual(before);
      }
    }
  },
);

test("a renaming that fails between two files tells which are new", () => {
  const folder = workroom(["panel.chalk", panel]);
  const args = ["draw", "panel.chalk", "--out", "drawn"];
  const { code, err } = runFaulty(folder, args, { at: 2, call: "renameSync", what: "EIO" });
  expect(code).toBe(2);
  expect(err).toContain("drawn cannot be written: the disk failed. Before that drawn/panel.svg was saved.");
  expect(readdirSync(join(folder, "drawn"))).toEqual(["panel.svg"]);
});

test("a folder that was made for files that cannot be written is taken away again", () => {
  const folder = workroom(["panel.chalk", panel]);
  const { code, err } = runFaulty(folder, ["draw", "panel.chalk", "--out", "new/er"], {
    at: 1,
    call: "fsyncSync",
    what: "ENOSPC",
  });
  expect([code, err.split("\n").at(-2)]).toEqual([
    2,
    "error: new/er cannot be written: the disk is full. Nothing there was changed.",
  ]);
  expect(readdirSync(folder)).toEqual(["panel.chalk"]);
});

test("without file handles a folder full of recipes does not count as empty", () => {
  const folder = workroom(["recipes/panel.chalk", panel]);
  const { code, out, err } = runFaulty(folder, ["check", "recipes"], { at: 1, call: "readdirSync", what: "EMFILE" });
  expect([code, out, err]).toEqual([2, "", "error: Chalkline cannot go on: too many files are open.\n"]);
  const read = runFaulty(folder, ["check", "recipes"], { at: 1, call: "openSync", what: "EMFILE" });
  expect([read.code, read.err]).toEqual([2, "error: recipes/panel.chalk cannot be read: too many files are open.\n"]);
});
