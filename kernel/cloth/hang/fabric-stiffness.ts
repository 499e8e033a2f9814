// How stiff a cloth is taken to be: its bending length as the recipe states it, or that of a middling cloth.
import type { Garment } from "../../working.ts";

/** A bending length in mm (ASTM D1388 sense), and whether the recipe states it. */
export interface Stiffness {
  readonly bendingLength: number;
  readonly isStated: boolean;
}

/** The stiffness of the cloth that a piece is cut from. */
export const stiffnessOf = (piece: string, { cuts, fabrics }: Garment): Stiffness => {
  const cut = cuts.find((each) => each.piece === piece);
  const stated = cut && fabrics.get(cut.fabric)?.bendingLength;
  return stated === undefined
    ? { bendingLength: middling, isStated: false }
    : { bendingLength: stated, isStated: true };
};

// mm: the median along the warp of 618 fabrics (Feng, Huang, Xu, Wang: Learning-Based Bending Stiffness Parameter Estimation
// by a Drape Tester, ACM TOG 2022, doi 10.1145/3550454.3555464), whose quarters lie at 16 and 25 mm.
const middling = 20;
