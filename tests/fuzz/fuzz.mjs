// npm run fuzz -- --minutes N --seed S: throws recipes at every part of the program for so long. Bundled, as the program is.
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { build } from "esbuild";

const root = fileURLToPath(new URL("../../", import.meta.url));
const { values } = parseArgs({
  options: { minutes: { type: "string", default: "5" }, seed: { type: "string", default: "1" } },
});
const [minutes, seed] = [Number(values.minutes), Number(values.seed)];
if (!(minutes > 0) || !Number.isInteger(seed)) {
  console.error("--minutes takes a number above 0, and --seed a whole number.");
  process.exit(2);
}
process.chdir(root);
const outdir = `${root}out/fuzz`;
await build({
  absWorkingDir: root,
  entryPoints: ["tests/fuzz/campaign.ts", "tests/fuzz/watched-rounds.ts"],
  outdir,
  outExtension: { ".js": ".mjs" },
  bundle: true,
  platform: "node",
  format: "esm",
  sourcemap: "inline",
  packages: "external",
  logLevel: "warning",
});
process.setSourceMapsEnabled(true);
const { campaign } = await import(`${outdir}/campaign.mjs`);
process.exitCode = (await campaign(minutes, seed, outdir, `${outdir}/watched-rounds.mjs`)) === 0 ? 0 : 1;
