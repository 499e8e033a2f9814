// `npm run bench`: measures and prints one table; the figures go to out/bench.json for comparison with another run.
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { benchEditor } from "./editor.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));
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
mkdirSync(`${root}out`, { recursive: true });
writeFileSync(`${root}out/bench.json`, `${JSON.stringify({ editor }, null, 2)}\n`);
