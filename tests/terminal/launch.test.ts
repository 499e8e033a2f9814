// The built program starts from what V8 kept of it, and without that all the same.
import { spawnSync } from "node:child_process";
import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { Module } from "node:module";
import { dirname, join } from "node:path";
import { Script } from "node:vm";
import { beforeAll, expect, test } from "vitest";
import { build, panel, program, workroom } from "./chalkline.ts";

beforeAll(build);

/** The program that the built file starts. */
const started = (): string => join(dirname(program), /program-[0-9a-f]+\.js/.exec(readFileSync(program, "utf8"))![0]);

test("what was kept is of this very program, and node takes it", () => {
  const filename = started();
  const text = readFileSync(filename, "latin1");
  // Read as Latin letters, whatever is beyond ASCII would be garbled.
  expect([...text].find((letter) => letter > "~")).toBeUndefined();
  const cachedData = readFileSync(filename.replace(/\.js$/, ".compiled"));
  expect(new Script(Module.wrap(text), { filename, cachedData }).cachedDataRejected).toBe(false);
});

test("without it, or with one of another node, the program does the same", () => {
  const folder = workroom(["panel.chalk", panel]);
  cpSync(dirname(program), join(folder, "alone"), { recursive: true });
  const check = () => {
    const { status, stdout, stderr } = spawnSync(process.execPath, ["alone/chalkline.js", "check", "panel.chalk"], {
      cwd: folder,
      encoding: "utf8",
    });
    return { status, stdout, stderr };
  };
  const before = check();
  expect(before.status).toBe(0);
  const compiled = readdirSync(join(folder, "alone")).filter((name) => name.endsWith(".compiled"));
  for (const name of compiled) writeFileSync(join(folder, "alone", name), "not what V8 keeps");
  expect(check()).toEqual(before);
  for (const name of compiled) rmSync(join(folder, "alone", name));
  expect(check()).toEqual(before);
});
