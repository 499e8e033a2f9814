// No recipe reads a file of its choosing: what `use` and the command line refuse, and with which words.
import { spawnSync } from "node:child_process";
import { closeSync, existsSync, mkdirSync, openSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { realPathOf, sameFileAt } from "../../editor/files/open-file.ts";
import { type OpenedRecipe, openRecipe } from "../../editor/files/recipe-files.ts";
import { build, chalkline, workroom } from "./chalkline.ts";

beforeAll(build);

const secret = 'chalkline 1\nrecipe "secret"\n';
const latin = Uint8Array.from([...new TextEncoder().encode("chalkline 1\n# caf"), 0xe9, 0x0a]);
const isPosix = process.platform !== "win32";

const hostile = (): string => {
  const folder = workroom(
    ["outside.chalk", secret],
    ["room/ok.chalk", "chalkline 1\n"],
    ["room/notes.txt", secret],
    ["room/latin.chalk", latin],
    ["room/null.chalk", "chalkline 1\n\0"],
    ["room/large.chalk", "#".repeat(2 * 1024 * 1024)],
    ["room/largest.chalk", `chalkline 1\n#${"#".repeat(1024 * 1024 - 13)}`],
    ["room/cycle.chalk", 'chalkline 1\nuse "main.chalk" as main\n'],
  );
  mkdirSync(join(folder, "room", "folder.chalk"));
  if (isPosix) {
    symlinkSync("../outside.chalk", join(folder, "room", "link.chalk"));
    symlinkSync("notes.txt", join(folder, "room", "notes.chalk"));
    symlinkSync("..", join(folder, "room", "up"));
    symlinkSync("loop.chalk", join(folder, "room", "loop.chalk"));
    symlinkSync("/dev/zero", join(folder, "room", "zero.chalk"));
    spawnSync("mkfifo", [join(folder, "room", "fifo.chalk")]);
  }
  return folder;
};

const used = (path: string): { codes: string[]; out: string } =>
  foundIn(hostile(), `chalkline 1\nuse ${JSON.stringify(path)} as other\nlet still-read = 1 cm\n`);

const foundIn = (folder: string, recipe: string): { codes: string[]; out: string } => {
  writeFileSync(join(folder, "room", "main.chalk"), recipe);
  // The time limit of a run is the proof that nothing waits for a pipe or reads a device to its end.
  const { out } = chalkline(folder, ["check", "--json", "room/main.chalk"]);
  return { codes: JSON.parse(out).findings.map(({ code }: { code: string }) => code), out };
};

const refusals: readonly (readonly [string, string])[] = [
  ["../outside.chalk", "use-outside"],
  ["./../outside.chalk", "use-outside"],
  ["folder/../../outside.chalk", "use-outside"],
  ["/etc/hosts.chalk", "use-absolute"],
  ["//server/share/a.chalk", "use-address"],
  ["https://example.org/a.chalk", "use-address"],
  ["file:///etc/a.chalk", "use-address"],
  ["C:/a.chalk", "use-drive"],
  ["c:a.chalk", "use-drive"],
  ["..\\outside.chalk", "use-backslash"],
  ["a\nb.chalk", "use-sign"],
  ["notes.txt", "use-ending"],
  ["ok", "use-ending"],
  ["", "use-ending"],
  ["missing.chalk", "file-missing"],
  ["latin.chalk", "file-not-utf8"],
  ["null.chalk", "file-not-text"],
  ["large.chalk", "file-too-large"],
  ["folder.chalk", "file-is-folder"],
  ["cycle.chalk", "use-cycle"],
  ["main.chalk", "use-cycle"],
];
const posixRefusals: readonly (readonly [string, string])[] = [
  ["link.chalk", "use-outside"],
  ["up/outside.chalk", "use-outside"],
  ["up/room/../outside.chalk", "use-outside"],
  ["notes.chalk", "use-ending"],
  ["loop.chalk", "file-missing"],
  ["zero.chalk", "use-outside"],
  ["fifo.chalk", "file-not-regular"],
];

test.each([...refusals, ...(isPosix ? posixRefusals : [])])("use %j is refused: %s", (path, code) => {
  const { codes, out } = used(path);
  expect(codes).toEqual([code]);
  expect(out).not.toContain("secret");
});

test("a file of exactly 1 MiB is read, and so is one through a link that stays inside", () => {
  const folder = hostile();
  if (isPosix) symlinkSync("ok.chalk", join(folder, "room", "inside.chalk"));
  const recipe = `chalkline 1\nuse "largest.chalk" as large\n${isPosix ? 'use "inside.chalk" as inside\n' : ""}use "./up/../ok.chalk" as ok\n`;
  // `up/..` is taken as written, before any link is followed.
  expect(foundIn(folder, recipe).codes).toEqual([]);
});

test("--root widens the folder, and has to hold the recipe", () => {
  const folder = workroom(
    ["outside.chalk", secret],
    ["room/main.chalk", 'chalkline 1\nuse "../outside.chalk" as other\n'],
  );
  expect(chalkline(folder, ["check", "room/main.chalk", "--root", "."]).code).toBe(0);
  mkdirSync(join(folder, "elsewhere"));
  expect(chalkline(folder, ["check", "room/main.chalk", "--root", "elsewhere"])).toMatchObject({
    code: 2,
    err: "error: room/main.chalk does not lie in the folder elsewhere that --root names.\n",
  });
  expect(chalkline(folder, ["check", "room/main.chalk", "--root", "none"]).code).toBe(2);
});

test("a missing recipe is looked for by its likely name", () => {
  const folder = workroom(
    ["straight-coat.chalk", "chalkline 1\n"],
    ["main.chalk", 'chalkline 1\nuse "strait-coat.chalk" as coat\n'],
  );
  expect(chalkline(folder, ["check", "main.chalk"]).out).toContain("Did you mean straight-coat.chalk?");
});

test.each([
  ["latin.chalk", "is not written in UTF-8"],
  ["null.chalk", "holds bytes that no text has"],
  ["large.chalk", "is larger than 1 MiB"],
  ["none.chalk", "There is no file"],
  ...(isPosix
    ? [
        ["fifo.chalk", "is a device or a pipe"],
        ["zero.chalk", "is a device or a pipe"],
        ["loop.chalk", "leads in a circle"],
      ]
    : []),
])("the opened file %s is refused with exit code 2", (file, words) => {
  const folder = join(hostile(), "room");
  for (const args of [
    ["check", file!],
    ["draw", file!, "--out", "drawn"],
    ["tidy", file!],
  ]) {
    const { code, out, err } = chalkline(folder, args);
    expect([code, out], args.join(" ")).toEqual([2, ""]);
    expect(err, args.join(" ")).toContain(words);
    expect(err, args.join(" ")).not.toMatch(/\n\s+at /);
  }
  expect(existsSync(join(folder, "drawn"))).toBe(false);
});

test("standard input follows the same rules", () => {
  const folder = workroom();
  expect(chalkline(folder, ["check", "-"], { input: latin }).err).toContain("standard input is not written in UTF-8");
  expect(chalkline(folder, ["check", "-"], { input: "#".repeat(2 * 1024 * 1024) }).err).toContain("larger than 1 MiB");
  expect(chalkline(folder, ["check", "-"], { input: "chalkline 1\n\0" }).code).toBe(2);
});

test("a path that leads elsewhere by the time it is opened gives nothing away", () => {
  const folder = workroom(["room/a.chalk", "inside"], ["outside.chalk", secret]);
  const [inside, outside] = [join(folder, "room", "a.chalk"), join(folder, "outside.chalk")];
  // What a link does that is turned between the question and the opening: asked for one file, opened another.
  const handle = openSync(outside, "r");
  try {
    expect(realPathOf(handle, inside)).not.toBe(inside);
    expect(sameFileAt(handle, inside)).toBeUndefined();
    expect(sameFileAt(handle, outside)).toBe(outside);
  } finally {
    closeSync(handle);
  }
  const { sources, source } = openRecipe(inside, undefined) as OpenedRecipe;
  expect(sources.read("./a.chalk", source.file)).toEqual({ file: source.file, text: "inside" });
});
