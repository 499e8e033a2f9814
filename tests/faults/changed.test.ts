// Somebody else writes a file while the program has to do with it: what is read is of one piece, what is newer is never written
// over, and the page is told.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { seeded } from "../../kernel/stress/seeded.ts";
import { build, panel, workroom } from "../terminal/chalkline.ts";
import { filesIn, runFaulty } from "./faulty.ts";
import { serveFolder } from "./served-folder.ts";

beforeAll(build);

const newer = `${panel}# let out at the fitting\n`;

test("tidy does not write over what somebody wrote after it had read", () => {
  const folder = workroom(["panel.chalk", panel]);
  const file = join(folder, "panel.chalk");
  const { code, err } = runFaulty(folder, ["tidy", "panel.chalk"], {
    at: 1,
    call: "writeFileSync",
    what: { file, text: newer },
  });
  expect([code, err]).toEqual([
    2,
    "error: panel.chalk cannot be written: another program has changed it since it was read. Nothing there was changed.\n",
  ]);
  expect([...filesIn(folder)]).toEqual([["panel.chalk", newer]]);
});

test("tidy does not bring back what was taken away after it had read", () => {
  const folder = workroom(["panel.chalk", panel]);
  const { code, err } = runFaulty(folder, ["tidy", "panel.chalk"], {
    at: 1,
    call: "writeFileSync",
    what: { file: join(folder, "panel.chalk"), text: null },
  });
  expect([code, err]).toEqual([
    2,
    "error: panel.chalk cannot be written: it was taken away after it was read. Nothing there was changed.\n",
  ]);
  expect([...filesIn(folder)]).toEqual([]);
});

test("trace does not write over a recipe that has come meanwhile", () => {
  const folder = workroom([
    "flap.svg",
    '<svg xmlns="http://www.w3.org/2000/svg" width="9cm" height="9cm" viewBox="0 0 9 9"><path d="M0 0H5V5z"/></svg>',
  ]);
  const file = join(folder, "flap.chalk");
  const { code, err } = runFaulty(folder, ["trace", "flap.svg", "--out", "flap.chalk"], {
    at: 1,
    call: "writeFileSync",
    what: { file, text: panel },
  });
  expect(code).toBe(2);
  expect(err).toContain("flap.chalk cannot be written: another program has changed it since it was read.");
  expect(readFileSync(file, "utf8")).toBe(panel);
});

test("a recipe that is written anew while it is read is read again, and not half and half", () => {
  const folder = workroom(["panel.chalk", panel]);
  const file = join(folder, "panel.chalk");
  // The second call of readSync asks whether there is more behind what the first one gave.
  const { code, out } = runFaulty(folder, ["tidy", "--check", "panel.chalk"], {
    at: 2,
    call: "readSync",
    what: { file, text: `chalkline 1\n# ${"longer".repeat(500)}\n` },
  });
  expect([code, out]).toEqual([0, "panel.chalk: already tidy\n"]);
});

test("the server keeps a text only if it can give it back", async () => {
  const folder = workroom(["panel.chalk", panel]);
  const served = await serveFolder(folder);
  const { mark } = (await served.ask("/api/recipe?file=panel.chalk"))!.body;
  for (const [text, words] of [
    [
      "chalkline 1\n# a\0b\n",
      "panel.chalk was not saved: its line 2 holds a null character, and no text file does. Take it out.",
    ],
    [
      "chalkline 1\n\n# \ud83d\n",
      "panel.chalk was not saved: its line 3 holds half a letter, which no file can keep. Take it out.",
    ],
    [
      "chalkline 1\n# \udc00\ud800",
      "panel.chalk was not saved: its line 2 holds half a letter, which no file can keep. Take it out.",
    ],
  ]) {
    const answer = await served.save("panel.chalk", text!, mark!);
    expect(answer).toEqual({ status: 400, body: { problem: { code: "file-not-text", message: words } } });
    expect(readFileSync(join(folder, "panel.chalk"), "utf8")).toBe(panel);
  }
  // Whole letters of that kind, and a mark of byte order in front, come back as what the mark stands for.
  for (const text of ["chalkline 1\n# \ud83d\ude00\n", "\ufeffchalkline 1\n"]) {
    const before = (await served.ask("/api/recipe?file=panel.chalk"))!.body;
    const saved = await served.save("panel.chalk", text, before.mark!);
    expect(saved!.status).toBe(200);
    const again = (await served.ask("/api/recipe?file=panel.chalk"))!.body;
    expect(again.mark).toBe(saved!.body.mark);
    expect(again.text).toBe(text.replace("\ufeff", ""));
  }
  await served.end();
});

test("the server does not save over what has changed on the disk, not even within the save itself", async () => {
  const folder = workroom(["panel.chalk", panel]);
  const file = join(folder, "panel.chalk");
  const served = await serveFolder(folder, { at: 1, call: "writeFileSync", what: { file, text: newer } });
  const { mark } = (await served.ask("/api/recipe?file=panel.chalk"))!.body;
  const answer = await served.save("panel.chalk", `${panel}# mine\n`, mark!);
  expect(answer!.status).toBe(409);
  expect(answer!.body.differs!.text).toBe(newer);
  expect([...filesIn(folder)]).toEqual([["panel.chalk", newer]]);
  // With the mark of what was shown to the user it is saved.
  expect((await served.save("panel.chalk", `${panel}# mine\n`, answer!.body.differs!.mark))!.status).toBe(200);
  // Gone from the disk: that is another content as well, and nobody's word to write it anew.
  rmSync(file);
  const gone = await served.save("panel.chalk", newer, mark!);
  expect([gone!.status, gone!.body.differs]).toEqual([409, null]);
  await served.end();
});

test("two who write by turns lose nothing without a word: a save goes over what its writer has seen, or is refused", async () => {
  const folder = workroom(["panel.chalk", panel]);
  const file = join(folder, "panel.chalk");
  const served = await serveFolder(folder);
  const dice = seeded(7);
  let seen = (await served.ask("/api/recipe?file=panel.chalk"))!.body;
  let [saved, refused] = [0, 0];
  for (let turn = 0; turn < 60; turn += 1) {
    // The other one writes with any editor, and may write back what was there before.
    if (dice() < 0.4) writeFileSync(file, `${panel}# of the other one ${turn % 3}\n`);
    const before = readFileSync(file, "utf8");
    const mine = `${panel}# of the page ${turn}\n`;
    const { status, body } = (await served.save("panel.chalk", mine, seen.mark!))!;
    const now = readFileSync(file, "utf8");
    if (status === 200) {
      expect(before).toBe(seen.text);
      expect(now).toBe(mine);
      seen = { text: mine, mark: body.mark! };
      saved += 1;
    } else {
      expect(status).toBe(409);
      expect(before).not.toBe(seen.text);
      expect(now).toBe(before);
      expect(body.differs!.text).toBe(before);
      seen = body.differs!;
      refused += 1;
    }
  }
  expect(Math.min(saved, refused)).toBeGreaterThan(10);
  await served.end();
});

test("without file handles the server says so, and lets no recipe count as gone", async () => {
  const folder = workroom(["panel.chalk", panel]);
  mkdirSync(join(folder, "blocks"));
  const served = await serveFolder(folder, { at: 1, call: "readdirSync", what: "EMFILE" });
  expect((await served.ask("/api/marks"))!.status).toBe(500);
  expect((await served.ask("/api/marks"))!.body.marks!.map(([name]) => name)).toEqual(["panel.chalk"]);
  await served.end();
});

test("a recipe that cannot be read just now does not count as gone either", async () => {
  const folder = workroom(["panel.chalk", panel]);
  const served = await serveFolder(folder, { at: 2, call: "openSync", what: "EMFILE" });
  const markOf = async (): Promise<string | undefined> => (await served.ask("/api/marks"))!.body.marks![0]?.[1];
  const first = await markOf();
  expect(first).toBeDefined();
  writeFileSync(join(folder, "panel.chalk"), newer);
  expect(await markOf()).toBe(first);
  expect(await markOf()).not.toBe(first);
  await served.end();
});
