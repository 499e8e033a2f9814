// The recipes that are spoiled: all of recipes/, as if each stood at its root, so that a spoiled copy needs no folder of its own.
import { readdirSync, readFileSync } from "node:fs";
import { posix, resolve } from "node:path";
import type { Source, Sources } from "../../kernel/sources.ts";

// Found from the folder that tests and the long run are both started in, since a bundle lies elsewhere.
const folder = resolve("recipes");

const texts: ReadonlyMap<string, string> = new Map(
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".chalk"))
    .sort()
    .map((name) => [name, readFileSync(posix.join(folder, name), "utf8")]),
);

/** Reads recipes of recipes/ and nothing else. */
export const sources: Sources = {
  read: (path, from) => {
    const file = posix.join(posix.dirname(from), path);
    const text = texts.get(file);
    if (text !== undefined) return { file, text };
    return { problem: { code: "file-missing", message: `There is no file ${path} here.` } };
  },
};

/** Every recipe of recipes/, in the order of their names. */
export const seedRecipes: readonly Source[] = [...texts].map(([file, text]) => ({
  file: "fuzz.chalk",
  text: text.replace(/use "([^"]+)"/g, (_, path: string) => `use "${posix.join(posix.dirname(file), path)}"`),
}));

/** The same as one text, for whoever needs one sound recipe to hold another against. */
export const plainRecipe: Source = seedRecipes[[...texts.keys()].indexOf("stage-cape.chalk")]!;
