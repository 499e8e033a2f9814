// Runs the built command line as a user would: a process of its own, in a folder of its own, on recipes written there.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, realpathSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { vi } from "vitest";

// Each run is a process, and a busy machine takes its time to start one.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const project = fileURLToPath(new URL("../..", import.meta.url));
export const program = join(project, "dist", "chalkline.js");

/** Builds the program afresh, so that no test runs yesterday's. */
export const build = (): void => {
  const { status, stderr } = spawnSync(process.execPath, [join(project, "build.mjs"), "--terminal"], {
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(stderr);
};

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** A folder with these files, by their paths in it. */
export const workroom = (...files: readonly (readonly [string, string | Uint8Array])[]): string => {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "chalkline-")));
  for (const [path, content] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
};

/** Runs `chalkline ARGS` in a folder, with an environment that knows of no colour wishes. */
export const chalkline = (
  folder: string,
  args: readonly string[],
  { input = "", env = {} }: { readonly input?: string | Uint8Array; readonly env?: NodeJS.ProcessEnv } = {},
): Ran => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    cwd: folder,
    input,
    env: { PATH: process.env.PATH, ...env },
    encoding: "utf8",
    timeout: 20_000,
  });
  return { code: status, out: stdout, err: stderr };
};

/** A rectangle of 300 x 1000 mm, and a copy of it slashed from the middle of its top and opened 200 mm at the hem. */
export const panel = `chalkline 1
recipe "Usher's apron panel"
units cm
param flare = 20 cm from 0 cm to 40 cm "opening at the hem"
measure waist-girth = 70 cm from 50 cm to 150 cm "Round the waist"
let quarter = waist-girth / 4
piece panel {
  point A = (0, 0)
  point B = A right 30 cm
  point C = B down 100 cm
  point D = A down 100 cm
  line waist = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline waist, side, hem, center
  mark hem as hem
  grain (15 cm, 20 cm) to (15 cm, 80 cm)
  notch side at 20 cm
}
piece wide = panel {
  spread-from waist at 50% to hem by flare
  true-seam hem, waist
  keep side, center
}
`;
