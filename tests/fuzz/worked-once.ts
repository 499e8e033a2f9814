// Recipes worked and drawn for all targets in turn: the last few are kept, since most targets begin with the same ones.
import { type WorkedText, workedText } from "../../editor/assist/worked-text.ts";
import { type Drawings, draw } from "../../kernel/drawing/draw.ts";
import { kernel, type Outcome } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { sources } from "./seed-recipes.ts";

export const chalkline = kernel(vocabulary);

/** A recipe that stands at the root of recipes/, as an editor holds it. */
export const textWorkedOnce = (text: string): WorkedText => texts(text);

/** What comes of it. */
export const workedOnce = (text: string): Outcome => texts(text).outcome;

/** Its drawings. */
export const drawnOnce = (text: string): Drawings => drawings(text);

const most = 4;

const keptOf = <Made>(made: (text: string) => Made): ((text: string) => Made) => {
  const kept = new Map<string, Made>();
  return (text) => {
    const known = kept.get(text);
    if (known !== undefined) return known;
    const fresh = made(text);
    const [oldest] = kept.keys();
    if (kept.size >= most && oldest !== undefined) kept.delete(oldest);
    kept.set(text, fresh);
    return fresh;
  };
};

const texts = keptOf((text) => workedText(chalkline, { file: "fuzz.chalk", text }, { sources }));
const drawings = keptOf((text) => draw(workedOnce(text).garment));
