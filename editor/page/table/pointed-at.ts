// What on the table lies under the hand: read from the marks that the pieces carry.
import type { Pointed } from "../desk.ts";

/** The thing that an element of the table stands for; undefined on bare table. */
export const pointedAt = (target: EventTarget | null): Pointed | undefined => {
  if (!(target instanceof Element)) return undefined;
  const piece = target.closest<SVGElement>("[data-piece]")?.dataset.piece;
  if (piece === undefined) return undefined;
  const { edge, place, notch, thing } = (target as SVGElement).dataset;
  if (place !== undefined) return { kind: "place", piece, name: place };
  if (notch !== undefined) return { kind: "notch", piece, index: Number(notch) };
  if (thing !== undefined) return { kind: "thing", piece, index: Number(thing) };
  if (edge !== undefined) return { kind: "edge", piece, name: edge };
  return { kind: "piece", piece };
};
