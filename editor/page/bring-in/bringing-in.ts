// A drawing that is being brought in: its bytes, how it is to be read, and what comes of it. It becomes a new recipe on the table
// when the user says so, and what lies there until then stays.
import { signal } from "@preact/signals";
import { drawingKinds } from "../../bring-in/drawing-kinds.ts";
import { drawingLimits } from "../../bring-in/drawing-limits.ts";
import { drawingTooLarge } from "../../files/drawing-in.ts";
import { failure } from "../desk.ts";
import { openNew } from "../files/keeping.ts";
import { errand } from "../worker/errand.ts";
import type { Reading, ToTrace, Traced } from "./spoken.ts";

/** The drawing in hand. */
export const drawing = signal<{ readonly called: string; readonly bytes: Uint8Array } | undefined>(undefined);

// What `chalkline trace` takes where nothing else is said.
const usual: Reading = { units: undefined, scale: "1", line: "sewing" };

export const reading = signal<Reading>(usual);

/** What came of it; undefined while it is being traced. */
export const traced = signal<Traced | undefined>(undefined);

/** The endings of the files that are taken. */
export const drawingEndings: readonly string[] = drawingKinds.map((kind) => `.${kind}`);

export const isDrawing = ({ name }: File): boolean =>
  drawingEndings.some((ending) => name.toLowerCase().endsWith(ending));

// Every drawing within the limits takes seconds; this is for the case that one does not, ms.
const longest = 60_000;

/** Takes a drawing in hand, in place of another one. */
export const bringIn = async (file: File): Promise<void> => {
  failure.value = "";
  if (file.size > drawingLimits.fileBytes) {
    failure.value = drawingTooLarge(file.name).problem.message;
    return;
  }
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    failure.value = `${file.name} cannot be read any more.`;
    return;
  }
  drawing.value = { called: file.name, bytes };
  await read(usual);
};

/** Traces the drawing in hand as the user wants it read; what was wanted last counts. */
export const read = async (wanted: Reading): Promise<void> => {
  const inHand = drawing.peek();
  if (!inHand) return;
  reading.value = wanted;
  traced.value = undefined;
  const isLast = (): boolean => drawing.peek() === inHand && reading.peek() === wanted;
  try {
    const made = await errand<ToTrace, Traced>("tracer", { ...inHand, ...wanted }, longest);
    if (isLast()) traced.value = made;
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    if (isLast()) traced.value = { recipe: undefined, words, notes: [] };
  }
};

/** The user's word that the recipe is to lie on the table. */
export const layTraced = (): void => {
  const [inHand, made] = [drawing.peek(), traced.peek()];
  if (!inHand || made?.recipe === undefined) return;
  openNew(inHand.called.replaceAll(" ", "-").replace(/(?:\.\w+)?$/, ".chalk"), made.recipe);
  putAway();
};

export const putAway = (): void => {
  drawing.value = undefined;
  traced.value = undefined;
};
