// The command line as a whole: help, version, colour, pipes, the reference, and that nothing of the machine gets out.
import { spawnSync } from "node:child_process";
import { cpSync, readFileSync, statSync } from "node:fs";
import { homedir, hostname } from "node:os";
import { dirname, join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { build, chalkline, panel, program, workroom } from "./chalkline.ts";

beforeAll(build);

test("--version is that of the package", () => {
  const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
  expect(chalkline(workroom(), ["--version"])).toEqual({ code: 0, out: `${version}\n`, err: "" });
});

test.each([
  "check",
  "draw",
  "measure",
  "card",
  "chalk-off",
  "hang",
  "lay",
  "compare",
  "explain",
  "facts",
  "git-setup",
  "sizes",
  "stress",
  "batch",
  "batch-worker",
  "tidy",
  "edit",
  "steps",
  "manual",
])("%s --help has an example", (command) => {
  const { code, out } = chalkline(workroom(), [command, "--help"]);
  expect(code).toBe(0);
  expect(out).toContain(`Usage: chalkline ${command}`);
  expect(out).toMatch(new RegExp(`For example:\n  chalkline ${command}`));
});

test("the whole help names the commands and the exit codes", () => {
  const { code, out } = chalkline(workroom(), ["--help"]);
  expect(code).toBe(0);
  for (const word of ["check", "draw", "measure", "tidy", "steps", "Exit code: 0", "For example:"])
    expect(out).toContain(word);
});

test.each([
  [["frob"]],
  [["check"]],
  [["check", "--sat", "x"]],
  [["check", "a.chalk", "--format", "wide"]],
  [["check", "a.chalk", "--set", "flare"]],
  [["measure", "a", "b"]],
  [["steps", "hem-sqare"]],
])("%j is refused with exit code 2 and no trace", (args) => {
  const { code, out, err } = chalkline(workroom(), args);
  expect([code, out]).toEqual([2, ""]);
  expect(err).toMatch(/^error: /);
  expect(err).not.toMatch(/\n\s+at /);
});

test("colour comes only where it is wished for", () => {
  const folder = workroom(["panel.chalk", panel]);
  const colored = (args: string[], env: NodeJS.ProcessEnv): boolean =>
    chalkline(folder, args, { env }).out.includes("\u001b[");
  expect(colored(["check", "panel.chalk"], {})).toBe(false);
  expect(colored(["check", "panel.chalk"], { CI: "1" })).toBe(false);
  expect(colored(["check", "panel.chalk"], { FORCE_COLOR: "1" })).toBe(true);
  expect(colored(["check", "panel.chalk"], { FORCE_COLOR: "1", NO_COLOR: "1" })).toBe(false);
  expect(colored(["check", "panel.chalk", "--no-color"], { FORCE_COLOR: "1" })).toBe(false);
  expect(colored(["--no-color", "check", "panel.chalk"], { FORCE_COLOR: "1" })).toBe(false);
  expect(colored(["measure", "--json", "panel.chalk"], { FORCE_COLOR: "1" })).toBe(false);
});

test("the words are the same in every language, time zone and folder", () => {
  const folder = workroom(["panel.chalk", panel]);
  const other = workroom(["panel.chalk", panel]);
  for (const args of [
    ["check", "panel.chalk"],
    ["measure", "panel.chalk"],
    ["measure", "--json", "panel.chalk"],
    ["steps", "spread-from"],
  ]) {
    const plain = chalkline(folder, args);
    expect(
      chalkline(other, args, { env: { LANG: "de_DE.UTF-8", LC_ALL: "tr_TR.UTF-8", TZ: "Asia/Tokyo", COLUMNS: "40" } }),
    ).toEqual(plain);
    for (const secret of [folder, homedir(), hostname()]) expect(plain.out + plain.err).not.toContain(secret);
  }
});

test("a recipe under the working directory is named from there, another by its whole path", () => {
  const folder = workroom(["blocks/a.chalk", "chalkline 1\n"]);
  expect(chalkline(folder, ["check", `${folder}/blocks/a.chalk`]).out).toMatch(/^blocks\/a\.chalk: /);
  expect(
    chalkline(workroom(), ["check", `${folder}/blocks/a.chalk`]).out.startsWith(`${folder}/blocks/a.chalk: `),
  ).toBe(true);
});

test.skipIf(process.platform === "win32")("a reader that stops reading ends the program quietly", () => {
  const folder = workroom(["panel.chalk", panel]);
  for (const args of ["measure --json panel.chalk", "measure panel.chalk", "steps", "manual"]) {
    const { stdout, stderr } = spawnSync("sh", ["-c", `"${process.execPath}" "${program}" ${args} | head -n 1`], {
      cwd: folder,
      encoding: "utf8",
    });
    expect(stdout.split("\n")).toHaveLength(2);
    expect(stderr).not.toMatch(/EPIPE|\n\s+at /);
  }
});

test("the program is one folder that runs by itself", () => {
  expect(readFileSync(program, "utf8")).toMatch(/^#!\/usr\/bin\/env node\n/);
  if (process.platform !== "win32") expect(statSync(program).mode & 0o111).toBe(0o111);
  // Far from the installed packages it does the same, with letters for paper and what settles cloth.
  const folder = workroom(["panel.chalk", panel]);
  cpSync(dirname(program), join(folder, "alone"), { recursive: true });
  const alone = (...args: string[]) =>
    spawnSync(process.execPath, ["alone/chalkline.js", ...args], { cwd: folder, encoding: "utf8" });
  expect(alone("check", "panel.chalk")).toMatchObject({ status: 0, stderr: "" });
  expect(alone("hang", "panel.chalk").status).toBe(0);
  expect(alone("draw", "panel.chalk", "--out", "paper", "--as", "pdf").status).toBe(0);
});

test("steps lists everything, and explains each step and check", () => {
  const folder = workroom();
  const { out } = chalkline(folder, ["steps"]);
  for (const { name } of [...vocabulary.steps, ...vocabulary.checks]) expect(out).toContain(`  ${name}`);
  const spread = chalkline(folder, ["steps", "spread-from"]).out;
  expect(spread).toContain("    spread-from PLACE to ");
  expect(spread).toMatch(/For example:\n\n {4}chalkline 1\n/);
  expect(chalkline(folder, ["steps", "hem-square"]).out).toMatch(/Passes:[\s\S]*Fails:/);
  expect(chalkline(folder, ["steps", "compass"]).out).toContain("compass(a, length, b, length, left|right)");
  expect(chalkline(folder, ["steps", "measure"]).out).toContain(
    "    measure NAME = VALUE [from VALUE to VALUE] [TEXT]",
  );
});

test("steps offers the nearest name", () => {
  const { code, err } = chalkline(workroom(), ["steps", "spred-from"]);
  expect(code).toBe(2);
  expect(err).toContain("Did you mean spread-from?");
});

test("a mistyped option is named before one that is missing", () => {
  const folder = workroom(["panel.chalk", panel]);
  expect(chalkline(folder, ["draw", "panel.chalk", "--paer", "a4"])).toEqual({
    code: 2,
    out: "",
    err: "error: unknown option '--paer'\n(Did you mean --paper?)\n",
  });
  expect(chalkline(folder, ["draw", "panel.chalk"])).toEqual({
    code: 2,
    out: "",
    err: "error: There is nowhere to draw to.\n  Write --out FOLDER: it is made if it is not there.\n",
  });
});
