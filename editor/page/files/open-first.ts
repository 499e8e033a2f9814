// What lies on the table when the page opens: the file that the address names, a recipe that a link carries, or the first of
// those that came with the program.
import { failure } from "../desk.ts";
import type { KernelLine } from "../worker/kernel-line.ts";
import type { FileText } from "../worker/spoken.ts";
import type { Home } from "./home.ts";
import { open, openText, settle } from "./keeping.ts";
import { loneHome } from "./lone-home.ts";
import { servedHome } from "./served-home.ts";
import { readLink } from "./share-link.ts";

declare const chalklineRecipes: readonly FileText[];

const firstRecipe = "lobby-coat-swing.chalk";
const kept = "chalkline-token";

/** Settles in the home that the address leads to and lays a recipe on the table. */
export const openFirst = async (line: KernelLine): Promise<void> => {
  const asked = new URLSearchParams(location.hash.slice(1));
  const token = tokenFrom(asked);
  const served = token === undefined ? undefined : await servedHome(token);
  if (served && !("problem" in served)) {
    await openIn(served, asked.get("file"), line);
    return;
  }
  const packed = asked.get("recipe");
  const shared = packed === null ? [] : readLink(packed);
  const files = "problem" in shared ? [] : shared;
  const names = new Set(files.map(({ file }) => file));
  settle(loneHome([...files, ...chalklineRecipes.filter(({ file }) => !names.has(file))]), line);
  await open(files[0]?.file ?? firstRecipe);
  // What opened instead has put earlier words away, so these come last.
  for (const each of [served, shared]) if (each && "problem" in each) failure.value = each.problem;
};

/** Settles in the folder of the server, with the file that was asked for, or its first. */
const openIn = async (home: Home, asked: string | null, line: KernelLine): Promise<void> => {
  settle(home, line);
  const name = asked ?? home.recipes[0]?.file;
  if (name !== undefined && home.recipes.some(({ file }) => file === name)) await open(name);
  else openText(name ?? "new-recipe.chalk", "chalkline 1\n");
};

/** The token of this run, from the address or, when the page is loaded again, from this tab's memory; it leaves the address at once. */
const tokenFrom = (asked: URLSearchParams): string | undefined => {
  const token = asked.get("token");
  if (token === null) return memory()?.getItem(kept) ?? undefined;
  memory()?.setItem(kept, token);
  asked.delete("token");
  const rest = asked.toString();
  history.replaceState(null, "", `${location.pathname}${rest === "" ? "" : `#${rest}`}`);
  return token;
};

const memory = (): Storage | undefined => {
  try {
    // A page opened from a folder has no server to have a token of.
    return location.protocol === "file:" ? undefined : sessionStorage;
  } catch {
    return undefined;
  }
};
