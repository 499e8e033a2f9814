// git-setup in a real clone: from then on the real git shows garment facts under a recipe's text, headed by the piece; and the
// words that it prints to undo it do.
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { build, chalkline, workroom } from "../terminal/chalkline.ts";
import { apron } from "./compared.ts";

beforeAll(build);

const hasGit = spawnSync("git", ["--version"]).status === 0;

const cloak =
  'chalkline 1\nrecipe "Stage cloak"\nunits cm\nuse "blocks/apron.chalk" as block\npiece panel = block.panel {\n  extend-hem hem by 5 cm\n}\n';

/** Runs git in a folder, and gives what it printed. */
const git = (folder: string, ...args: string[]): string => {
  const person = ["-c", "user.name=Workroom", "-c", "user.email=workroom@example.org", "-c", "init.defaultBranch=main"];
  const { status, stdout, stderr } = spawnSync("git", ["--no-pager", ...person, ...args], {
    cwd: folder,
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(stderr);
  return stdout;
};

const clone = (): string => {
  const folder = workroom(["cloak.chalk", cloak], ["blocks/apron.chalk", apron]);
  git(folder, "init", "-q");
  git(folder, "add", ".");
  git(folder, "commit", "-qm", "A cloak");
  writeFileSync(join(folder, "cloak.chalk"), cloak.replace("5 cm", "7 cm"));
  return folder;
};

describe.skipIf(!hasGit)("after git-setup", () => {
  test("git diff and git show tell the facts that changed, and nothing else of the garment", () => {
    const folder = clone();
    expect(chalkline(folder, ["git-setup"]).code).toBe(0);
    const changed = (text: string): string[] => text.split("\n").filter((line) => /^[+-] /.test(line));
    const facts = [
      "-  extend-hem hem by 5 cm",
      "+  extend-hem hem by 7 cm",
      // The apron is 30 cm wide and 100 cm long.
      "-  30 cm wide, 105 cm high",
      "-  3150 cm2",
      "+  30 cm wide, 107 cm high",
      "+  3210 cm2",
      "-  edge side 105 cm, seam, allowance 1 cm point",
      "+  edge side 107 cm, seam, allowance 1 cm point",
      "-  edge center 105 cm, seam",
      "+  edge center 107 cm, seam",
      "-  place C 30 cm right, 105 cm down",
      "-  place D 0 cm right, 105 cm down",
      "+  place C 30 cm right, 107 cm down",
      "+  place D 0 cm right, 107 cm down",
    ];
    const diff = git(folder, "diff", "-U0");
    expect(changed(diff)).toEqual(facts);
    expect(diff).toContain("@@ piece panel\n");
    git(folder, "commit", "-qam", "Longer");
    expect(changed(git(folder, "show", "-U0"))).toEqual(facts);
    expect(changed(git(folder, "log", "-1", "-p", "-U0"))).toEqual(facts);
  });

  test("twice is once, and what it prints undoes it", () => {
    const folder = clone();
    chalkline(folder, ["git-setup"]);
    const { out } = chalkline(folder, ["git-setup"]);
    const attributes = join(folder, ".git/info/attributes");
    expect(readFileSync(attributes, "utf8").match(/\*\.chalk diff=chalk/g)!.length).toBe(1);
    expect(out).toContain("git config --local --remove-section diff.chalk");
    git(folder, "config", "--local", "--remove-section", "diff.chalk");
    writeFileSync(attributes, "");
    expect(git(folder, "diff")).not.toContain("3150 cm2");
  });

  test("a file that is no recipe does not stop git", () => {
    const folder = clone();
    writeFileSync(join(folder, "bytes.chalk"), new Uint8Array([0xff, 0xfe, 0]));
    git(folder, "add", ".");
    git(folder, "commit", "-qm", "Bytes");
    chalkline(folder, ["git-setup"]);
    expect(git(folder, "show")).toContain("+# bytes.chalk is not written in UTF-8");
  });

  test("without a repository nothing is written", () => {
    const { code, err } = chalkline(workroom(["cloak.chalk", cloak]), ["git-setup"]);
    expect([code, err]).toEqual([2, "error: . does not lie in a git repository.\n"]);
  });
});

test("facts are the same every time, and one a line", () => {
  const folder = workroom(["apron.chalk", apron]);
  const [once, again] = [0, 1].map(() => chalkline(folder, ["facts", "apron.chalk"]).out);
  expect(once).toBe(again);
  expect(once!.startsWith(apron)).toBe(true);
  expect(once!.slice(apron.length).split("\n").slice(0, 9)).toEqual([
    "",
    "# The garment, as chalkline measures it",
    "param wide 30 cm",
    "param long 100 cm",
    "piece panel",
    "  30 cm wide, 100 cm high",
    "  3000 cm2",
    "  edge waist 30 cm, seam, allowance 1 cm point",
    "  edge side 100 cm, seam, allowance 1 cm point",
  ]);
});
