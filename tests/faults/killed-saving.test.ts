// A recipe that is being saved when the program is killed is the old or the new one: in tidy, and in the page's server.
import { once } from "node:events";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, panel, workroom } from "../terminal/chalkline.ts";
import { callsOf, filesIn, runFaulty, someOf } from "./faulty.ts";
import { serveFolder } from "./served-folder.ts";

beforeAll(build);

test("tidy, killed: the recipe is the old or the new one", () => {
  const folder = workroom(["panel.chalk", panel]);
  chalkline(folder, ["tidy", "panel.chalk"]);
  const tidied = readFileSync(join(folder, "panel.chalk"), "utf8");
  expect(tidied).not.toBe(panel);
  writeFileSync(join(folder, "panel.chalk"), panel);
  const most = callsOf(folder, ["tidy", "panel.chalk"]);
  for (const at of someOf(most, 5, 3)) {
    writeFileSync(join(folder, "panel.chalk"), panel);
    expect(runFaulty(folder, ["tidy", "panel.chalk"], { at, what: "half" }).signal).toBe("SIGKILL");
    expect([panel, tidied]).toContain(readFileSync(join(folder, "panel.chalk"), "utf8"));
  }
  writeFileSync(join(folder, "panel.chalk"), panel);
  chalkline(folder, ["tidy", "panel.chalk"]);
  expect([...filesIn(folder)]).toEqual([["panel.chalk", tidied]]);
});

// A save reads what lies there first; what is killed is the writing.
test.each([
  ["openSync", 3],
  ["writeFileSync", 1],
  ["fsyncSync", 1],
  ["renameSync", 1],
])("the page's server, killed in %s %i while it saves: the recipe is the old or the new one", async (call, at) => {
  const folder = workroom(["panel.chalk", panel]);
  const newer = `${panel}# let out at the fitting\n`;
  const dying = await serveFolder(folder, { at, call, what: "half" });
  const { mark } = (await dying.ask("/api/recipe?file=panel.chalk"))!.body;
  const gone = once(dying.server, "exit");
  expect(await dying.save("panel.chalk", newer, mark!)).toBeUndefined();
  expect((await gone)[1]).toBe("SIGKILL");
  expect([panel, newer]).toContain(readFileSync(join(folder, "panel.chalk"), "utf8"));

  const next = await serveFolder(folder);
  const now = (await next.ask("/api/recipe?file=panel.chalk"))!.body;
  expect((await next.save("panel.chalk", newer, now.mark!))!.status).toBe(200);
  expect([...filesIn(folder)]).toEqual([["panel.chalk", newer]]);
  await next.end();
});
