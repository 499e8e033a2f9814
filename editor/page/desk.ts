// What the page knows, as signals: the text and what it is worked with, what came of it, and what is pointed at. Components
// read these and call the functions below; nobody else changes them.
import { computed, effect, signal } from "@preact/signals";
import type { Point } from "../../kernel/geometry/point.ts";
import type { Dial } from "../assist/dials.ts";
import type { TextPart } from "../assist/text-edit.ts";
import { keptPicture } from "../picture/kept.ts";
import type { Picture } from "../picture/picture.ts";
import type { TextHolder } from "./text-holder.ts";
import type { KernelLine } from "./worker/kernel-line.ts";
import type { FileText, GivenHere, Worked } from "./worker/spoken.ts";

/** A thing on the table, or lines of the recipe, that the hand or the cursor is on. */
export type Pointed =
  | { readonly kind: "line"; readonly line: number }
  | { readonly kind: "piece"; readonly piece: string }
  | { readonly kind: "edge" | "place"; readonly piece: string; readonly name: string }
  | { readonly kind: "notch"; readonly piece: string; readonly index: number }
  | { readonly kind: "thing"; readonly piece: string; readonly index: number };

/** The recipes that a `use` line may name. */
export const shelved = signal<readonly FileText[]>([]);
/** The name of the file on the table, as findings and `use` lines know it. */
export const file = signal("");
/** The text as it stands in the recipe card. */
export const text = signal("");
/** The text as it was last opened or saved; what is undone back to it is unchanged. */
export const savedText = signal("");
/** Size and measures that it is worked with. */
export const given = signal<GivenHere>({ measures: [] });
/** What came of the latest text that was worked. */
export const worked = signal<Worked | undefined>(undefined);
/** What could not be done, in words; they stay until the user types on or opens something else. */
export const failure = signal("");
/** How many steps of the working are shown; undefined shows the finished pieces. */
export const stepsShown = signal<number | undefined>(undefined);
/** The pieces after the steps that are shown. */
export const pictureAsOf = signal<Picture | undefined>(undefined);
/** A picture that the drawing is held against, and its name. */
export const held = signal<{ readonly name: string; readonly picture: Picture } | undefined>(undefined);
export const pointed = signal<Pointed | undefined>(undefined);
/** The thing on the table that was last tapped or chosen by its name. */
export const chosen = signal<Pointed | undefined>(undefined);
/** The line of the recipe that the cursor is on, from 1. */
export const cursorLine = signal(1);

export const isChanged = computed(() => text.value !== savedText.value);

/** The last good drawing of each piece: what a broken line took away stays on the table, marked as such. */
export const finishedPicture = signal<Picture | undefined>(undefined);

/** Where pieces lie while one of them is pulled at, so that none jumps from under the hand. */
export const heldStill = signal<ReadonlyMap<string, Point> | undefined>(undefined);

/** What is on the table now. */
export const picture = computed(() => stillWhere(heldStill.value, asFarAsShown()));

const asFarAsShown = (): Picture | undefined =>
  stepsShown.value === undefined ? finishedPicture.value : (pictureAsOf.value ?? finishedPicture.value);

const stillWhere = (still: ReadonlyMap<string, Point> | undefined, shown: Picture | undefined): Picture | undefined =>
  still && shown
    ? { ...shown, pieces: shown.pieces.map((piece) => ({ ...piece, at: still.get(piece.name) ?? piece.at })) }
    : shown;

/** The dials of the text as it stands: known at once after a turn, and a moment later after typing. */
export const dialsAtHand = signal<{ readonly text: string; readonly dials: readonly Dial[] }>({ text: "", dials: [] });

let holder: TextHolder | undefined;
let line: KernelLine | undefined;

/** Connects the page to its worker and works every text and every change of what it is worked with. */
export const connect = (kernelLine: KernelLine): void => {
  line = kernelLine;
  effect(() => {
    kernelLine.work({ file: file.value, text: text.value, given: given.value });
  });
  effect(() => {
    const steps = stepsShown.value;
    // Asked again when the recipe has been worked anew.
    if (steps === undefined || !worked.value) return;
    void kernelLine.ask("pictureAsOf", { steps }).then((answer) => {
      if (answer && stepsShown.peek() === steps) pictureAsOf.value = answer;
    });
  });
};

/** Asks the worker about the text on the table. */
export const ask: KernelLine["ask"] = (what, about) => (line ? line.ask(what, about) : Promise.resolve(undefined));

/** Takes what came of a text. */
export const take = (latest: Worked): void => {
  finishedPicture.value = keptPicture(latest.picture, finishedPicture.peek());
  worked.value = latest;
  if (latest.text === text.peek()) dialsAtHand.value = { text: latest.text, dials: latest.dials };
};

/** Opens a text on the table in place of the one that lies there. */
export const lay = (name: string, content: string): void => {
  stepsShown.value = undefined;
  held.value = undefined;
  pointed.value = undefined;
  chosen.value = undefined;
  finishedPicture.value = undefined;
  file.value = name;
  savedText.value = content;
  text.value = content;
  holder?.lay(name, content);
};

/** Whoever holds the text that the user types in; the newest one does. */
export const hold = (newest: TextHolder): void => {
  holder = newest;
};

/** The user has typed. */
export const typed = (content: string): void => {
  failure.value = "";
  text.value = content;
};

/** Changes the text as the user's own hand would, so that undo takes it back. Several changes of one stroke are one to undo. */
export const edit = (parts: readonly TextPart[], stroke: "whole" | "begin" | "more" | "end" = "whole"): void => {
  holder?.edit(parts, stroke);
};

/** Edits that were made for the text as it was worked; left alone when the text is another by now. */
export const mend = (parts: readonly TextPart[]): void => {
  if (worked.peek()?.text === text.peek()) edit(parts);
};

/** Shows a line of the recipe and puts the cursor there. */
export const goTo = (place: { readonly line: number } | { readonly from: number; readonly to: number }): void =>
  holder?.goTo(place);
