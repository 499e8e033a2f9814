// How fast a batch drafts: one worker against drafting without a pool, two workers against one, and the memory that a long table
// takes against a short one. The built program is run; the drafting alone is bundled for it.
import { spawn, spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const root = fileURLToPath(new URL("../../", import.meta.url));
const folder = `${root}out/bench/batch`;
const recipe = `${root}recipes/circle-skirt.chalk`;

/** Ushers with waists from 62 to 100 cm; each second one of another. */
const table = (rows) => {
  const path = `${folder}/ushers-${rows}.csv`;
  const waist = (index) => 62 + ((index * 7) % 380) / 10;
  writeFileSync(
    path,
    `name,waist-girth (cm)\n${Array.from({ length: rows }, (_, index) => `Usher ${index + 1},${waist(index)}\n`).join("")}`,
  );
  return path;
};

const args = (bodies, workers, ...more) => [
  `${root}dist/chalkline.js`,
  "batch",
  recipe,
  ...["--bodies", bodies, "--out", `${folder}/out`, "--anew", "--workers", String(workers), ...more],
];

/** Milliseconds from the first row to the last, as the program tells them. */
const batched = (bodies, workers) => {
  const { status, stderr } = spawnSync(process.execPath, args(bodies, workers), { encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
  return Number(/rows in ([\d.]+) s/.exec(stderr)[1]) * 1000;
};

const alone = (bodies) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [`${folder}/alone.mjs`, recipe, bodies], {
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(stderr);
  return Number(stdout);
};

/** The most KiB that the program held while it drafted; Linux alone tells it of another process. */
const peakOf = (bodies) =>
  new Promise((resolve, reject) => {
    const running = spawn(process.execPath, args(bodies, 2), { stdio: "ignore" });
    let peak = 0;
    const timer = setInterval(() => {
      try {
        peak = Math.max(peak, Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${running.pid}/status`, "utf8"))[1]));
      } catch {
        // It has ended.
      }
    }, 100);
    running.on("close", (code) => {
      clearInterval(timer);
      if (code === 0) resolve(peak);
      else reject(new Error(`the batch ended with ${code}`));
    });
  });

const median = (figures) => figures.toSorted((a, b) => a - b)[Math.floor(figures.length / 2)];

export const batchBench = {
  name: "batch",
  rows: async (rounds) => {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    await build({
      absWorkingDir: root,
      entryPoints: ["tests/bench/batch-alone.ts"],
      outfile: `${folder}/alone.mjs`,
      bundle: true,
      platform: "node",
      format: "esm",
      packages: "external",
      logLevel: "warning",
    });
    const [few, many] = [table(8000), table(40_000)];
    const times = { alone: [], one: [], two: [] };
    // Each turn takes seconds, so that fewer than of other benches do.
    for (let round = 0; round < Math.min(rounds, 3); round += 1) {
      times.alone.push(alone(few));
      times.one.push(batched(few, 1));
      times.two.push(batched(few, 2));
    }
    const [without, one, two] = [median(times.alone), median(times.one), median(times.two)];
    return [
      { goal: "8,000 skirts, one worker", ours: one, floor: { is: "without a pool", figure: without }, bound: 1.05 },
      { goal: "8,000 skirts, two workers", ours: two, floor: { is: "one worker", figure: one }, bound: 1 / 1.6 },
      {
        goal: "most memory for 40,000 skirts",
        ours: await peakOf(many),
        floor: { is: "for 8,000", figure: await peakOf(few) },
        bound: 1.5,
        unit: "KiB",
      },
    ];
  },
};
