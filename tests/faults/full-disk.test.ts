// A disk that is full, or that may only be read: real ones, mounted where the machine lets us. Nothing old is lost, nothing half is
// left, and a sentence says what is the matter.
import { spawnSync } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { build, chalkline, panel, workroom } from "../terminal/chalkline.ts";
import { filesIn, stackTrace } from "./faulty.ts";
import { serveFolder } from "./served-folder.ts";

beforeAll(build);

const isRoot = process.getuid?.() === 0;

// A disk of 64 KiB: large enough for the recipe, too small for its drawings with what is on it.
const small = workroom();
const hasSmall = isRoot && spawnSync("mount", ["-t", "tmpfs", "-o", "size=64k", "tmpfs", small]).status === 0;
// The same disk, of which nothing can be written.
const sealed = workroom(["panel.chalk", panel]);
const hasSealed = isRoot && spawnSync("mount", ["-t", "tmpfs", "-o", "size=64k", "tmpfs", sealed]).status === 0;

afterAll(() => {
  if (hasSmall) spawnSync("umount", [small]);
  if (hasSealed) spawnSync("umount", [sealed]);
});

/** Fills what is left of a disk. */
const fill = (folder: string): void => {
  // One page after another: the last one fails.
  for (let page = 0; ; page += 1) {
    try {
      writeFileSync(join(folder, `filling-${page}`), Buffer.alloc(4096));
    } catch {
      return;
    }
  }
};

test.skipIf(!hasSmall)("a full disk: draw, tidy, trace and card say so, and what was there stays", () => {
  writeFileSync(join(small, "panel.chalk"), panel);
  writeFileSync(
    join(small, "flap.svg"),
    '<svg xmlns="http://www.w3.org/2000/svg" width="9cm" height="9cm" viewBox="0 0 9 9"><path d="M0 0H5V5z"/></svg>',
  );
  mkdirSync(join(small, "drawn"));
  writeFileSync(join(small, "drawn", "wide.svg"), "the old drawing");
  fill(small);
  const before = filesIn(small);
  for (const args of [
    ["draw", "panel.chalk", "--out", "drawn"],
    ["tidy", "panel.chalk"],
    ["trace", "flap.svg", "--out", "flap.chalk"],
    ["card", "panel.chalk", "--out", "drawn"],
  ]) {
    const { code, err } = chalkline(small, args);
    expect(code, args.join(" ")).toBe(2);
    expect(err, args.join(" ")).toContain("cannot be written: the disk is full. Nothing there was changed.");
    expect(err, args.join(" ")).not.toMatch(stackTrace);
    expect(filesIn(small), args.join(" ")).toEqual(before);
    expect([...filesIn(join(small, "drawn"))], args.join(" ")).toEqual([["wide.svg", "the old drawing"]]);
  }
});

test.skipIf(!hasSmall)("a full disk: the page's server says so, and the recipe stays", async () => {
  const served = await serveFolder(small);
  const { mark } = (await served.ask("/api/recipe?file=panel.chalk"))!.body;
  const answer = await served.save("panel.chalk", `${panel}# let out\n`, mark!);
  expect(answer).toEqual({
    status: 507,
    body: {
      problem: {
        code: "file-not-saved",
        message: "panel.chalk was not saved: the disk is full. Nothing on the disk was changed.",
      },
    },
  });
  expect(readFileSync(join(small, "panel.chalk"), "utf8")).toBe(panel);
  await served.end();
});

test.skipIf(!hasSealed)("a disk that can only be read", () => {
  writeFileSync(join(sealed, "panel.chalk"), panel);
  spawnSync("mount", ["-o", "remount,ro", sealed]);
  for (const [args, words] of [
    [["tidy", "panel.chalk"], "panel.chalk cannot be written: its permissions forbid it."],
    [["draw", "panel.chalk", "--out", "drawn"], "drawn cannot be written: the disk can only be read."],
    [["draw", "panel.chalk", "--out", "."], ". cannot be written: the disk can only be read."],
  ] as const) {
    const { code, err } = chalkline(sealed, args);
    expect(code).toBe(2);
    expect(err).toContain(words);
  }
  expect(readdirSync(sealed)).toEqual(["panel.chalk"]);
});
