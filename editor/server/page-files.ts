// The files of the page as the build left them beside the program, ready to be sent.
import { readdirSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";
import type { PageFile } from "./serve.ts";

const types: ReadonlyMap<string, string> = new Map([
  [".html", "text/html; charset=utf-8"],
  [".js", "text/javascript; charset=utf-8"],
  [".css", "text/css; charset=utf-8"],
]);

/** Every file of the page by its path; the folder is the one that the build wrote. */
export const pageFiles = (folder: string): ReadonlyMap<string, PageFile> =>
  new Map(
    readdirSync(folder).flatMap((name) => {
      const type = types.get(extname(name));
      return type === undefined ? [] : [[`/${name}`, { type, bytes: readFileSync(join(folder, name)) }] as const];
    }),
  );

/** The page's content security policy, as its own head says it. */
export const policyOf = (page: ReadonlyMap<string, PageFile>): string => {
  const html = new TextDecoder().decode(page.get("/index.html")?.bytes ?? new Uint8Array());
  return /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(html)?.[1] ?? "default-src 'none'";
};
