// The page by itself, without a server: the recipes that came with it, which saving hands to the user as files.
import type { FileText } from "../worker/spoken.ts";
import { handOver } from "./hand-over.ts";
import type { Home, KeptHere } from "./home.ts";

/** A home that keeps nothing but what the browser does; what was handed over stays open to look at until the page is left. */
export const loneHome = (recipes: readonly FileText[]): Home => {
  const kept = new Map(recipes.map(({ file, text }): [string, KeptHere] => [file, { file, text, mark: null }]));
  return {
    name: "recipes that came with the program",
    saves: false,
    recipes: [...kept.values()],
    marks: async () => undefined,
    read: async (file) => kept.get(file),
    async save(file, text) {
      handOver(file.slice(file.lastIndexOf("/") + 1), "text/plain;charset=utf-8", text);
      kept.set(file, { file, text, mark: null });
      return { mark: "" };
    },
  };
};
