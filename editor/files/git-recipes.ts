// Recipes as they were at a revision: the file that is asked for and those it uses, all out of the same commit. Only the plain
// contents of files are read: no filter, no diff, nothing that a repository could name a program for.
import { realpathSync, statSync } from "node:fs";
import { basename, dirname, join, relative, resolve, sep } from "node:path";
import { limits } from "../../grammar/limits.ts";
import { type SourceText, sourceText } from "../../grammar/source.ts";
import type { Source, Unreadable } from "../../kernel/sources.ts";
import { gitIn } from "./git-run.ts";
import { textOf } from "./read-text.ts";
import { type OpenedRecipe, shownName } from "./recipe-files.ts";
import { unreadable } from "./unreadable.ts";
import { fileAt } from "./use-path.ts";
import { refusedPath } from "./written-path.ts";

/** The recipe at a path as a revision has it; `root` widens the folder that it may use others from, as for one that is opened. */
export const openAtRevision = (path: string, revision: string, root: string | undefined): OpenedRecipe | Unreadable => {
  const repository = repositoryAround(path);
  if ("problem" in repository) return repository;
  const commit = commitNamed(revision, repository);
  if (typeof commit !== "string") return commit;
  const asked = treePath(path, repository);
  const folder = root === undefined ? folderOf(asked) : treePath(root, repository);
  if (!isIn(asked, folder))
    return unreadable("root-elsewhere", `${path} does not lie in the folder ${root} that --root names.`);
  const first = textAt(asked, commit, revision, repository);
  if ("problem" in first) return first;

  const source: Source = { file: nameOf(asked, repository), text: first.text };
  const texts = new Map<string, SourceText>([[source.file, sourceText(source.text)]]);
  const paths = new Map([[source.file, asked]]);
  const read = (written: string, from: string): Source | Unreadable => {
    const refused = refusedPath(written);
    if (refused) return refused;
    const meant = fileAt(paths.get(from) ?? asked, written);
    if (meant === undefined || !isIn(meant, folder))
      return unreadable("use-outside", `${written} lies outside the folder that recipes are read from.`);
    const file = nameOf(meant, repository);
    const known = texts.get(file);
    if (known) return { file, text: known.text };
    const content = textAt(meant, commit, revision, repository);
    if ("problem" in content) return content;
    texts.set(file, sourceText(content.text));
    paths.set(file, meant);
    return { file, text: content.text };
  };
  return { source, sources: { read }, texts };
};

/** The paths of all recipes that a folder holds at a revision; hidden folders are passed by. */
export const recipesAtRevision = (folder: string, revision: string): string[] | Unreadable => {
  const repository = repositoryAround(folder);
  if ("problem" in repository) return repository;
  const commit = commitNamed(revision, repository);
  if (typeof commit !== "string") return commit;
  const asked = treePath(folder, repository);
  const below = asked === "" ? [] : ["--", `${asked}/`];
  const answer = gitIn(
    repository.folder,
    ["ls-tree", "-r", "-z", "--name-only", "--full-tree", commit, ...below],
    mostNames,
  );
  if ("problem" in answer) return answer;
  if ("failed" in answer) return unreadable("folder-missing", `There is no folder ${folder} at revision ${revision}.`);
  return answer.bytes
    .toString("utf8")
    .split("\0")
    .filter((path) => path.endsWith(".chalk") && !/(?:^|\/)(?:\.|node_modules\/)/.test(path))
    .map((path) => join(repository.top, ...path.split("/")));
};

// Names of some hundred thousand files.
const mostNames = 16 * 1024 * 1024;

interface Repository {
  /** Where its files lie, and a folder in it that is there. */
  readonly top: string;
  readonly folder: string;
}

const repositoryAround = (path: string): Repository | Unreadable => {
  const folder = folderThere(resolve(path));
  const answer = gitIn(folder, ["rev-parse", "--show-toplevel"], mostWords);
  if ("problem" in answer) return answer;
  if ("failed" in answer) {
    return /dubious ownership/.test(answer.failed)
      ? unreadable("git-owner", `The git repository around ${path} belongs to somebody else, and git does not read it.`)
      : unreadable("git-none", `${path} does not lie in a git repository, so it has no revisions.`);
  }
  const top = answer.bytes.toString("utf8").replace(/\r?\n$/, "");
  return { top: realpathSync(top), folder };
};

/** The nearest folder above a path, itself included, that is there: the file may be gone since. */
const folderThere = (path: string): string => {
  const isFolder = statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
  const above = dirname(path);
  return isFolder || above === path ? realpathSync(path) : folderThere(above);
};

const commitNamed = (revision: string, { folder }: Repository): string | Unreadable => {
  const unknown = unreadable("git-revision", `The repository knows no revision called ${revision}.`);
  // A revision that began with a hyphen would be an option.
  if (revision === "" || revision.startsWith("-") || /\p{Cc}/u.test(revision)) return unknown;
  const answer = gitIn(
    folder,
    ["rev-parse", "--verify", "--quiet", "--end-of-options", `${revision}^{commit}`],
    mostWords,
  );
  if ("problem" in answer) return answer;
  return "failed" in answer ? unknown : answer.bytes.toString("utf8").trim();
};

const textAt = (
  path: string,
  commit: string,
  revision: string,
  { folder }: Repository,
): { readonly text: string } | Unreadable => {
  const called = `${path} at ${revision}`;
  const listed = gitIn(folder, ["ls-tree", "-l", "-z", "--full-tree", commit, "--", path], mostWords);
  if ("problem" in listed) return listed;
  const entry = "failed" in listed ? null : /^(\d+) (\w+) ([0-9a-f]+) +(\d+|-)\t/.exec(listed.bytes.toString("utf8"));
  if (!entry) return unreadable("file-missing", `There is no file ${path} at revision ${revision}.`);
  const [, mode, kind, object, size] = entry as unknown as [string, string, string, string, string];
  if (kind === "tree") return unreadable("file-is-folder", `${called} is a folder, not a file.`);
  if (kind !== "blob" || mode === linkMode)
    return unreadable("file-not-regular", `${called} is a link or another repository, not a file.`);
  if (Number(size) > limits.fileBytes)
    return unreadable(
      "file-too-large",
      `${called} is larger than ${limits.fileBytes / 1024 / 1024} MiB, and no recipe is.`,
    );
  const answer = gitIn(folder, ["cat-file", "blob", object], limits.fileBytes + mostWords);
  if ("problem" in answer) return answer;
  if ("failed" in answer) return unreadable("file-unreadable", `${called} cannot be read.`);
  return textOf(answer.bytes, called);
};

// A symbolic link, as git writes its mode (git-fast-import(1), "M" command).
const linkMode = "120000";

// Room for a line or two of names.
const mostWords = 64 * 1024;

/** A path of the disk as the repository's trees write it. */
const treePath = (path: string, { top }: Repository): string =>
  relative(top, realOf(resolve(path)))
    .split(sep)
    .join("/");

/** The real path of what may not be there. */
const realOf = (path: string): string => {
  try {
    return realpathSync(path);
  } catch {
    const above = dirname(path);
    return above === path ? path : join(realOf(above), basename(path));
  }
};

/** How findings name it: as the file on the disk is named, so that both sides of a comparison call it the same. */
const nameOf = (path: string, { top }: Repository): string => shownName(join(top, ...path.split("/")));

const folderOf = (path: string): string => path.split("/").slice(0, -1).join("/");

const isIn = (path: string, folder: string): boolean =>
  !path.startsWith("../") && (folder === "" || path.startsWith(`${folder}/`));
