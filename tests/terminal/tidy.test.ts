// chalkline tidy: rewrites only what has to change, and never a recipe that it cannot read.
import { lstatSync, readFileSync, statSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, workroom } from "./chalkline.ts";

beforeAll(build);

const untidy = "chalkline 1\nlet   a=3 cm # kept\n\n\n\nlet b = a+1 cm\n";
const tidied = "chalkline 1\nlet a = 3 cm  # kept\n\nlet b = a + 1 cm\n";

test("rewrites an untidy recipe, and leaves a tidy one alone", () => {
  const folder = workroom(["a.chalk", untidy]);
  expect(chalkline(folder, ["tidy", "a.chalk"])).toEqual({ code: 0, out: "a.chalk: tidied\n", err: "" });
  expect(readFileSync(join(folder, "a.chalk"), "utf8")).toBe(tidied);
  const { mtimeMs, ino } = statSync(join(folder, "a.chalk"));
  expect(chalkline(folder, ["tidy", "a.chalk"]).out).toBe("a.chalk: already tidy\n");
  expect(statSync(join(folder, "a.chalk"))).toMatchObject({ mtimeMs, ino });
});

test("--check changes nothing and exits with 1", () => {
  const folder = workroom(["a.chalk", untidy], ["b.chalk", tidied]);
  expect(chalkline(folder, ["tidy", "--check", "."])).toEqual({
    code: 1,
    out: "a.chalk: not tidy\nb.chalk: already tidy\n",
    err: "",
  });
  expect(readFileSync(join(folder, "a.chalk"), "utf8")).toBe(untidy);
  expect(chalkline(folder, ["tidy", "--check", "b.chalk"]).code).toBe(0);
});

test("a recipe with a line that cannot be read is left alone; the others are tidied", () => {
  const broken = 'chalkline 1\nlet a = "open\n';
  const folder = workroom(["a.chalk", broken], ["b.chalk", untidy]);
  const { code, out, err } = chalkline(folder, ["tidy", "a.chalk", "b.chalk"]);
  expect(code).toBe(1);
  expect(err).toContain("error text-open   a.chalk:2");
  expect(err).toContain("a.chalk: left as it is");
  expect(out).toBe("b.chalk: tidied\n");
  expect(readFileSync(join(folder, "a.chalk"), "utf8")).toBe(broken);
});

test("- goes from standard input to standard output", () => {
  expect(chalkline(workroom(), ["tidy", "-"], { input: untidy })).toEqual({ code: 0, out: tidied, err: "" });
  expect(chalkline(workroom(), ["tidy", "--check", "-"], { input: untidy }).code).toBe(1);
});

test.skipIf(process.platform === "win32")("a link stays a link, and what it points to is tidied", () => {
  const folder = workroom(["real.chalk", untidy]);
  symlinkSync("real.chalk", join(folder, "link.chalk"));
  chalkline(folder, ["tidy", "link.chalk"]);
  expect(lstatSync(join(folder, "link.chalk")).isSymbolicLink()).toBe(true);
  expect(readFileSync(join(folder, "real.chalk"), "utf8")).toBe(tidied);
});
