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

// Some tests want programs that are not ours to judge what we made: a real browser, and readers of PDF and DXF. Where this is
// a Debian machine and we may install programs, they are fetched; anywhere else the tests that need them say that they were skipped.
if (process.argv.includes("--browser")) {
  const wanted = [
    {
      packages: ["chromium", "fonts-dejavu-core"],
      places: [
        process.env.CHALKLINE_CHROMIUM,
        "/usr/bin/chromium",
        "/usr/bin/chromium-browser",
        "/usr/bin/google-chrome",
      ],
      without: "There is no Chromium here, so the tests of the page are skipped. CHALKLINE_CHROMIUM can name one.",
    },
    {
      packages: ["poppler-utils"],
      places: ["/usr/bin/pdftoppm"],
      without: "There is no poppler here, so the tests that measure printed pages are skipped.",
    },
    {
      packages: ["qpdf"],
      places: ["/usr/bin/qpdf"],
      without: "There is no qpdf here, so the tests that check the form of PDF files are skipped.",
    },
    {
      packages: ["python3-ezdxf"],
      places: ["/usr/lib/python3/dist-packages/ezdxf"],
      without: "There is no ezdxf here, so the tests that read DXF files with another reader are skipped.",
    },
    {
      packages: ["redis-server"],
      places: ["/usr/bin/redis-server", "/usr/local/bin/redis-server"],
      without: "There is no Redis here, so the tests of a batch over several machines are skipped.",
    },
  ];
  const isThere = ({ places }) => places.some((path) => path !== undefined && existsSync(path));
  const missing = wanted.filter((each) => !isThere(each)).flatMap(({ packages }) => packages);
  if (missing.length > 0 && process.getuid?.() === 0 && existsSync("/usr/bin/apt-get")) {
    console.log("Installing what the tests want: Chromium, Redis, and readers of PDF and DXF …");
    const quiet = {
      stdio: ["ignore", "ignore", "inherit"],
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    };
    spawnSync("apt-get", ["update", "-qq"], quiet);
    spawnSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...missing], quiet);
  }
  for (const each of wanted) if (!isThere(each)) console.log(each.without);
}
