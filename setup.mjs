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

// The page's tests want a real browser. Where this is a Debian machine and we may install programs, its Chromium is fetched;
// anywhere else the tests that need it say that they were skipped.
if (process.argv.includes("--browser")) {
  const places = [
    process.env.CHALKLINE_CHROMIUM,
    "/usr/bin/chromium",
    "/usr/bin/chromium-browser",
    "/usr/bin/google-chrome",
  ];
  const isThere = places.some((path) => path !== undefined && existsSync(path));
  if (!isThere && process.getuid?.() === 0 && existsSync("/usr/bin/apt-get")) {
    console.log("Installing Chromium for the tests of the page …");
    const quiet = {
      stdio: ["ignore", "ignore", "inherit"],
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    };
    spawnSync("apt-get", ["update", "-qq"], quiet);
    spawnSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "chromium", "fonts-dejavu-core"], quiet);
  }
  if (!places.some((path) => path !== undefined && existsSync(path)))
    console.log("There is no Chromium here, so the tests of the page are skipped. CHALKLINE_CHROMIUM can name one.");
}
