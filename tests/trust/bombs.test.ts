// Recipes that multiply themselves, run as a user would, with less memory than is promised: they end soon, in a plain error.
import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { drafted, timed } from "../language/told.ts";
import { build, program, workroom } from "../terminal/chalkline.ts";

beforeAll(build);

const times = (count: number, text: string): string => text.repeat(count);
const list = (count: number, each: string): string => Array.from({ length: count }, () => each).join(", ");
const bends = Array.from({ length: 240 }, (_, index) => `(${index + 1} mm, ${index % 2 === 0 ? "1 mm" : "0"})`).join(
  ", ",
);

const doubled = `${Array.from({ length: 40 }, (_, index) => `step s${index + 1} () {\ns${index}\ns${index}\n}`).join("\n")}\ns40`;
const repeated = (depth: number, within: string): string =>
  `${Array.from({ length: depth }, (_, index) => `repeat 200 as i${index} {`).join("\n")}\n${within}\n${times(depth, "}\n")}`;

/** What each would come to without a limit stands beside it. */
const bombs: readonly (readonly [what: string, text: string, codes: readonly string[]])[] = [
  ["steps that call steps twice, 2^40 lines", `step s0 () { let a = 1 }\n${doubled}`, ["limit-steps"]],
  ["repeats in repeats, 200^20 lines", repeated(20, "let a = 1"), ["limit-steps"]],
  ["a long sum in a loop, 7 * 10^7 values", repeated(2, `let k = min(${list(1900, "1")})`), ["limit-effort"]],
  [
    "a loop of long texts, 8 * 10^7 letters",
    `piece a {\n${repeated(2, `label "${times(2000, "x")}"`)}\n}`,
    ["limit-marks"],
  ],
  [
    "seams of a thousand edges in a loop, 4 * 10^7 edges",
    `piece a {\nline top = (0, 0) to (1 m, 0)\n}\npiece b = a { }\n${repeated(2, `seam ${list(900, "a.top")} with ${list(90, "b.top")}`)}`,
    ["limit-effort"],
  ],
  [
    "edges of hundreds of lines crossed in a loop, 2 * 10^9 pairs",
    `piece a {\nline a = (0, 0) to (1 m, 0) through ${bends}\nline b = (0, 1 mm) to (1 m, 0) through ${bends}\n${repeated(2, "let k = x(meet(a, b))")}\n}`,
    ["limit-effort"],
  ],
  [
    "a curve of hundreds of spans measured again and again, 2 * 10^8 spans",
    `piece a {\ncurve a = (0, 0) to (1 m, 0) through ${bends}\n${repeated(2, "let k = length(a) + length(a)")}\n}`,
    ["limit-effort"],
  ],
];

// Another job on the machine may slow one try down, not three.
describe.each(bombs)("%s", { retry: 2 }, (_, body, codes) => {
  const text = `chalkline 1\n${body}\n`;

  // What multiplies lines ends within a second; what is heavy by its geometry may take a few.
  const seconds = codes.includes("limit-effort") ? 4 : 1;

  test(`is told within ${seconds} s of computing`, () => {
    let found: string[] = [];
    const took = timed(() => {
      found = drafted(text).findings.map(({ code }) => code);
    });
    expect(codes.every((code) => found.includes(code))).toBe(true);
    expect(took).toBeLessThan(1000 * seconds);
  });

  test("and in far less than 512 MB", () => {
    const folder = workroom(["bomb.chalk", text]);
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ["--max-old-space-size=256", program, "check", "--format", "short", join(folder, "bomb.chalk")],
      { cwd: folder, encoding: "utf8", timeout: 30_000 },
    );
    expect([status, stderr]).toEqual([1, ""]);
    for (const code of codes) expect(stdout).toContain(`error ${code}`);
  });
});

test("sixty pieces with twenty long labels each are drawn in far less than 512 MB", () => {
  const label = `repeat 20 as i { label "${times(400, "x")}" at (0, 0) }`;
  const piece = (name: string): string =>
    `piece ${name} {\nline t = (0, 0) to (1 m, 0)\nline s = (1 m, 0) to (1 m, 1 m)\nline u = (1 m, 1 m) to (0, 0)\noutline t, s, u\n${label}\n}`;
  const pieces = Array.from({ length: 60 }, (_, index) => piece(`p${index}`)).join("\n");
  const folder = workroom(["full.chalk", `chalkline 1\n${pieces}\n`]);
  const drawing = ["--max-old-space-size=384", program, "draw", "full.chalk", "--out", "drawn"];
  const { status, stderr } = spawnSync(process.execPath, drawing, { cwd: folder, encoding: "utf8", timeout: 50_000 });
  // Outlines without a grain line may be found fault with; nothing more may.
  expect([0, 1]).toContain(status);
  expect(stderr).not.toMatch(/heap|itself failed/);
  expect(readdirSync(join(folder, "drawn")).length).toBeGreaterThan(60);
});
