// `npm run bench -- packing FOLDER [SECONDS [SEEDS]]`: packs every problem of a folder with three seeds, a minute each, and holds
// what comes of it against the best known. The figures go to out/packing.json.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const root = fileURLToPath(new URL("../../", import.meta.url));

export const benchPacking = async (folder = "../shared/data/strip-packing", seconds = "60", seeds = "3") => {
  const stripRun = await bundledRun();
  const problems = readdirSync(folder)
    .filter((file) => file.endsWith(".json"))
    .sort()
    .map((file) => JSON.parse(readFileSync(resolve(folder, file), "utf8")));
  const runs = [];
  for (const problem of problems) {
    for (let seed = 1; seed <= Number(seeds); seed += 1) {
      const run = stripRun(problem, seed, Number(seconds));
      runs.push(run);
      console.log(told(run));
    }
  }
  const best = (name) => problems.find((problem) => problem.name === name)?.bestKnown?.utilisationPercent;
  const rows = problems.map(({ name }) => [
    name,
    row(
      runs.filter((run) => run.name === name),
      best(name),
    ),
  ]);
  console.log(`\n% of the strip used in ${seconds} s of one core, seeds 1 to ${seeds}`);
  console.table(Object.fromEntries(rows));
  mkdirSync(`${root}out`, { recursive: true });
  const garments = mean(runs.filter(({ name }) => garmentProblems.includes(name)).map((run) => run.ofBestKnownPercent));
  if (garments !== undefined) console.log(`${garmentProblems.join(", ")}: ${garments.toFixed(2)} % of the best known`);
  writeFileSync(`${root}out/packing.json`, `${JSON.stringify({ seconds: Number(seconds), runs }, null, 2)}\n`);
};

// The problems of the literature that come from garments.
const garmentProblems = ["marques", "shirts", "trousers"];

const bundledRun = async () => {
  const outfile = `${root}out/bench/strip-runs.mjs`;
  const entryPoints = ["tests/bench/strip-runs.ts"];
  await build({ absWorkingDir: root, entryPoints, outfile, bundle: true, platform: "node", format: "esm" });
  return (await import(outfile)).stripRun;
};

const told = ({ name, seed, seconds, utilisationPercent, isValid }) =>
  `${name}, seed ${seed}: ${utilisationPercent.toFixed(2)} % in ${seconds.toFixed(0)} s${isValid ? "" : ", NOT VALID"}`;

const row = (runs, bestKnown) => {
  const found = runs.map(({ utilisationPercent }) => utilisationPercent);
  return {
    worst: Number(Math.min(...found).toFixed(2)),
    mean: Number(mean(found).toFixed(2)),
    best: Number(Math.max(...found).toFixed(2)),
    "best known": bestKnown,
    "mean of best known, %": bestKnown && Number(((100 * mean(found)) / bestKnown).toFixed(2)),
  };
};

const mean = (numbers) => (numbers.length ? numbers.reduce((sum, each) => sum + each, 0) / numbers.length : undefined);

// Run by itself it needs nothing but the kernel.
if (process.argv[1] === fileURLToPath(import.meta.url)) await benchPacking(...process.argv.slice(2));
