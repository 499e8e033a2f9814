// Files and folders that may not be written, and what stands in the way of others: they stay as they are.
import { spawnSync } from "node:child_process";
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, panel, program, type Ran, workroom } from "../terminal/chalkline.ts";
import { asideIn, filesIn, stackTrace } from "./faulty.ts";

beforeAll(build);

const isRoot = process.getuid?.() === 0;

/** As a user who is not root, whom permissions do not hold. */
const asSomebody = (folder: string, args: readonly string[]): Ran => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    cwd: folder,
    env: { PATH: process.env.PATH },
    encoding: "utf8",
    ...(isRoot && { uid: 65534, gid: 65534 }),
  });
  return { code: status, out: stdout, err: stderr };
};
const hasPermissions = process.platform !== "win32" && existsSync("/proc");

test.skipIf(!hasPermissions)(
  "a file that may not be written stays, although its folder would take another in its place",
  () => {
    const folder = workroom(["panel.chalk", panel], ["drawn/wide.svg", "the old drawing"]);
    for (const each of [folder, join(folder, "drawn")]) chmodSync(each, 0o777);
    for (const each of ["panel.chalk", "drawn/wide.svg"]) chmodSync(join(folder, each), 0o444);
    const tidied = asSomebody(folder, ["tidy", "panel.chalk"]);
    expect([tidied.code, tidied.err]).toEqual([
      2,
      "error: panel.chalk cannot be written: its permissions forbid it. Nothing there was changed.\n",
    ]);
    expect(readFileSync(join(folder, "panel.chalk"), "utf8")).toBe(panel);
    const drawn = asSomebody(folder, ["draw", "panel.chalk", "--out", "drawn"]);
    expect(drawn.err).toContain(
      "drawn/wide.svg cannot be written: its permissions forbid it. Nothing there was changed.",
    );
    expect([...filesIn(join(folder, "drawn"))]).toEqual([["wide.svg", "the old drawing"]]);
  },
);

test.skipIf(!hasPermissions)("a folder that may not be written takes nothing", () => {
  const folder = workroom(["panel.chalk", panel], ["drawn/wide.svg", "the old drawing"]);
  chmodSync(folder, 0o555);
  chmodSync(join(folder, "drawn"), 0o555);
  for (const [args, words] of [
    [["tidy", "panel.chalk"], "panel.chalk cannot be written: its permissions forbid it."],
    [["draw", "panel.chalk", "--out", "drawn"], "cannot be written: its permissions forbid it."],
    [["draw", "panel.chalk", "--out", "new/er"], "new/er cannot be written: its permissions forbid it."],
  ] as const) {
    const { code, err } = asSomebody(folder, args);
    expect(code, args.join(" ")).toBe(2);
    expect(err).toContain(words);
    expect(err).not.toMatch(stackTrace);
  }
  expect(readdirSync(folder)).toEqual(["drawn", "panel.chalk"]);
  chmodSync(folder, 0o755);
});

test("what stands in the way of a file or a folder is named, and nothing beside it is changed", () => {
  const folder = workroom(["panel.chalk", panel], ["drawn/panel.svg", "the old drawing"], ["taken", ""]);
  mkdirSync(join(folder, "drawn", "wide.svg"));
  for (const [out, words] of [
    ["drawn", "drawn/wide.svg cannot be written: a folder stands where a file is needed. Nothing there was changed."],
    ["taken", "taken cannot be written: a file stands where a folder is needed."],
    ["taken/deeper", "taken/deeper cannot be written: a file stands where a folder is needed."],
    ["n".repeat(300), "cannot be written: its name is too long."],
    ...(process.platform === "linux"
      ? [["/proc/nope", "/proc/nope cannot be written: no folder can be made there."]]
      : []),
  ]) {
    const { code, err } = chalkline(folder, ["draw", "panel.chalk", "--out", out!]);
    expect(code, out).toBe(2);
    expect(err).toContain(words);
  }
  expect(readFileSync(join(folder, "drawn", "panel.svg"), "utf8")).toBe("the old drawing");
  expect(asideIn(join(folder, "drawn"))).toEqual([]);
});

test.skipIf(!hasPermissions)("a device is never replaced by a file, and a link is kept", () => {
  const folder = workroom(["panel.chalk", panel], ["shelf/linked.chalk", panel]);
  spawnSync("mkfifo", [join(folder, "pipe.chalk")]);
  writeFileSync(
    join(folder, "flap.svg"),
    '<svg xmlns="http://www.w3.org/2000/svg" width="9cm" height="9cm" viewBox="0 0 9 9"><path d="M0 0H5V5z"/></svg>',
  );
  const { code, err } = chalkline(folder, ["trace", "flap.svg", "--out", "pipe.chalk", "--overwrite"]);
  expect(code).toBe(2);
  expect(err).toContain("pipe.chalk cannot be written: a device or a pipe stands where a file is needed.");
  expect(statSync(join(folder, "pipe.chalk")).isFIFO()).toBe(true);
  symlinkSync("shelf/linked.chalk", join(folder, "link.chalk"));
  chmodSync(join(folder, "shelf/linked.chalk"), 0o640);
  expect(chalkline(folder, ["tidy", "link.chalk"]).code).toBe(0);
  expect(lstatSync(join(folder, "link.chalk")).isSymbolicLink()).toBe(true);
  expect(readFileSync(join(folder, "shelf/linked.chalk"), "utf8")).not.toBe(panel);
  expect(statSync(join(folder, "shelf/linked.chalk")).mode & 0o777).toBe(0o640);
});
