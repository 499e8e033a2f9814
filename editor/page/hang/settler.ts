// A worker of its own in which cloth settles: it is told which meshes hang, and says after every few steps how the garment looks.
// The package that moves the cloth is as large as the rest of the page, so this program is loaded when hanging is first shown.
import { columnsOfMesh } from "../../../kernel/cloth/hang/columns.ts";
import { figuresOf } from "../../../kernel/cloth/hang/figures.ts";
import { openWorld, type Settled, settling } from "../../../kernel/cloth/hang/world.ts";
import type { FromSettler, Hanging, ToSettler } from "./spoken.ts";

const speak = (message: FromSettler): void => (self as unknown as Worker).postMessage(message);

let turn = 0;

self.onmessage = ({ data }: MessageEvent<ToSettler>) => {
  turn = data.turn;
  if (data.hanging) void settle(data.turn, data.hanging);
};

/** All pieces settle side by side; another garment, or none, ends it, and its memory is freed. */
const settle = async (own: number, { meshes, rounds }: Hanging): Promise<void> => {
  await openWorld();
  const runs = meshes.map(({ piece, mesh }) => ({ piece, mesh, run: settling(mesh), positions: still, settled: none }));
  try {
    while (own === turn && runs.some(({ settled }) => !settled)) {
      for (const each of runs) {
        if (each.settled) continue;
        const next = each.run.next();
        each.positions = next.value.positions;
        if (next.done) each.settled = next.value;
      }
      const columns = new Map(runs.map(({ piece, mesh, positions }) => [piece, columnsOfMesh(mesh, positions)]));
      const settled = runs.flatMap((each) => each.settled ?? []);
      speak({
        turn: own,
        figures: rounds.flatMap((round) => figuresOf(round, columns, new Map())),
        ...(settled.length === runs.length && { atRest: resultOf(settled) }),
      });
      // Between two frames the page may say that it wants something else.
      await new Promise((resolve) => setTimeout(resolve));
    }
  } finally {
    for (const { run } of runs) run.return(undefined as never);
  }
};

const resultOf = (settled: readonly Settled[]): NonNullable<FromSettler["atRest"]> => ({
  steps: Math.max(...settled.map(({ steps }) => steps)),
  stretch: Math.max(...settled.map(({ stretch }) => stretch)),
  converged: settled.every(({ converged }) => converged),
});

const still: ArrayLike<number> = [];
const none = undefined as Settled | undefined;
