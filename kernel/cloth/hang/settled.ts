// A garment's pieces as they settle, each as a mesh in a world of its own. The package that moves it is loaded only where it is
// asked for, so that nothing else of the kernel waits or grows.
import type { Garment } from "../../working.ts";
import { hangers } from "./hanger.ts";
import { hangerMesh } from "./hanger-mesh.ts";
import { assumptionsOf, type Hung, type HungPiece, hemAndFolds, warningsOf } from "./hung.ts";
import type { Mesh } from "./mesh.ts";
import { mostStretch } from "./most-stretch.ts";
import type { HungPlace } from "./slack.ts";
import type { Frame, Settled } from "./world.ts";

/** One moment of the settling: which piece, and where its particles are. */
export interface HungFrame extends Frame {
  readonly piece: string;
  readonly mesh: Mesh;
}

/** The settling, frame by frame and piece by piece; leaving it early, by `return()`, frees its memory. */
export const settlingGarment = async (garment: Garment): Promise<Generator<HungFrame, Hung>> => {
  const { openWorld, settling, placeIn } = await import("./world.ts");
  await openWorld();
  function* settle(): Generator<HungFrame, Hung> {
    const hanging = hangers(garment);
    const pieces: HungPiece[] = [];
    for (const hanger of hanging) {
      const mesh = hangerMesh(hanger);
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
    return { pieces, assumptions: assumptionsOf(garment, hanging) };
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

const unsettled = (stretch: number, converged: boolean): string[] => [
  ...(converged ? [] : ["The cloth did not come to rest."]),
  ...(stretch > mostStretch ? [`The mesh is too coarse: it stretched by ${(stretch * 100).toFixed(1)} %.`] : []),
];
