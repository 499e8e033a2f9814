// Which kinds of thing a slot, a parameter or a function wants, the likeliest first.
import type { Slot } from "../../grammar/phrase.ts";
import { functions } from "../../kernel/functions.ts";
import type { OpenBracket, SlotAt } from "./slot-at.ts";

/** A kind of value that a place of a line may ask for; a side is left or right of a way. */
export type WantedKind =
  | "edge"
  | "place"
  | "dart"
  | "piece"
  | "fabric"
  | "length"
  | "angle"
  | "number"
  | "weight"
  | "area"
  | "text"
  | "direction"
  | "condition"
  | "side";

/** What stands in a slot. */
export const wantedIn = (slot: Slot): readonly WantedKind[] => {
  if (slot.shape === "direction") return ["direction", "angle"];
  if (slot.shape === "count") return ["number"];
  // A named value may be anything, though mostly it is an amount.
  if (slot.wanted === "a value" && slot.name === "value")
    return ["length", "number", "angle", "weight", "area", "place", "edge"];
  if (slot.wanted === "a value") return ["length", "number", "angle", "weight", "area"];
  return inOrder(slot.wanted);
};

const words: readonly (readonly [RegExp, WantedKind])[] = [
  [/\bedge/, "edge"],
  [/\bplace/, "place"],
  [/\bdart/, "dart"],
  [/^a piece|\ba piece\b/, "piece"],
  [/\bfabric/, "fabric"],
  [/\blength/, "length"],
  [/\bangle/, "angle"],
  [/\bnumber|\bratio/, "number"],
  [/\bweight/, "weight"],
  [/\barea/, "area"],
  [/\btext/, "text"],
  [/\bdirection/, "direction"],
  [/\bcondition|\btruth/, "condition"],
];

/** "an edge of this piece or a place": the kinds named, in that order; what it is of is not wanted itself. */
const inOrder = (wanted: string): WantedKind[] => {
  const plain = wanted.replace(/ of (?:this|the) piece/g, "");
  return words
    .map(([word, kind]) => ({ kind, at: plain.search(word) }))
    .filter(({ at }) => at >= 0)
    .sort((a, b) => a.at - b.at)
    .map(({ kind }) => kind);
};

// What the letters in the functions' forms stand for.
const ofPlaces = new Set(["distance", "angle", "middle", "part", "compass"]);

/** What stands in an open bracket: a function's value, or a coordinate. */
export const wantedInBracket = ({ name, index }: OpenBracket, outer: readonly WantedKind[]): readonly WantedKind[] => {
  const form = name === undefined ? undefined : functions.get(name)?.form;
  if (form === undefined) return outer[0] === "place" || outer.length === 0 ? ["length"] : outer;
  const list = form.slice(form.indexOf("(") + 1, -1).split(", ");
  const value = list[Math.min(index, list.length - 1)]!;
  if (value === "left|right") return ["side"];
  if (/^(?:a|b|c|…)$/.test(value)) return ofPlaces.has(name!) ? ["place"] : ["length", "number", "angle"];
  const kinds = inOrder(value);
  if (kinds.length === 0) return ["length", "number", "angle"];
  // A length may be a number times one, and a ratio one length over another.
  return kinds[0] === "number" ? ["number", "length"] : kinds[0] === "length" ? ["length", "number"] : kinds;
};

/** What a value that stands at a place of a line ought to be, the likeliest first; empty where nothing is known. */
export const wantedHere = ({ slot, bracket, last }: SlotAt): readonly WantedKind[] => {
  const bySlot = slot ? wantedIn(slot) : [];
  const outer = bracket ? wantedInBracket(bracket, bySlot) : bySlot;
  switch (last?.text) {
    case "at":
      return ["length", "number"];
    case "left":
    case "right":
    case "up":
    case "down":
    case "for":
      return ["length", "number"];
    case "toward":
      return last.means === "place word" ? ["place", ...(bySlot[0] === "direction" ? (["edge"] as const) : [])] : outer;
    case "along":
    case "square-to":
      return last.means === "DirectionWord" ? ["edge"] : outer;
    case "bearing":
      return ["angle", "number"];
    case "--":
      return ["place"];
    case "+":
    case "-":
    case "*":
    case "/":
      return amountsOf(outer);
    default:
      return outer[0] === "condition" ? ["length", "number", "angle", "area", "condition"] : outer;
  }
};

/** In a sum, what the whole is; a place walks on by lengths, and a number goes with anything. */
const amountsOf = (outer: readonly WantedKind[]): readonly WantedKind[] => {
  const amounts = outer.filter((kind) => ["length", "number", "angle", "weight", "area"].includes(kind));
  return amounts.length > 0
    ? [...new Set<WantedKind>([...amounts, "number", "length"])]
    : ["length", "number", "angle"];
};
