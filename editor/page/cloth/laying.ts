// What the page knows of the cloth that the recipe takes. The latest recipe wins: while one is laid nothing waits but the wish for
// another lay, and a recipe that has come and gone meanwhile is never laid.
import { computed, effect, signal } from "@preact/signals";
import type { LaidCloth, Lay } from "../../../kernel/cloth/lay/lay-of.ts";
import type { Units } from "../../../kernel/working.ts";
import { areDialsFolded } from "../card/places.ts";
import { ask, failure, given, text, worked } from "../desk.ts";
import { turning } from "../dials/turning.ts";
import { openProgram } from "../worker/open-program.ts";
import type { GivenHere } from "../worker/spoken.ts";
import type { FromLayer, ToLayer } from "./spoken.ts";

/** A lay, and what it is the lay of. */
interface Laid {
  readonly text: string;
  readonly given: GivenHere;
  /** The text when the dial was taken hold of whose turn gave this one. */
  readonly turnedFrom: string | undefined;
  readonly units: Units;
  readonly lay: Lay;
  /** How the pieces lie on each cloth, as SVG. */
  readonly drawings: readonly string[];
}

/** The last lay that was finished; undefined where the recipe cuts nothing, or nothing has been laid yet. */
export const laid = signal<Laid | undefined>(undefined);

/** The cloth whose drawing the user wants to see, by its name. */
export const clothShown = signal<string | undefined>(undefined);

/** Whether the recipe is another by now than the one that was laid. */
export const isOld = computed(() => laid.value?.text !== text.value || laid.value?.given !== given.value);

const heldFrom = computed(() => turning.value?.from);

/** The lay at the moment when the dial in hand was taken hold of; undefined where the change is none of a dial. */
const atHold = signal<Laid | undefined>(undefined);

/** How many mm of a cloth it took when the dial was taken hold of; undefined where the change is none of a dial. */
export const lengthBefore = ({ fabric }: LaidCloth): number | undefined => {
  const [now, before] = [laid.value, atHold.value];
  if (!now || !before || now.given !== before.given) return undefined;
  if (now.turnedFrom === undefined || now.turnedFrom !== heldFrom.value) return undefined;
  const was = before.lay.cloths.find((cloth) => cloth.fabric === fabric);
  return was && was.length > 0 ? was.length : undefined;
};

let layer: Promise<Worker> | undefined;
let isBusy = false;
let isWanted = false;

/** Begins to lay whatever is on the table, as long as anybody sees what comes of it. */
export const followCloth = (): void => {
  effect(() => {
    const isSeen = !areDialsFolded.value || clothShown.value !== undefined;
    if (!worked.value || !isSeen) return;
    changedAt = performance.now();
    void layLatest();
  });
  effect(() => {
    atHold.value = heldFrom.value === undefined ? undefined : laid.peek();
  });
};

const layLatest = async (): Promise<void> => {
  isWanted = true;
  if (isBusy) return;
  isBusy = true;
  try {
    while (isWanted) {
      await hasItsTurn();
      isWanted = false;
      const began = performance.now();
      await layOnce();
      laidAt = performance.now();
      layTook = laidAt - began;
    }
  } catch (error) {
    failure.value = `How much cloth it takes cannot be told. ${error instanceof Error ? error.message : String(error)}`;
    void layer?.then(
      (worker) => worker.terminate(),
      () => undefined,
    );
    layer = undefined;
  } finally {
    isBusy = false;
  }
};

// When the recipe was last another, when it was last laid, and how long that took; ms.
let changedAt = 0;
let laidAt = 0;
let layTook = 0;

// Whoever types has stopped for so long before anything is laid, ms.
const rest = 400;

/**
 * A lay keeps a core of the machine busy, and on a small one the drawing would feel it. So under a dial that is turned it lays no more
 * than half of the time, and while somebody types not at all.
 */
const hasItsTurn = async (): Promise<void> => {
  for (;;) {
    const ready = turnedFrom(text.peek()) === undefined ? changedAt + rest : laidAt + layTook;
    const missing = ready - performance.now();
    if (missing <= 0) return;
    await new Promise((resolve) => setTimeout(resolve, missing));
  }
};

const layOnce = async (): Promise<void> => {
  // The worker answers about the text that is on the table now.
  const of = { text: text.peek(), given: given.peek(), turnedFrom: turnedFrom(text.peek()) };
  const garment = await ask("toLay", {});
  if (!garment) {
    laid.value = undefined;
    return;
  }
  layer ??= openProgram("layer");
  const found = await answered(await layer, garment);
  if ("failed" in found) throw new Error(found.failed);
  const now = { ...of, units: garment.units, ...found };
  // The text that the dial was taken hold of at may have been laid only now.
  if (turning.peek()?.from === of.text) atHold.value = now;
  laid.value = now;
};

const turnedFrom = (now: string): string | undefined => {
  const { from, to } = turning.peek() ?? {};
  return now === to && now !== from ? from : undefined;
};

const answered = (worker: Worker, garment: ToLayer): Promise<FromLayer> =>
  new Promise((resolve, reject) => {
    worker.onerror = ({ message }) => reject(new Error(message));
    worker.onmessage = ({ data }: MessageEvent<FromLayer>) => resolve(data);
    worker.postMessage(garment);
  });
