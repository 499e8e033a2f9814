// What the bench measures of hanging, on the swing coat.
import { figuresOf } from "../../kernel/cloth/hang/figures.ts";
import { meshesOf, rigged } from "../../kernel/cloth/hang/rigged.ts";
import { openWorld, settling } from "../../kernel/cloth/hang/world.ts";
import { recipeIn } from "./recipe-in.ts";

const median = (times: readonly number[]): number => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)]!;

/** Times in ms, memory in MB. */
export const hangCoat = async () => {
  const { garment } = recipeIn("lobby-coat-swing.chalk");
  const firstPictures = Array.from({ length: 30 }, () => {
    const began = performance.now();
    const { rounds, columns, straight } = rigged(garment);
    for (const round of rounds) figuresOf(round, columns, straight);
    return performance.now() - began;
  });
  await openWorld();
  const meshes = [...meshesOf(garment)];
  const pieces = meshes.map(([name, mesh]) => {
    const began = performance.now();
    const run = settling(mesh);
    let next = run.next();
    while (!next.done) next = run.next();
    const { steps, stretch } = next.value;
    return { name, particles: mesh.flat.length, ms: performance.now() - began, steps, stretch };
  });
  const giveUp = (times: number): void => {
    for (let time = 0; time < times; time += 1) {
      const run = settling(meshes[0]![1]);
      run.next();
      run.return(undefined as never);
    }
  };
  giveUp(100);
  const before = process.memoryUsage().external;
  giveUp(1000);
  return {
    firstPicture: { coldMs: firstPictures[0]!, warmMsMedian: median(firstPictures.slice(5)) },
    pieces,
    heldAfter1000Mb: (process.memoryUsage().external - before) / 1e6,
  };
};
