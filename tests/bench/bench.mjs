// `npm run bench`: measures and prints one table; the figures go to out/bench/ for comparison with another run.
// `npm run bench -- parse tiles` measures only these; `npm run bench -- packing FOLDER` packs the problems of a folder instead.
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { batchBench } from "./batch.mjs";
import { editorBench } from "./editor.mjs";
import { hangBench } from "./hang.mjs";
import { benchMemory } from "./memory.mjs";
import { benchPacking } from "./packing.mjs";

const named = process.argv.slice(2);
if (named[0] === "packing") {
  await benchPacking(...named.slice(1));
  process.exit();
}

if (named[0] === "memory") {
  await benchMemory(...named.slice(1));
  process.exit();
}

const root = fileURLToPath(new URL("../../", import.meta.url));
process.chdir(root);
const outfile = `${root}out/bench/benches.mjs`;
await build({
  absWorkingDir: root,
  entryPoints: ["tests/bench/benches.ts"],
  outfile,
  bundle: true,
  platform: "node",
  format: "esm",
  packages: "external",
  logLevel: "warning",
});
const { benches, isMet, ratioOf } = await import(outfile);

const all = [...benches, batchBench, editorBench, hangBench];
const unknown = named.find((name) => !all.some((bench) => bench.name === name));
if (unknown !== undefined) {
  console.error(
    `There is no bench ${unknown}. There are ${all.map(({ name }) => name).join(", ")}, memory and packing.`,
  );
  process.exit(2);
}

// Of so many turns of each side the median counts.
const rounds = 15;

const figure = (value, unit = "ms") =>
  `${value < 1 ? value.toPrecision(2) : value.toFixed(value < 10 ? 2 : 0)} ${unit}`;

const inTable = (row) => ({
  ours: figure(row.ours, row.unit),
  floor: row.floor ? `${figure(row.floor.figure, row.unit)} ${row.floor.is}` : "",
  ratio: row.floor ? ratioOf(row).toFixed(2) : "",
  bound: row.bound ?? "",
  met: { true: "met", false: "NOT met" }[isMet(row)] ?? "",
});

mkdirSync(`${root}out/bench`, { recursive: true });
const measured = [];
for (const bench of all.filter(({ name }) => named.length === 0 || named.includes(name))) {
  const rows = await bench.rows(rounds);
  measured.push({ name: bench.name, rows });
  writeFileSync(
    `${root}out/bench/${bench.name}.json`,
    `${JSON.stringify({ schema: 1, ...measured.at(-1) }, null, 2)}\n`,
  );
}
console.table(Object.fromEntries(measured.flatMap(({ rows }) => rows.map((row) => [row.goal, inTable(row)]))));
