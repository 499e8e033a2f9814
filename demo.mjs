// The demonstration: drafts the swing coat, prints what was found and measured, and says where the drawings are.
import { spawnSync } from "node:child_process";
import process from "node:process";
import { fileURLToPath } from "node:url";

const here = fileURLToPath(new URL(".", import.meta.url));
const recipe = "recipes/lobby-coat-swing.chalk";
const folder = "out/lobby-coat-swing";

const chalkline = (...words) => {
  console.log(`\n$ chalkline ${words.join(" ")}`);
  const { status } = spawnSync(process.execPath, ["dist/chalkline.js", ...words], { cwd: here, stdio: "inherit" });
  if (status !== 0) process.exit(status ?? 1);
};

chalkline("check", recipe);
chalkline("measure", recipe);
chalkline("measure", recipe, "--by-step");
chalkline("stress", "recipes/blocks/straight-coat.chalk", "--tries", "100");
chalkline("draw", recipe, "--out", folder);
console.log(`
Open ${folder}/sheet.svg in a browser. Then change a number in ${recipe}, or try
  node dist/chalkline.js draw ${recipe} --set flare=14cm --out out/wider`);
