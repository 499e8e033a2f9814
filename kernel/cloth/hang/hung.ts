// The way in to the hang preview: a garment's pieces as they hang, at once by the formula, or settled as a mesh. The package
// that settles it is loaded only where it is asked for, so that nothing else of the kernel waits or grows.
import type { Garment } from "../../working.ts";
import type { Sheet } from "./exact.ts";
import { stiffnessOf } from "./fabric-stiffness.ts";
import { type Folds, foldsOf, wavelengthOf } from "./folds.ts";
import { coarse, fine, type Hanger, hangers, stationsOf } from "./hanger.ts";
import { type Mesh, meshOf } from "./mesh.ts";
import { type HungPlace, type Slack, slackAlong, withoutGaps } from "./slack.ts";
import { type Holding, widerBy } from "./supports.ts";
import type { Frame, Settled } from "./world.ts";

/** A piece as it hangs. */
export interface HungPiece {
  readonly name: string;
  readonly holding: Holding;
  readonly hem: Slack;
  /** What the slack comes to in this cloth; indicative. */
  readonly folds: Folds;
  /** Of the settled mesh only: longest link over its length, steps, and whether it came to rest. */
  readonly settled?: { readonly stretch: number; readonly steps: number; readonly converged: boolean };
  /** What makes the picture doubtful, a sentence each. */
  readonly warnings: readonly string[];
}

export interface Hung {
  readonly pieces: readonly HungPiece[];
  readonly assumptions: readonly string[];
}

/** One moment of the settling: which piece, and where its particles are. */
export interface HungFrame extends Frame {
  readonly piece: string;
  readonly mesh: Mesh;
}

/** Every piece that hangs, by the formula. */
export const hungExactly = (garment: Garment): Hung => ({
  pieces: hangers(garment).map((hanger) => ({
    name: hanger.piece.name,
    holding: hanger.holding,
    ...hemAndFolds(hanger, garment, withoutGaps(stationsOf(hanger, fine))),
    warnings: warningsOf(hanger.sheet),
  })),
  assumptions,
});

/** The settling, frame by frame and piece by piece; leaving it early, by `return()`, frees its memory. */
export const settlingGarment = async (garment: Garment): Promise<Generator<HungFrame, Hung>> => {
  const { openWorld, settling, placeIn } = await import("./world.ts");
  await openWorld();
  function* settle(): Generator<HungFrame, Hung> {
    const pieces: HungPiece[] = [];
    for (const hanger of hangers(garment)) {
      const mesh = meshOf(hanger.sheet.outline, stationsOf(hanger, coarse));
      const run = settling(mesh);
      let next: IteratorResult<Frame, Settled>;
      try {
        next = run.next();
        while (!next.done) {
          yield { ...next.value, piece: hanger.piece.name, mesh };
          next = run.next();
        }
      } finally {
        run.return(undefined as never);
      }
      const { positions, steps, stretch, converged } = next.value;
      const hem = mesh.columns.map((column): HungPlace => {
        const particle = column.at(-1)!;
        return { flat: mesh.flat[particle]!, hung: placeIn(positions, particle) };
      });
      pieces.push({
        name: hanger.piece.name,
        holding: hanger.holding,
        ...hemAndFolds(hanger, garment, hem),
        settled: { stretch, steps, converged },
        warnings: [...warningsOf(hanger.sheet), ...unsettled(stretch, converged)],
      });
    }
    return { pieces, assumptions };
  }
  return settle();
};

/** The garment settled to the end. */
export const settledGarment = async (garment: Garment): Promise<Hung> => {
  const run = await settlingGarment(garment);
  let next = run.next();
  while (!next.done) next = run.next();
  return next.value;
};

const hemAndFolds = (
  { piece, holding }: Hanger,
  garment: Garment,
  line: readonly HungPlace[],
): Pick<HungPiece, "hem" | "folds"> => {
  const hem = slackAlong(line);
  const top = Math.min(...holding.supports.flatMap(({ from, to }) => [from.body.y, to.body.y]));
  const length = Math.max(0, Math.max(...line.map(({ hung }) => hung.y)) - top);
  const { bendingLength } = stiffnessOf(piece.name, garment);
  return { hem, folds: foldsOf(hem, wavelengthOf(bendingLength, length)) };
};

const warningsOf = (sheet: Sheet): string[] => {
  const wider = widerBy(sheet);
  if (wider <= mostWider) return [];
  return [`What holds the piece lies ${Math.round(wider)} mm further apart on the body than the cloth reaches.`];
};

const unsettled = (stretch: number, converged: boolean): string[] => [
  ...(converged ? [] : ["The cloth did not come to rest."]),
  ...(stretch > mostStretch ? [`The mesh is too coarse: it stretched by ${(stretch * 100).toFixed(1)} %.`] : []),
];

/** What the picture takes for granted. */
export const assumptions: readonly string[] = [
  "The body is unrolled: across is along its surface.",
  "Neck, shoulder and underarm, a waist or a cap stay where they were on the piece before it was altered.",
  "The cloth neither stretches nor sags on the bias, and nothing rubs.",
  "How many folds there are and how deep is indicative: it follows from the bending length, 20 mm where the recipe states none.",
  "Below what holds the cloth no body stands in its way.",
];

// mm: what truing a bent shoulder takes off is less.
const mostWider = 3;
const mostStretch = 0.01;
