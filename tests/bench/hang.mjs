// How long a coat takes to hang: the first picture by the formula, each piece to come to rest, and the memory that a thousand
// garments given up leave behind. The kernel is bundled for it, as the page bundles it.
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const root = fileURLToPath(new URL("../../", import.meta.url));

const measured = async () => {
  const outfile = `${root}out/bench/hang-coat.mjs`;
  await build({
    absWorkingDir: root,
    entryPoints: ["tests/bench/hang-coat.ts"],
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    external: ["@dimforge/rapier2d-compat"],
    logLevel: "warning",
  });
  const { hangCoat } = await import(outfile);
  return hangCoat();
};

export const hangBench = {
  name: "hang",
  rows: async () => {
    const { firstPicture, pieces, heldAfter1000Mb } = await measured();
    return [
      { goal: "first picture of the hanging coat, cold", ours: firstPicture.coldMs },
      { goal: "first picture of the hanging coat, warm", ours: firstPicture.warmMsMedian },
      ...pieces.map(({ name, particles, ms }) => ({ goal: `${name} at rest, ${particles} particles`, ours: ms })),
      { goal: "held after 1,000 garments given up", ours: heldAfter1000Mb * 1000, unit: "KB" },
    ];
  },
};
