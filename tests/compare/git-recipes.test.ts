// Recipes out of a real git repository in a folder of its own, made and changed by the real git: revisions, the working copy,
// files that are not there, and settings that a stranger would lay as a trap.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openAtRevision } from "../../editor/files/git-recipes.ts";
import { type CompareOptions, compare } from "../../editor/terminal/compare.ts";
import { compareMerge } from "../../editor/terminal/compare-merge.ts";
import type { Paper } from "../../editor/terminal/paper.ts";
import { lettersOf } from "../../kernel/report/said.ts";
import { apron } from "./compared.ts";

const hasGit = spawnSync("git", ["--version"]).status === 0;
const folder = realpathSync(mkdtempSync(join(tmpdir(), "chalkline-git-")));
const trap = join(folder, "trap");
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const git = (...args: string[]): void => {
  const person = ["-c", "user.name=Workroom", "-c", "user.email=workroom@example.org", "-c", "init.defaultBranch=main"];
  const { status, stderr } = spawnSync("git", [...person, ...args], { cwd: folder, encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
};

const write = (path: string, content: string | Uint8Array): void => {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), content);
};

const coat = (by: string): string =>
  `chalkline 1\nrecipe "Stage cloak"\nunits cm\nuse "blocks/apron.chalk" as block\npiece panel = block.panel {\n  extend-hem hem by ${by}\n}\n`;

/** What a comparison prints, with its exit code. */
const ran = async (asked: Parameters<typeof compare>[0], options: Partial<CompareOptions> = {}) => {
  const said = { out: "", err: "" };
  const paper = (to: "out" | "err"): Paper => ({
    width: 100,
    say: (lines) => {
      said[to] += lines.map((line) => `${lettersOf(line)}\n`).join("");
    },
    print: (text) => {
      said[to] += text;
    },
    progress: () => {},
  });
  const code = await compare(
    asked,
    { set: [], form: "json", align: { by: "table" }, ...options },
    paper("out"),
    paper("err"),
  );
  return { code, ...said };
};

const file = join(folder, "cloak.chalk");
const between = (before: string, after: string | undefined) => ran({ kind: "revisions", before, after, file });

beforeAll(() => {
  if (!hasGit) return;
  git("init", "-q");
  write("blocks/apron.chalk", apron);
  write("cloak.chalk", coat("5 cm"));
  git("add", ".");
  git("commit", "-qm", "A cloak");
  git("tag", "first");
  // The block changes, and the cloak does not.
  write("blocks/apron.chalk", apron.replace("wide = 30 cm", "wide = 32 cm"));
  git("commit", "-qam", "A wider block");
  write("cloak.chalk", coat("7 cm"));
  git("commit", "-qam", "A longer cloak");
  write("cloak.chalk", coat("9 cm"));
});

describe.skipIf(!hasGit)("a file at two revisions", () => {
  test("is read with the recipes that it used then", async () => {
    const { out, code } = await between("first", "HEAD~1");
    const { pieces, causes } = JSON.parse(out);
    expect(code).toBe(0);
    // The block is 20 mm wider, whatever lies in the working copy.
    expect(pieces[0].edges.slice(0, 2).map(({ name, before, after }: never) => [name, before, after])).toEqual([
      ["hem", 300, 320],
      ["waist", 300, 320],
    ]);
    expect(causes.map(({ line, text }: never) => [line, text])).toEqual([
      [4, 'param wide = 32 cm from 10 cm to 60 cm "width"'],
    ]);
    expect(causes[0].file).toMatch(/blocks\/apron\.chalk$/);
  });

  test("and against the working copy", async () => {
    const { pieces } = JSON.parse((await between("HEAD", undefined)).out);
    // 7 cm became 9 cm: both upright edges are 20 mm longer.
    const longer = pieces[0].edges.filter(({ difference }: { difference: number }) => difference > 1);
    expect(longer.map(({ name, difference }: never) => [name, Math.round(difference)])).toEqual([
      ["center", 20],
      ["side", 20],
    ]);
  });

  test("one that is gone from the working copy is read all the same", async () => {
    rmSync(file);
    const { out } = await between("HEAD~1", "HEAD");
    expect(JSON.parse(out).pieces.length).toBe(1);
    const { code, err } = await between("HEAD", undefined);
    expect([code, err]).toEqual([2, expect.stringContaining("There is no file")]);
    write("cloak.chalk", coat("9 cm"));
  });
});

describe.skipIf(!hasGit)("a folder at two revisions", () => {
  const folderAt = (before: string, after: string | undefined) =>
    ran({ kind: "revisions", before, after, file: folder });

  test("tells every recipe that changed, those that use one which did too", async () => {
    const { recipes } = JSON.parse((await folderAt("first", "HEAD~1")).out);
    expect(recipes.map(({ title }: { title: string }) => title)).toEqual(["Usher's apron", "Stage cloak"]);
    // Between these two only the cloak's own text changed.
    expect(JSON.parse((await folderAt("HEAD~1", "HEAD")).out).title).toBe("Stage cloak");
    expect(JSON.parse((await folderAt("HEAD", undefined)).out).title).toBe("Stage cloak");
  });
});

describe.skipIf(!hasGit)("a merge", () => {
  const merged = (revision: string) => {
    const said = { out: "", err: "" };
    const paper = (to: "out" | "err"): Paper => ({
      width: 100,
      say: (lines) => {
        said[to] += lines.map((line) => `${lettersOf(line)}\n`).join("");
      },
      print: (text) => {
        said[to] += text;
      },
      progress: () => {},
    });
    const code = compareMerge(
      join(folder, "vest.chalk"),
      revision,
      { set: [], form: "json" },
      paper("out"),
      paper("err"),
    );
    return { code, ...said };
  };

  test("tells what is as neither parent has it", () => {
    git("stash", "-q");
    write("vest.chalk", apron);
    git("add", "vest.chalk");
    git("commit", "-qm", "A vest");
    git("checkout", "-qb", "wider");
    write("vest.chalk", apron.replace("wide = 30 cm", "wide = 32 cm"));
    git("commit", "-qam", "Wider");
    git("checkout", "-q", "main");
    write(
      "vest.chalk",
      apron.replace("down long\n  point D = A down long", "down long\n  point D = A down long - 50 mm"),
    );
    git("commit", "-qam", "Shorter at the center");
    git("merge", "-q", "--no-edit", "wider");
    const { facts } = JSON.parse(merged("HEAD").out);
    // The hem ran level over 300 mm, over 320 in the one; in the other it rises 50 mm over 300, and now 50 over 320.
    const hem = facts.find(({ name }: { name: string }) => name === "panel.hem");
    expect(hem.one).toBeCloseTo(Math.sqrt(300 ** 2 + 50 ** 2), 6);
    expect(hem.other).toBeCloseTo(320, 6);
    expect(hem.merged).toBeCloseTo(Math.sqrt(320 ** 2 + 50 ** 2), 6);
    // The waist is as the one has it, and the center as the other.
    const names = facts.map(({ kind, name }: { kind: string; name: string }) => `${kind} ${name}`);
    expect(names).toEqual(["edge panel.hem", "area panel"]);
  });

  test("what is no merge is told", () => {
    expect(merged("HEAD^1")).toMatchObject({ code: 2, err: "error: HEAD^1 is no merge: it has one parent at most.\n" });
    git("stash", "pop", "-q");
  });
});

describe.skipIf(!hasGit)("what cannot be read is told", () => {
  const problem = (revision: string, path = file): string => {
    const opened = openAtRevision(path, revision, undefined);
    return "problem" in opened ? `${opened.problem.code}: ${opened.problem.message}` : "opened";
  };

  test("a revision that nobody knows, or that would be an option", () => {
    expect(problem("tomorrow")).toBe("git-revision: The repository knows no revision called tomorrow.");
    expect(problem("--output=trap")).toMatch(/^git-revision/);
    expect(existsSync(trap)).toBe(false);
  });

  test("a file that was not there", () => {
    expect(problem("first", join(folder, "vest.chalk"))).toBe(
      "file-missing: There is no file vest.chalk at revision first.",
    );
    expect(problem("first", join(folder, "blocks"))).toMatch(/^file-is-folder/);
  });

  test("a folder without a repository", () => {
    const lone = realpathSync(mkdtempSync(join(tmpdir(), "chalkline-lone-")));
    expect(problem("HEAD", join(lone, "cloak.chalk"))).toMatch(/^git-none/);
    rmSync(lone, { recursive: true });
  });

  test("links, files too large, and bytes that are no text", () => {
    write("large.chalk", "#".repeat(1024 * 1024 + 1));
    write("bytes.chalk", new Uint8Array([0xff, 0xfe, 0, 1]));
    symlinkSync("/etc/hostname", join(folder, "link.chalk"));
    git("add", "large.chalk", "bytes.chalk", "link.chalk");
    git("commit", "-qm", "Strange files");
    expect(problem("HEAD", join(folder, "large.chalk"))).toMatch(/^file-too-large/);
    expect(problem("HEAD", join(folder, "bytes.chalk"))).toMatch(/^file-not-utf8/);
    rmSync(join(folder, "link.chalk"));
    expect(problem("HEAD", join(folder, "link.chalk"))).toMatch(/^file-not-regular/);
    for (const path of ["large.chalk", "bytes.chalk"]) rmSync(join(folder, path));
  });

  test("a recipe that reaches out of its folder", () => {
    write("out/climber.chalk", 'chalkline 1\nuse "../blocks/apron.chalk" as block\n');
    git("add", "out");
    git("commit", "-qm", "A climber");
    const opened = openAtRevision(join(folder, "out/climber.chalk"), "HEAD", undefined);
    if ("problem" in opened) throw new Error(opened.problem.message);
    const read = opened.sources.read("../blocks/apron.chalk", opened.source.file);
    expect("problem" in read && read.problem.code).toBe("use-outside");
    const wide = openAtRevision(join(folder, "out/climber.chalk"), "HEAD", folder);
    if ("problem" in wide) throw new Error(wide.problem.message);
    expect("problem" in wide.sources.read("../blocks/apron.chalk", wide.source.file)).toBe(false);
  });
});

describe.skipIf(!hasGit)("a stranger's repository", () => {
  test("whatever its settings and attributes name, nothing is started and nothing written", async () => {
    const springs = `touch ${trap}`;
    write(".gitattributes", "*.chalk diff=trap filter=trap\n");
    write(".git/hooks/post-index-change", `#!/bin/sh\n${springs}\n`);
    for (const [name, value] of [
      ["core.fsmonitor", springs],
      ["core.pager", springs],
      ["core.sshCommand", springs],
      ["core.alternateRefsCommand", springs],
      ["diff.external", springs],
      ["diff.trap.textconv", springs],
      ["diff.trap.command", springs],
      ["filter.trap.smudge", springs],
      ["filter.trap.clean", springs],
      ["filter.trap.process", springs],
      ["alias.cat-file", `!${springs}`],
      ["remote.origin.promisor", "true"],
      ["remote.origin.url", `ext::${springs}`],
    ] as const)
      spawnSync("git", ["config", name, value], { cwd: folder });
    const before = spawnSync("find", [".git", "-newer", ".git/config", "-type", "f"], {
      cwd: folder,
      encoding: "utf8",
    }).stdout;
    const { code } = await between("first", "HEAD~2");
    expect(code).toBe(0);
    // An object that is not there would be fetched from the promised place.
    expect((await between("first", "0123456789012345678901234567890123456789")).code).toBe(2);
    expect(existsSync(trap)).toBe(false);
    expect(
      spawnSync("find", [".git", "-newer", ".git/config", "-type", "f"], { cwd: folder, encoding: "utf8" }).stdout,
    ).toBe(before);
  });

  test("the trap would have sprung on another way of looking", () => {
    spawnSync("git", ["diff", "first", "HEAD"], { cwd: folder });
    expect(existsSync(trap)).toBe(true);
  });
});
