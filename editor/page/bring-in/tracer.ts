// The program that makes a recipe of a drawing, as `chalkline trace` does; loaded when a drawing is first brought in.
import { kernel } from "../../../kernel/kernel.ts";
import { counted } from "../../../kernel/report/verdict.ts";
import { vocabulary } from "../../../kernel/vocabulary.ts";
import { broughtIn, leftOutWords } from "../../bring-in/brought-in.ts";
import { readAmount } from "../../files/amount.ts";
import { drawingIn } from "../../files/drawing-in.ts";
import { run } from "../worker/errand.ts";
import type { ToTrace, Traced } from "./spoken.ts";

const traced = ({ called, bytes, units, scale: written, line }: ToTrace): Traced => {
  const scale = readAmount(written);
  if (scale?.kind !== "number" || !(scale.value > 0))
    return refused("The scale is a number above 0, such as 2, 1/4 or 50%.");
  const drawing = drawingIn(bytes, called);
  if ("problem" in drawing) return refused(sentences(drawing.problem));
  const options = { ...(units && { units }), scale: scale.value, line };
  const made = broughtIn(drawing.text, drawing.kind, called, options, kernel(vocabulary));
  const notes = [...made.notes, ...made.leftOut.map((each) => `Left out: ${leftOutWords(each)}.`)].map(onThePage);
  if ("problem" in made) {
    const place = made.problem.line === undefined ? "" : `Line ${made.problem.line}: `;
    return { ...refused(`${place}${sentences(made.problem)}`), notes };
  }
  const { pieces, straying, recipe } = made;
  // Upward to a hundredth, so that it is never said nearer than it is.
  const near = (Math.ceil(straying * 100 - 1e-6) / 100).toFixed(2);
  return { recipe, words: `${counted(pieces.length, "piece")}, within ${near} mm of what is drawn.`, notes };
};

const refused = (words: string): Traced => ({ recipe: undefined, words, notes: [] });

const sentences = ({ message, hint }: { readonly message: string; readonly hint?: string }): string =>
  onThePage(hint === undefined ? message : `${message} ${hint}`);

/** What the command line calls by its options has a field on the page. */
const onThePage = (words: string): string =>
  words
    .replace(/; --as [^.]*/, "")
    .replace(/--line (cutting|sewing)/g, "Outline: $1 lines")
    .replaceAll("--units", "Units")
    .replaceAll("--scale", "Scale");

run(traced);
