// `chalkline edit`: serves the page and the folder of a recipe on this machine, and says at which address.
import { randomBytes } from "node:crypto";
import { existsSync, statSync } from "node:fs";
import { basename, dirname, relative, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { plain, strong } from "../../kernel/report/said.ts";
import { recipeFolder } from "../files/recipe-folder.ts";
import { pageFiles, policyOf } from "../server/page-files.ts";
import { type Served, serve } from "../server/serve.ts";
import type { Paper } from "./paper.ts";
import { exitCode, refusal } from "./told.ts";

export interface EditOptions {
  readonly port: number;
  readonly root?: string;
}

/** Serves until the terminal is closed or interrupted. */
export const edit = async (
  path: string | undefined,
  { port, root }: EditOptions,
  out: Paper,
  err: Paper,
): Promise<number> => {
  const place = placeOf(path, root);
  if ("problem" in place) {
    err.say(refusal(place.problem));
    return exitCode.unreadable;
  }
  const page = pageFiles(fileURLToPath(new URL("editor/", import.meta.url)));
  const token = randomBytes(18).toString("base64url");
  let served: Served;
  try {
    served = await serve(recipeFolder(place.folder), page, policyOf(page), token, port);
  } catch (error) {
    const isTaken = error instanceof Error && "code" in error && error.code === "EADDRINUSE";
    if (!isTaken) throw error;
    err.say(refusal(`Port ${port} is taken by another program.`, "Leave out --port, and a free one is found."));
    return exitCode.unreadable;
  }
  const file = place.file === undefined ? "" : `&file=${encodeURIComponent(place.file)}`;
  out.say([
    [plain("The cutting table is at")],
    [strong(`http://127.0.0.1:${served.port}/#token=${token}${file}`)],
    [
      plain(
        `with the recipes of ${place.folder}. Only this machine can reach it, and only by this address. Ctrl+C ends it.`,
      ),
    ],
  ]);
  await new Promise<void>((resolve) => {
    process.once("SIGINT", resolve);
    process.once("SIGTERM", resolve);
  });
  await served.close();
  return exitCode.clean;
};

/** The folder to open, and the file in it to begin with. */
const placeOf = (
  path: string | undefined,
  root: string | undefined,
): { readonly folder: string; readonly file?: string } | { readonly problem: string } => {
  if (root !== undefined && !isFolder(root)) return { problem: `There is no folder ${root}, which --root names.` };
  if (path === undefined) return { folder: resolve(root ?? ".") };
  if (isFolder(path)) return { folder: resolve(root ?? path) };
  if (!path.endsWith(".chalk"))
    return { problem: `${path} does not end in .chalk, and the editor opens recipes only.` };
  const folder = resolve(root ?? dirname(path));
  if (!existsSync(dirname(resolve(path)))) return { problem: `There is no folder for ${path}.` };
  const file = root === undefined ? basename(path) : relative(folder, resolve(path)).split(sep).join("/");
  return file.startsWith("../")
    ? { problem: `${path} does not lie in the folder ${root} that --root names.` }
    : { folder, file };
};

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
