// `npm run bench`: measures and prints one table; the figures go to out/bench.json for comparison with another run.
// `npm run bench -- packing FOLDER` packs the problems of a folder instead.
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { benchEditor } from "./editor.mjs";
import { benchHang } from "./hang.mjs";
import { benchPacking } from "./packing.mjs";

if (process.argv[2] === "packing") {
  await benchPacking(...process.argv.slice(3));
  process.exit();
}

const root = fileURLToPath(new URL("../../", import.meta.url));
const hang = await benchHang();
const editor = await benchEditor();

const { firstDrawing, fullEditor, typing } = editor;
console.log(
  `until the first drawing   ${(firstDrawing.gzippedBytes / 1024).toFixed(0)} KiB gzipped, ${firstDrawing.coldMsMedian} ms`,
);
console.log(
  `until the full editor     ${(fullEditor.gzippedBytes / 1024).toFixed(0)} KiB more, ${fullEditor.coldMsMedian} ms`,
);
console.log("\nms from a key to the redrawn table, and of that in the worker; longest wait of typing");
console.table(Object.fromEntries(typing.map(({ file, ...row }) => [file, row])));
const ms = (value) => `${value.toFixed(0)} ms`;
console.log(
  `\nfirst picture of the hanging coat   ${ms(hang.firstPicture.coldMs)} cold, ${ms(hang.firstPicture.warmMsMedian)} warm`,
);
for (const { name, particles, ms: took, steps, stretch } of hang.pieces)
  console.log(
    `${name} at rest   ${ms(took)}, ${particles} particles, ${steps} steps, stretched ${(stretch * 100).toFixed(2)} %`,
  );
console.log(`held after 1,000 garments given up   ${hang.heldAfter1000Mb.toFixed(1)} MB`);
mkdirSync(`${root}out`, { recursive: true });
writeFileSync(`${root}out/bench.json`, `${JSON.stringify({ editor, hang }, null, 2)}\n`);
