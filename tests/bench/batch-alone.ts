// Drafts every row of a table in this thread, one after another, with no pool and no file of results: what a batch is held against.
import { openBodies } from "../../editor/batch/bodies-file.ts";
import { draftingFrom } from "../../editor/batch/drafting.ts";
import { recorded } from "../../editor/batch/parcel.ts";
import { openRecipe } from "../../editor/files/recipe-files.ts";
import { chalk } from "../../editor/terminal/known.ts";

/** Milliseconds that it takes. */
export const draftedAlone = async (recipe: string, table: string): Promise<number> => {
  const [opened, bodies] = [openRecipe(recipe, undefined), openBodies(table)];
  if ("problem" in opened || "problem" in bodies) throw new Error(`${recipe} or ${table} cannot be read`);
  const known = recorded(opened);
  chalk.work(known.source, { sources: known.sources });
  const draft = draftingFrom({
    program: "",
    recipe: opened.source,
    used: known.used(),
    set: [],
    size: null,
    as: [],
    paper: [],
    table,
    columns: bodies.columns,
    headings: [],
  });
  if ("problem" in draft) throw new Error(draft.problem);
  const began = performance.now();
  for (const row of bodies.rows()) await draft(row);
  return performance.now() - began;
};

const [recipe, table] = process.argv.slice(2);
if (recipe === undefined || table === undefined) throw new Error("a recipe and a table of bodies are wanted");
console.log(await draftedAlone(recipe, table));
