// Where the cards lie: the recipe on an edge of the table that the user chooses, or loose on it; the dials across from it.
import { computed, effect, signal } from "@preact/signals";
import { remembered } from "../remembered.ts";
import { openPart } from "../table/looks.ts";

export const edges = ["left", "right", "top", "bottom", "loose"] as const;
/** An edge of the table, or loose on it. */
export type CardEdge = (typeof edges)[number];

export const recipeEdge = remembered<string>("recipe-edge", "left");
/** How far the recipe card reaches into the table, px. */
export const recipeReach = remembered("recipe-reach", Math.round(Math.min(480, innerWidth * 0.36)));
export const isRecipeFolded = remembered("recipe-folded", false);
export const areDialsFolded = remembered("dials-folded", false);
/** Where a loose card lies, px from the left and the top of the window. */
export const looseAt = signal({ x: 60, y: 70 });

export const windowSize = signal({ width: innerWidth, height: innerHeight });
addEventListener("resize", () => {
  windowSize.value = { width: innerWidth, height: innerHeight };
});

/** Height of the strip along the bottom of the table, px. */
export const stripHeight = 52;
/** A folded card is a tab of this breadth, px. */
export const foldedReach = 40;

/** Breadth of the dials card, px. */
export const dialsReach = computed(() => (windowSize.value.width < 1200 ? 220 : 280));

export const cardEdge = computed<CardEdge>(() => edges.find((each) => each === recipeEdge.value) ?? "left");

/** How far the recipe card reaches in now, with a window that may have become smaller since. */
export const reachNow = computed(() => {
  if (isRecipeFolded.value) return foldedReach;
  const { width, height } = windowSize.value;
  const across = cardEdge.value === "top" || cardEdge.value === "bottom" ? height - stripHeight : width;
  return Math.round(Math.min(Math.max(recipeReach.value, 240), across * 0.7));
});

/** The dials lie on the right, or on the left when the recipe is on the right. */
export const dialsSide = computed<"left" | "right">(() => (cardEdge.value === "right" ? "left" : "right"));

effect(() => {
  const { width, height } = windowSize.value;
  const edge = cardEdge.value;
  const reach = reachNow.value;
  const dials = areDialsFolded.value ? foldedReach : dialsReach.value;
  const left = (edge === "left" ? reach : 0) + (dialsSide.value === "left" ? dials : 0);
  const right = (edge === "right" ? reach : 0) + (dialsSide.value === "right" ? dials : 0);
  const top = edge === "top" ? reach : 0;
  const bottom = stripHeight + (edge === "bottom" ? reach : 0);
  openPart.value = {
    left,
    top,
    width: Math.max(50, width - left - right),
    height: Math.max(50, height - top - bottom),
  };
});
