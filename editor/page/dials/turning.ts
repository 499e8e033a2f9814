// Turning a dial: the number in the text changes, and one undo takes back the whole turn.
import { signal } from "@preact/signals";
import { type Dial, dialText } from "../../assist/dials.ts";
import { dialsAtHand, edit, text } from "../desk.ts";

/** The text when the dial in hand was taken hold of, and as it was last turned; undefined before any was. */
export const turning = signal<{ readonly from: string; readonly to: string } | undefined>(undefined);

let isTurning = false;
/** A dial that has the keyboard, or is pressed, stays in hand from turn to turn. */
let isInHand = false;

/** Writes another value for one of the dials at hand; nothing happens while the text is another than theirs. */
export const turn = (index: number, value: number): void => {
  const { text: known, dials } = dialsAtHand.peek();
  const dial = dials[index];
  if (!dial || known !== text.peek() || !Number.isFinite(value) || value < 0) return;
  const written = dialText(known, dial, value);
  if (written === known.slice(dial.from, dial.to)) return;
  if (!isTurning && !isInHand) takeHold();
  edit([{ from: dial.from, to: dial.to, text: written }], isTurning ? "more" : "begin");
  isTurning = true;
  turning.value = { from: turning.peek()?.from ?? known, to: text.peek() };
  dialsAtHand.value = { text: text.peek(), dials: dials.map((each) => after(each, dial, written, value)) };
};

/** A dial is taken hold of: from here on its turns are reckoned. */
export const takeHold = (): void => {
  turning.value = { from: text.peek(), to: text.peek() };
};

/** A dial is pressed or gets the keyboard, and stays in hand until it is left. */
export const takeInHand = (): void => {
  isInHand = true;
  takeHold();
};

/** The keyboard goes elsewhere. */
export const leave = (): void => {
  isInHand = false;
};

/** A value as a dial can show it: on one of its strides, in a param's range, and never below nothing. */
export const withinReach = ({ isParam, least, most, stride }: Dial, value: number): number => {
  const marked = Math.max(0, Math.round(value / stride) * stride);
  return isParam ? Math.min(most, Math.max(least, marked)) : marked;
};

/** Turns the number at an offset of the text by so many of its strides; false when none stands there. */
export const turnAt = (offset: number, strides: number): boolean => {
  const { dials } = dialsAtHand.peek();
  const index = dials.findIndex(({ from, to }) => from <= offset && offset <= to);
  const dial = dials[index];
  if (!dial) return false;
  if (strides !== 0) turn(index, withinReach(dial, dial.value + strides * dial.stride));
  return true;
};

/** The hand lets go of the dial. */
export const letGo = (): void => {
  if (isTurning) edit([], "end");
  isTurning = false;
};

/** A dial's place in the text once another number, or its own, is written otherwise. */
const after = (each: Dial, turned: Dial, written: string, value: number): Dial => {
  const longer = written.length - (turned.to - turned.from);
  if (each === turned) return { ...each, to: each.to + longer, value };
  return each.from > turned.from ? { ...each, from: each.from + longer, to: each.to + longer } : each;
};
