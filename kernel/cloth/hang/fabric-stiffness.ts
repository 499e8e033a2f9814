// How stiff a cloth is taken to be: its bending length as the recipe states it, what is usual for a cloth of its name, or that of a
// middling cloth. Its weight does not tell: a light poplin can be stiff, and a heavy wool crêpe supple.
import type { Fabric, Garment } from "../../working.ts";

/** A bending length in mm (ASTM D1388 sense), and where it comes from: the recipe, the name of the cloth, or nothing. */
export interface Stiffness {
  readonly bendingLength: number;
  readonly from: "recipe" | "name" | "nothing";
}

/** The stiffness of the cloth that a piece is cut from. */
export const stiffnessOf = (piece: string, { cuts, fabrics }: Garment): Stiffness => {
  const cut = cuts.find((each) => each.piece === piece);
  const fabric = cut && fabrics.get(cut.fabric);
  if (fabric?.bendingLength !== undefined) return { bendingLength: fabric.bendingLength, from: "recipe" };
  const usual = fabric && usualFor(fabric);
  return usual === undefined ? { bendingLength: middling, from: "nothing" } : { bendingLength: usual, from: "name" };
};

const usualFor = ({ name, title }: Fabric): number | undefined => {
  const words = `${title} ${name}`.toLowerCase();
  const found = usual.find(([names]) => names.some((each) => new RegExp(`\\b${each}\\b`).test(words)));
  return found && (found[1] + found[2]) / 2;
};

// Bending lengths from and to, mm, mean of warp and weft (trade handbook 7.2, from memory); the middle is taken. What is told by two
// words stands before what is told by one.
const usual: readonly (readonly [names: readonly string[], from: number, to: number])[] = [
  [["crepe de chine", "crêpe de chine"], 11, 15],
  [["wool crepe", "wool crêpe"], 14, 19],
  [["chiffon", "georgette"], 11, 15],
  [["habotai", "china silk"], 13, 18],
  [["viscose crepe", "viscose crêpe", "challis"], 12, 16],
  [["jersey"], 8, 13],
  [["lawn", "voile"], 16, 21],
  [["organdie", "organza"], 28, 45],
  [["poplin", "shirting"], 18, 25],
  [["linen"], 22, 32],
  [["taffeta"], 24, 35],
  [["satin"], 15, 24],
  [["gabardine", "worsted", "suiting"], 18, 24],
  [["flannel"], 18, 24],
  [["velvet"], 16, 24],
  [["corduroy"], 22, 34],
  [["denim"], 28, 45],
  [["tweed"], 20, 30],
  [["melton", "coating"], 26, 38],
  [["canvas", "duck"], 35, 60],
];

// mm: the median along the warp of 618 fabrics (Feng, Huang, Xu, Wang: Learning-Based Bending Stiffness Parameter Estimation
// by a Drape Tester, ACM TOG 2022, doi 10.1145/3550454.3555464), whose quarters lie at 16 and 25 mm.
const middling = 20;
