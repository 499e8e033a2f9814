// Brings node_modules in line with the lock file, when it is not: the one thing that the other scripts need first.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";

const here = import.meta.dirname ?? new URL(".", import.meta.url).pathname;
const [major] = process.versions.node.split(".").map(Number);
if (major < 20) {
  console.error(`Chalkline needs Node 20 or newer; this is Node ${process.versions.node}.`);
  process.exit(1);
}

const stamp = join(here, "node_modules", ".chalkline-lock");
const lock = createHash("sha256")
  .update(readFileSync(join(here, "package-lock.json")))
  .digest("hex");
const installed = existsSync(stamp) && readFileSync(stamp, "utf8") === lock;

if (!installed) {
  console.log("Installing what package-lock.json says …");
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  const { status } = spawnSync(npm, ["ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: here,
    stdio: "inherit",
    shell: process.platform === "win32",
  });
  if (status !== 0) process.exit(status ?? 1);
  writeFileSync(stamp, lock);
}
