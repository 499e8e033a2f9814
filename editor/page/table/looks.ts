// How the user wants to see the table. Kept from visit to visit.
import { computed, signal } from "@preact/signals";
import { picture } from "../desk.ts";
import { remembered } from "../remembered.ts";
import { fitted, type View, type Window } from "./view.ts";

export const showsNames = remembered("names", false);
export const showsLengths = remembered("lengths", true);
export const showsGrid = remembered("grid", false);
export const showsBefore = remembered("before", true);
export const showsCutting = remembered("cutting", true);
/** Lengths and values stand at the ends of the recipe's lines. */
export const tellsValues = remembered("values", false);
/** CSS pixels in a millimetre of glass, as the user measured it; 96 px to the inch until then. */
export const pixelsPerMillimetre = remembered("screen", 96 / 25.4);

export const view = signal<View>({ x: 0, y: 0, scale: 0.5 });

/** The part of the window that no card lies on. */
export const openPart = signal<Window>({ left: 0, top: 0, width: 800, height: 600 });

/** The part of the table that pieces lie on, mm. */
export const pieceBounds = computed(() => {
  const pieces = picture.value?.pieces ?? [];
  return pieces.reduce(
    (all, { at, box }) => ({
      left: Math.min(all.left, at.x + box.left),
      top: Math.min(all.top, at.y + box.top),
      right: Math.max(all.right, at.x + box.right),
      bottom: Math.max(all.bottom, at.y + box.bottom),
    }),
    pieces.length === 0
      ? { left: 0, top: 0, right: 1000, bottom: 600 }
      : { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity },
  );
});

/** Shows all pieces. */
export const fitAll = (): void => {
  const { left, top, width, height } = openPart.value;
  const [ruler, tools] = [18, 44];
  view.value = fitted(pieceBounds.value, {
    left: left + ruler,
    top: top + ruler + tools,
    width: width - ruler,
    height: height - ruler - tools,
  });
};
