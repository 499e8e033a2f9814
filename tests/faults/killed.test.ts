// A run that is killed leaves the old file or the new one, never half of one, and the next run clears up behind it. The kill
// comes at calls of the file system, before one or in the middle of it; which ones is drawn by lot, the same on every run, and
// CHALKLINE_FAULTS=all takes every single one.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { beforeAll, expect, test } from "vitest";
import { seeded } from "../../kernel/stress/seeded.ts";
import { build, chalkline, panel, program, workroom } from "../terminal/chalkline.ts";
import { asideIn, callsOf, filesIn, runFaulty, someOf } from "./faulty.ts";

beforeAll(build);

const oldDrawing = ["draw", "panel.chalk", "--out", "drawn"];
const newDrawing = [...oldDrawing, "--set", "flare=10cm"];

/** A folder with drawings of an older run in it, these, and those that are to take their place. */
const drawnOnce = () => {
  const folder = workroom(["panel.chalk", panel]);
  const drawn = join(folder, "drawn");
  chalkline(folder, newDrawing);
  const after = filesIn(drawn);
  chalkline(folder, oldDrawing);
  return { folder, drawn, before: filesIn(drawn), after };
};

const layBack = (folder: string, files: ReadonlyMap<string, string>): void => {
  for (const [name, content] of files) writeFileSync(join(folder, name), content, "latin1");
};

/** Every file is one of the two, and there is none besides but those that are set aside. */
const isOldOrNew = (found: Map<string, string>, before: Map<string, string>, after: Map<string, string>): void => {
  const known = [...found].filter(([name]) => !name.startsWith(".chalkline-"));
  expect(known.map(([name]) => name)).toEqual([...before.keys()]);
  for (const [name, content] of known)
    expect([before.get(name), after.get(name)].includes(content), `${name} is the old or the new one`).toBe(true);
};

test.each([["kill"], ["half"]])(
  "draw, killed (%s): every drawing is old or new, and the next run leaves nothing aside",
  (what) => {
    const { folder, drawn, before, after } = drawnOnce();
    const most = callsOf(folder, newDrawing);
    expect(most).toBeGreaterThan(20);
    let left = 0;
    for (const at of someOf(most, 3, what === "kill" ? 1 : 2)) {
      layBack(drawn, before);
      const { signal } = runFaulty(folder, newDrawing, { at, what });
      expect(signal, `call ${at} of ${most}`).toBe("SIGKILL");
      isOldOrNew(filesIn(drawn), before, after);
      left = Math.max(left, asideIn(drawn).length);
    }
    // Had nothing ever been left aside, there would be nothing to clear up.
    expect(left).toBeGreaterThan(0);
    chalkline(folder, newDrawing);
    expect(filesIn(drawn)).toEqual(after);
  },
);

test("kill -9 from outside, at any time: every drawing is old or new", async () => {
  const { folder, drawn, before, after } = drawnOnce();
  const dice = seeded(4);
  const began = performance.now();
  chalkline(folder, oldDrawing);
  const took = performance.now() - began;
  for (let run = 0; run < 2; run += 1) {
    layBack(drawn, before);
    const child = spawn(process.execPath, [program, ...newDrawing], { cwd: folder, stdio: "ignore" });
    const gone = once(child, "exit");
    // Toward the end, where it writes.
    await setTimeout(took * (0.6 + 0.4 * dice()));
    child.kill("SIGKILL");
    await gone;
    isOldOrNew(filesIn(drawn), before, after);
  }
  chalkline(folder, newDrawing);
  expect(filesIn(drawn)).toEqual(after);
});
