// The cloth that two garments need, one against the other: the same quick lay on both sides, so that a reviewer sees what an
// alteration costs. How it is to be cut in the end, `lay` says.
import { clothPieces } from "../cloth/lay/cloth-pieces.ts";
import { type Asked, type LaidCloth, type Lay, layOf } from "../cloth/lay/lay-of.ts";
import type { Garment } from "../working.ts";
import type { BeforeAndAfter } from "./comparison.ts";

/** What a garment needs of a cloth, mm; without lengths where it cannot be cut, and then why, a sentence each. */
export interface ClothNeed {
  readonly lengthToBuy: number | null;
  /** From the first piece to the last. */
  readonly length: number | null;
  readonly because: readonly string[];
}

export interface ComparedCloth extends BeforeAndAfter<ClothNeed> {
  readonly fabric: string;
}

/** As `lay` lays by default, as quickly as may be: opened flat, with 1 cm left along each selvedge. */
export const reviewLay: Asked = { spread: "flat", selvedge: 10, tilt: 0, effort: "quick", seed: 1 };

/** Every cloth that either garment is cut from; none where what is laid is the same on both sides. */
export const compareCloth = (before: Garment, after: Garment): ComparedCloth[] => {
  if (whatIsLaid(before) === whatIsLaid(after)) return [];
  const [was, is] = [needsOf(before), needsOf(after)];
  return [...new Set([...is.keys(), ...was.keys()])].map((fabric) => ({
    fabric,
    before: was.get(fabric) ?? null,
    after: is.get(fabric) ?? null,
  }));
};

/** All that a lay depends on, as text: neither names of pieces nor where anything stands in the recipe is among it. */
const whatIsLaid = (garment: Garment): string =>
  JSON.stringify(
    [...garment.fabrics.values()].map(({ name, width, shrinkLength, shrinkWidth, oneWay }) => {
      const { pieces, notLaid } = clothPieces(garment, name, reviewLay.spread);
      return [name, width, shrinkLength, shrinkWidth, oneWay, pieces.map(({ piece, ...laid }) => laid), notLaid];
    }),
  );

const needsOf = (garment: Garment): ReadonlyMap<string, ClothNeed> => {
  const { cloths, none } = finished(garment);
  return new Map([
    ...cloths.map((cloth) => [cloth.fabric, needOf(cloth)] as const),
    ...none.map(({ fabric, because }) => [fabric, { lengthToBuy: null, length: null, because: [because] }] as const),
  ]);
};

const finished = (garment: Garment): Lay => {
  const search = layOf(garment, reviewLay);
  for (;;) {
    const { done, value } = search.next();
    if (done) return value;
  }
};

const needOf = ({ lengthToBuy, length, tooWide, notLaid }: LaidCloth): ClothNeed => {
  const because = [...tooWide.map(({ message }) => message), ...notLaid.map((each) => each.because)];
  return because.length > 0 ? { lengthToBuy: null, length: null, because } : { lengthToBuy, length, because };
};
