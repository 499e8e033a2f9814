// A second judge of layouts: Clipper2 compiled to WebAssembly, on polygons that this file lays itself with the built-in sine.
import { createRequire } from "node:module";
import type { MainModule } from "clipper2-wasm/dist/clipper2z";
import type { Layout, Strip } from "../../kernel/packing/strip.ts";

// Its types do not cover its way in, which makes the module.
const clipper = await (createRequire(import.meta.url)("clipper2-wasm") as () => Promise<MainModule>)();

/** The largest area that two laid shapes have in common, and by how much one lies outside the strip at most. */
export const judged = (strip: Strip, layout: Layout): { readonly overlap: number; readonly outside: number } => {
  const laid = layout.placements.map(({ shape, turn, by, flipped }) =>
    strip.shapes[shape]!.outline.map(({ x: along, y }): readonly [number, number] => {
      const x = flipped ? -along : along;
      return [x * Math.cos(turn) - y * Math.sin(turn) + by.x, x * Math.sin(turn) + y * Math.cos(turn) + by.y];
    }),
  );
  const corners = laid.flat();
  const outside = Math.max(0, ...corners.map(([x, y]) => Math.max(-x, -y, x - layout.length, y - strip.width)));
  let overlap = 0;
  laid.forEach((first, i) => {
    for (const second of laid.slice(i + 1))
      if (boxesMeet(first, second)) overlap = Math.max(overlap, common(first, second));
  });
  return { overlap, outside };
};

type Ring = readonly (readonly [number, number])[];

const boxesMeet = (first: Ring, second: Ring): boolean =>
  ([0, 1] as const).every((axis) => {
    const [a, b] = [first.map((p) => p[axis]), second.map((p) => p[axis])];
    return Math.min(...a) < Math.max(...b) && Math.min(...b) < Math.max(...a);
  });

const decimals = 8;

const common = (first: Ring, second: Ring): number => {
  const [subjects, clips] = [new clipper.PathsD(), new clipper.PathsD()];
  const paths = [clipper.MakePathD(first.flat()), clipper.MakePathD(second.flat())];
  subjects.push_back(paths[0]!);
  clips.push_back(paths[1]!);
  const found = clipper.IntersectD(subjects, clips, clipper.FillRule.NonZero, decimals);
  const area = Math.abs(clipper.AreaPathsD(found));
  for (const each of [...paths, subjects, clips, found]) each.delete();
  return area;
};
