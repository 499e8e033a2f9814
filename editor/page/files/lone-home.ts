// The page by itself, without a server: the recipes that came with it, which saving hands to the user as files.
import type { FileText } from "../worker/spoken.ts";
import { handOver } from "./hand-over.ts";
import type { Home } from "./home.ts";

/** A home that keeps nothing but what the browser does. */
export const loneHome = (recipes: readonly FileText[]): Home => ({
  name: "recipes that came with the program",
  saves: false,
  recipes: recipes.map((recipe) => ({ ...recipe, mark: null })),
  marks: async () => undefined,
  read: async () => undefined,
  async save(file, text) {
    handOver(file.slice(file.lastIndexOf("/") + 1), "text/plain;charset=utf-8", text);
    return { mark: "" };
  },
});
