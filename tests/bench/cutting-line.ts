// How long the cutting line of a piece takes, against Clipper2's own work on the piece's outline flattened to 0.05 mm.
import { createRequire } from "node:module";
import type { MainModule } from "clipper2-wasm/dist/clipper2z";
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { flattened } from "../../kernel/geometry/area.ts";
import { kernel } from "../../kernel/kernel.ts";
import { boundary } from "../../kernel/outline.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import type { Piece } from "../../kernel/working.ts";
import { recipeIn } from "./recipe-in.ts";
import { type Bench, type Row, sideBySide } from "./row.ts";

export const cuttingLineBench: Bench = {
  name: "cutting-line",
  rows: async (rounds) => {
    const { garment } = recipeIn("lobby-coat-swing.chalk");
    const coat = [...garment.pieces.values()].filter(({ allowances }) => allowances.size > 0);
    return [
      await against("cutting lines of a coat", coat, 0.3, rounds),
      await against("cutting line that runs over itself", keyhole(), 1.3, rounds),
    ];
  },
};

const against = async (goal: string, pieces: readonly Piece[], bound: number, rounds: number): Promise<Row> => {
  // Its types do not cover its way in, which makes the module.
  const clipper = await (createRequire(import.meta.url)("clipper2-wasm") as () => Promise<MainModule>)();
  const outlines = pieces.map((piece) => {
    const paths = new clipper.Paths64();
    // Whole numbers of 0.001 mm.
    const corners = flattened(boundary(piece)!, 0.05).flatMap(({ x, y }) =>
      [x, y].map((each) => BigInt(Math.round(each * 1000))),
    );
    paths.push_back(clipper.MakePath64(corners as never));
    const by = Math.max(...[...piece.allowances.values()].map(({ width }) => width));
    return { paths, by: by * 1000 };
  });
  const times = sideBySide(
    // The line of a piece is worked out once, so each turn takes the pieces for new ones.
    () => {
      for (const piece of pieces) cuttingLine({ ...piece });
    },
    () => {
      for (const { paths, by } of outlines)
        clipper.InflatePaths64(paths, by, clipper.JoinType.Miter, clipper.EndType.Polygon, 2.5, 0).delete();
    },
    rounds,
  );
  return {
    goal,
    ours: times.ours / pieces.length,
    floor: { is: "clipper2-wasm on the flattened outline", figure: times.floor / pieces.length },
    bound,
  };
};

/** A pad with a slot that is narrower at its mouth than two allowances are, and tighter at its foot than one. */
const keyhole = (): Piece[] => {
  const text = `chalkline 1
recipe "Shoulder pad cover"
units cm
piece cover {
  point A = (0, 0)
  point B = (30 cm, 0)
  point C = (30 cm, 20 cm)
  point D = (16.5 cm, 20 cm)
  point E = (16.5 cm, 12 cm)
  point F = (14.5 cm, 12 cm)
  point G = (14.5 cm, 20 cm)
  point H = (0, 20 cm)
  curve top = A to B through (15 cm, -3 cm)
  curve right-side = B to C through (31 cm, 10 cm)
  line foot-right = C to D
  line slot-right = D to E
  curve slot-end = E to F handles E right 3 cm up 4 cm, F left 3 cm up 4 cm
  line slot-left = F to G
  line foot-left = G to H
  curve left-side = H to A through (-1 cm, 10 cm)
  outline top, right-side, foot-right, slot-right, slot-end, slot-left, foot-left, left-side
  allow top, right-side, foot-right, slot-right, slot-end, slot-left, foot-left, left-side by 1.5 cm
}
`;
  const { garment, findings } = kernel(vocabulary).work({ file: "cover.chalk", text });
  if (findings.some(({ severity }) => severity === "error")) throw new Error(findings[0]!.message);
  return [...garment.pieces.values()];
};
