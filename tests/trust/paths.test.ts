// No recipe reads a file of its choosing: two hundred ways to write a path that leads out of the folder, to a device, or to nothing
// at all. What may be read is judged by where the opened file lies.
import { spawn, spawnSync } from "node:child_process";
import { mkdirSync, rmSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { type OpenedRecipe, openRecipe } from "../../editor/files/recipe-files.ts";
import { recipeFolder } from "../../editor/files/recipe-folder.ts";
import { refusedPath } from "../../editor/files/written-path.ts";
import { workroom } from "../terminal/chalkline.ts";

const isPosix = process.platform !== "win32";
const secret = 'chalkline 1\nrecipe "the secret"\n';
const inside = "chalkline 1\n";

const hostile = (): string => {
  const folder = workroom(
    ["outside.chalk", secret],
    ["room-beside/outside.chalk", secret],
    ["room/ok.chalk", inside],
    ["room/sub/ok.chalk", inside],
    ["room/main.chalk", inside],
    ["room/notes.txt", secret],
  );
  mkdirSync(join(folder, "room", "folder.chalk"));
  if (isPosix) {
    symlinkSync("../outside.chalk", join(folder, "room", "link.chalk"));
    symlinkSync("link.chalk", join(folder, "room", "link-to-link.chalk"));
    symlinkSync("..", join(folder, "room", "up"));
    symlinkSync("/", join(folder, "room", "top"));
    symlinkSync("/dev/zero", join(folder, "room", "zero.chalk"));
    symlinkSync("/dev/stdin", join(folder, "room", "input.chalk"));
    symlinkSync("/proc/self/mem", join(folder, "room", "memory.chalk"));
    symlinkSync("/proc/self/environ", join(folder, "room", "environment.chalk"));
    symlinkSync("nowhere.chalk", join(folder, "room", "dangling.chalk"));
    symlinkSync("loop.chalk", join(folder, "room", "loop.chalk"));
    spawnSync("mkfifo", [join(folder, "room", "fifo.chalk")]);
  }
  return folder;
};
const folder = hostile();
const room = join(folder, "room");
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const devices = [
  "con",
  "CON",
  "Prn",
  "aux",
  "NUL",
  "com1",
  "COM9",
  "com0",
  "lpt1",
  "LPT9",
  "com¹",
  "LPT²",
  "lpt³",
  "CONIN$",
  "conout$",
];

/** Written paths by the code that they are refused under; the sentences stand with the rules. */
const refused: readonly (readonly [code: string, paths: readonly string[]])[] = [
  [
    "use-outside",
    [
      "../outside.chalk",
      "./../outside.chalk",
      "sub/../../outside.chalk",
      "sub/./.././../outside.chalk",
      "../room-beside/outside.chalk",
      "../../../../../../../../etc/hosts.chalk",
      ".//..//outside.chalk",
      "sub//..//../outside.chalk",
      "none/../../outside.chalk",
    ],
  ],
  ["use-absolute", ["/outside.chalk", "/etc/hosts.chalk", "/dev/zero.chalk", "/proc/self/environ.chalk", "/./a.chalk"]],
  [
    "use-address",
    [
      "//server/share/a.chalk",
      "http://example.org/a.chalk",
      "https://example.org/a.chalk",
      "HTTPS://example.org/a.chalk",
      "ftp://example.org/a.chalk",
      "file:///etc/a.chalk",
      "file:a.chalk",
      "data:text/plain,a.chalk",
      "node:fs.chalk",
      "ok.chalk:stream.chalk",
      "ok.chalk::$DATA.chalk",
      "zip:a.zip!/a.chalk",
    ],
  ],
  ["use-drive", ["C:/a.chalk", "c:a.chalk", "Z:/../a.chalk", "C:outside.chalk"]],
  [
    "use-backslash",
    [
      "..\\outside.chalk",
      "sub\\..\\..\\outside.chalk",
      "\\outside.chalk",
      "\\\\server\\share\\a.chalk",
      "\\\\.\\PhysicalDrive0.chalk",
      "\\\\.\\pipe\\a.chalk",
      "sub/..\\..\\outside.chalk",
    ],
  ],
  [
    "use-sign",
    [
      "ok.chalk\0",
      "ok.chalk\0.txt",
      "\0.chalk",
      "a\nb.chalk",
      "a\rb.chalk",
      "a\tb.chalk",
      "a\u001b[31m.chalk",
      "a\u007f.chalk",
      "a\u0085.chalk",
      // UAX 9, 2: the marks that turn the direction of reading.
      ..."\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
        .split("")
        .map((mark) => `a${mark}klahc.chalk`),
      "a\u2028.chalk",
      "a\ud800.chalk",
      "\\\\?\\C\\a.chalk",
      ...'"*<>?|'.split("").map((sign) => `a${sign}.chalk`),
    ],
  ],
  [
    "use-device",
    [
      ...devices.flatMap((name) => [`${name}.chalk`, `sub/${name}.chalk`, `${name}/a.chalk`, `${name}.txt.chalk`]),
      "con .chalk",
      "sub./a.chalk",
      "sub /a.chalk",
      ".../a.chalk",
      ".. /outside.chalk",
      "../. ./outside.chalk",
    ],
  ],
  ["use-long", [`${"a/".repeat(5000)}a.chalk`, `${"a".repeat(300)}.chalk`]],
  [
    "use-ending",
    [
      "",
      ".",
      "..",
      "ok",
      "notes.txt",
      "ok.CHALK",
      "ok.Chalk",
      "ok.chalk.txt",
      "ok.chalk/",
      "ok.chalk/..",
      "sub/",
      "chalk",
      ".htaccess",
      "main.chalk#a",
      "~/a",
      "$HOME/a",
      "%APPDATA%/a",
    ],
  ],
  [
    "file-missing",
    [
      "missing.chalk",
      "%2e%2e/outside.chalk",
      "..%2foutside.chalk",
      "%2e%2e%2foutside.chalk",
      "..%c0%afoutside.chalk",
      "\u2025/outside.chalk",
      "．．/outside.chalk",
      "..\uff0foutside.chalk",
      "..\u2215outside.chalk",
      "~/outside.chalk",
      "~root/a.chalk",
      "$HOME/outside.chalk",
      "%APPDATA%/outside.chalk",
      "`id`.chalk",
      "$(id).chalk",
      "a;id.chalk",
      "-rf.chalk",
      ".chalk",
      "ok.chalk/main.chalk",
      "__proto__.chalk",
    ],
  ],
  ["file-is-folder", ["folder.chalk", "./folder.chalk"]],
];

const posix: readonly (readonly [code: string, paths: readonly string[]])[] = [
  [
    "use-outside",
    [
      "link.chalk",
      "link-to-link.chalk",
      "./link.chalk",
      "up/outside.chalk",
      "up/room-beside/outside.chalk",
      "zero.chalk",
      "memory.chalk",
      "environment.chalk",
    ],
  ],
  ["file-missing", ["loop.chalk", "dangling.chalk"]],
  // Elsewhere capitals may lead to the same file.
  ["file-missing", process.platform === "linux" ? ["OK.chalk", "Ok.chalk", "SUB/ok.chalk"] : []],
  ["file-not-regular", ["fifo.chalk"]],
];

const opened = openRecipe(join(room, "main.chalk"), undefined) as OpenedRecipe;
const cases = [...refused, ...(isPosix ? posix : [])].flatMap(([code, paths]) =>
  paths.map((path) => [path, code] as const),
);

test("there are as many cases as are promised", () => {
  expect(cases.length).toBeGreaterThan(isPosix ? 175 : 160);
});

test.each(cases)("use %j is refused: %s", (path, code) => {
  const before = performance.now();
  const read = opened.sources.read(path, opened.source.file);
  expect("problem" in read && read.problem.code).toBe(code);
  expect(JSON.stringify(read)).not.toContain("secret");
  // A pipe that nobody writes into and a device without an end hold nobody up.
  expect(performance.now() - before).toBeLessThan(100);
});

test.each(cases)("the folder that is open in the editor reads no %j either", (path) => {
  const read = recipeFolder(room).read(path);
  expect("problem" in read).toBe(true);
});

test("what may be read is read", () => {
  for (const path of ["ok.chalk", "./ok.chalk", "sub/ok.chalk", "sub/../ok.chalk", ".//ok.chalk", "../room/ok.chalk"])
    expect(opened.sources.read(path, opened.source.file), path).toMatchObject({ text: inside });
  for (const path of [
    "console.chalk",
    "company.chalk",
    "auxiliary/a.chalk",
    "com10.chalk",
    "a.con.chalk",
    "lobby coat.chalk",
    "Ärmel.chalk",
  ])
    expect(refusedPath(path), path).toBeUndefined();
});

describe.skipIf(!isPosix)("a link that is turned to and fro while it is followed", () => {
  test("gives nothing away, in thousands of tries", async () => {
    const arena = workroom(["outside.chalk", secret], ["room/ok.chalk", inside], ["room/main.chalk", inside]);
    const within = join(arena, "room");
    const link = join(within, "turning.chalk");
    symlinkSync("ok.chalk", link);
    // Another process renames links over one another, so that every moment of ours may be the wrong one.
    const turning = `
      const { renameSync, symlinkSync } = require("node:fs");
      const until = Date.now() + 4000;
      for (let turn = 0; Date.now() < until; turn += 1) {
        symlinkSync(turn % 2 ? "ok.chalk" : "../outside.chalk", ${JSON.stringify(`${link}.next`)});
        renameSync(${JSON.stringify(`${link}.next`)}, ${JSON.stringify(link)});
      }`;
    const flipper = spawn(process.execPath, ["-e", turning], { stdio: "ignore" });
    const ended = new Promise((resolve) => flipper.once("exit", resolve));
    const counts = { read: 0, refused: 0, tries: 0 };
    try {
      const folderOpen = recipeFolder(within);
      const until = Date.now() + 3000;
      while (Date.now() < until) {
        const { sources, source } = openRecipe(join(within, "main.chalk"), undefined) as OpenedRecipe;
        for (const read of [sources.read("turning.chalk", source.file), folderOpen.read("turning.chalk")]) {
          counts.tries += 1;
          expect(JSON.stringify(read)).not.toContain("secret");
          if ("problem" in read) counts.refused += 1;
          else {
            expect(read.text).toBe(inside);
            counts.read += 1;
          }
        }
        await new Promise((resolve) => setImmediate(resolve));
      }
    } finally {
      flipper.kill();
      await ended;
      rmSync(arena, { recursive: true, force: true });
    }
    // Both sides of the link were met, so that the test has met the race.
    expect(counts.read).toBeGreaterThan(10);
    expect(counts.refused).toBeGreaterThan(10);
    expect(counts.tries).toBeGreaterThan(200);
  });
});
