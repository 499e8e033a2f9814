// chalkline check: what it says, in which form, and how it exits.
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, panel, workroom } from "./chalkline.ts";

beforeAll(build);

const unequal = `chalkline 1
units cm
piece front {
  line top = (0, 0) to (25 cm, 0)
  line side = (25 cm, 0) to (25 cm, 40.3 cm)
  line hem = (0, 40.3 cm) to (25 cm, 40.3 cm)
  line opening = (0, 0) to (0, 40.3 cm)
  outline top, side, hem, opening
  grain along opening
}
piece back {
  line top = (0, 0) to (25 cm, 0)
  line side = (25 cm, 0) to (25 cm, 40 cm)
  line hem = (0, 40 cm) to (25 cm, 40 cm)
  line center = (0, 0) to (0, 40 cm)
  outline top, side, hem, center
  grain along center
}
seam front.side with back.side
`;

test("a clean recipe gets one line and exit code 0", () => {
  const { code, out, err } = chalkline(workroom(["panel.chalk", panel]), ["check", "panel.chalk"]);
  expect(out).toMatch(/^panel\.chalk: 2 pieces, \d+ checks, clean\n$/);
  expect([code, err]).toEqual([0, ""]);
});

test("a finding shows its line, carets under what is to blame, what to try, and the other parties with their lines", () => {
  const { code, out } = chalkline(workroom(["vest.chalk", unequal]), ["check", "vest.chalk"]);
  expect(code).toBe(1);
  const [first] = out.split("\n\n");
  expect(first).toBe(`error seam-length   vest.chalk:19
  19 | seam front.side with back.side
     | ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  The side of front is 0.3 cm longer than the side of back.
  Try: say \`ease 0.3 cm\` if the longer side is to be eased in; otherwise bring one of them to its
  length with \`true-seam EDGE to LENGTH moving end\`.
  The side of front is drawn here:
   5 |   line side = (25 cm, 0) to (25 cm, 40.3 cm)
     |   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  The side of back is drawn here:
  13 |   line side = (25 cm, 0) to (25 cm, 40 cm)
     |   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^`);
  expect(out).toMatch(/vest\.chalk: 2 pieces, \d+ checks, 1 error/);
});

test("warnings alone exit with 0", () => {
  const { code, out } = chalkline(
    workroom([
      "a.chalk",
      panel.replace("  grain (15 cm, 20 cm) to (15 cm, 80 cm)\n", "") +
        'fabric shell "drill" width 150 cm\ncut panel 1 from shell\n',
    ]),
    ["check", "a.chalk"],
  );
  expect(out).toContain("warning ");
  expect(out).not.toContain("error ");
  expect(code).toBe(0);
});

test("what a recipe accepts is listed with its reason, and does not count as a finding", () => {
  const bias = panel.replace("  grain (15 cm, 20 cm) to (15 cm, 80 cm)\n", "");
  const accepted = `${bias}fabric shell "drill" width 150 cm\ncut panel 1 from shell\naccept allowance-said on panel because "it is felt, which does not fray"\naccept grain-present on panel because "felt has no grain"\n`;
  const { code, out } = chalkline(workroom(["a.chalk", accepted]), ["check", "a.chalk"]);
  expect(code).toBe(0);
  expect(out).toContain("accepted allowance-said on panel");
  expect(out).toContain("Accepted because: it is felt, which does not fray");
  expect(out).toContain("Accepted because: felt has no grain");
  expect(out).toMatch(/clean, 2 accepted\n$/);
});

test("several files and a folder are checked in turn; the worst decides the exit code", () => {
  const folder = workroom(["all/b.chalk", unequal], ["all/deep/a.chalk", panel], ["all/notes.txt", "no recipe"]);
  const { code, out } = chalkline(folder, ["check", "all"]);
  expect(code).toBe(1);
  expect(out.indexOf("all/b.chalk: 2 pieces")).toBeLessThan(out.indexOf("all/deep/a.chalk: 2 pieces"));
  const missing = chalkline(folder, ["check", "all/none.chalk", "all/deep/a.chalk"]);
  expect(missing.code).toBe(2);
  expect(missing.err).toBe("error: There is no file all/none.chalk.\n");
  expect(missing.out).toContain("all/deep/a.chalk: 2 pieces");
  mkdirSync(join(folder, "bare"));
  expect(chalkline(folder, ["check", "bare"])).toEqual({
    code: 2,
    out: "",
    err: "error: There is no .chalk file in the folder bare.\n",
  });
});

test("a fault in a block that two recipes use is told once", () => {
  const block = "chalkline 1\nlet a = nothing-there\n";
  const user = 'chalkline 1\nuse "block.chalk" as block\n';
  const folder = workroom(["block.chalk", block], ["one.chalk", user], ["two.chalk", user]);
  const { out } = chalkline(folder, ["check", "."]);
  expect(out.match(/error name-unknown {3}block\.chalk:2/g)).toHaveLength(1);
  expect(out).toContain("two.chalk: 0 pieces, 0 checks, 1 error");
});

test("a finding inside a step of the recipe's own shows the call as well", () => {
  const recipe = `chalkline 1
units cm
step mark-at (edge where, length amount = 2 cm) {
  point spot = where at amount
}
piece strap {
  line top = (0, 0) to (10 cm, 0)
  mark-at where top amount 30 cm
}
`;
  const { out } = chalkline(workroom(["strap.chalk", recipe]), ["check", "strap.chalk"]);
  expect(out).toContain("error beyond-edge   strap.chalk:4\n  4 |   point spot = where at amount\n");
  expect(out).toContain("  It came to this from here:\n  8 |   mark-at where top amount 30 cm\n");
});

test("--format short gives one line a finding", () => {
  const { code, out } = chalkline(workroom(["vest.chalk", unequal]), ["check", "--format", "short", "vest.chalk"]);
  expect(out.split("\n")[0]).toBe(
    "vest.chalk:19:1: error seam-length: The side of front is 0.3 cm longer than the side of back.",
  );
  expect(code).toBe(1);
});

test("--json gives places from 1 with the end behind the last character, and the fix", () => {
  const recipe = "chalkline 1\nunits cm\npiece strap {\n  point A = (8, 0)\n}\n";
  const { code, out } = chalkline(workroom(["strap.chalk", recipe]), ["check", "--json", "strap.chalk"]);
  const report = JSON.parse(out);
  expect(report.schema).toBe(1);
  // `  point A = (8, 0)`: the 8 stands in column 14.
  expect(report.findings[0]).toMatchObject({
    file: "strap.chalk",
    line: 4,
    column: 14,
    endLine: 4,
    endColumn: 15,
    severity: "error",
    code: "value-kind",
    hint: "Write 8 cm.",
    fix: { file: "strap.chalk", line: 4, column: 14, endLine: 4, endColumn: 15, text: "8 cm" },
  });
  expect(report.files).toMatchObject([{ file: "strap.chalk", verdict: "error", incomplete: true }]);
  expect(code).toBe(1);
});

test("--json tells of a file that cannot be read", () => {
  const { code, out } = chalkline(workroom(), ["check", "--json", "none.chalk"]);
  expect(JSON.parse(out)).toMatchObject({
    schema: 1,
    files: [{ file: "none.chalk", verdict: "unreadable", code: "file-missing" }],
    findings: [],
  });
  expect(code).toBe(2);
});

test("- is standard input, and uses recipes from the working directory", () => {
  const folder = workroom(["blocks/panel.chalk", panel]);
  const recipe = 'chalkline 1\nuse "blocks/panel.chalk" as block\npiece narrow = block.panel { }\n';
  const { code, out } = chalkline(folder, ["check", "-"], { input: recipe });
  expect(out).toMatch(/^<stdin>: 1 piece, \d+ checks, clean\n$/);
  expect(code).toBe(0);
});

test("a very long line is shown around the carets only", () => {
  const recipe = `chalkline 1\nlet a = max(${"1, ".repeat(500)}missing)\n`;
  const { out } = chalkline(workroom(["a.chalk", recipe]), ["check", "a.chalk"]);
  const [, line, carets] = out.split("\n");
  expect(line!.length).toBeLessThan(130);
  expect(line!.slice(carets!.indexOf("^"), carets!.lastIndexOf("^") + 1)).toBe("missing");
});

test("carets stand under letters that are two columns wide", () => {
  const { out } = chalkline(workroom(["a.chalk", 'chalkline 1\nrecipe "外套" { by missing }\n']), ["check", "a.chalk"]);
  const [, line, carets] = out.split("\n");
  // Two letters of two columns each stand before the word: two columns more than characters.
  expect(carets!.indexOf("^") - line!.indexOf("missing")).toBe(2);
});

test("nothing in a recipe or a file name steers the terminal", () => {
  const controls = Array.from({ length: 32 }, (_, code) => String.fromCharCode(code)).filter(
    (sign) => !/[\n\r\0]/.test(sign),
  );
  const nasty = `${controls.join("")}\u007f\u009b31m\u202e\u2066\u200f`;
  const recipe = `chalkline 1\nrecipe "${nasty}"\npiece p {\n  label "${nasty}"\n  line ${nasty} = A to B\n}\n`;
  const folder = workroom(["a\u001b[31m.chalk", recipe]);
  const runs = [
    ["check", "."],
    ["check", "--format", "short", "."],
    ["measure", "a\u001b[31m.chalk"],
    ["tidy", "--check", "."],
    ["check", "b\u001b[31m.chalk"],
    ["\u001b[31m"],
    ["steps", "\u001b[31m"],
  ];
  for (const args of runs) {
    const { code, out, err } = chalkline(folder, args);
    expect(out + err, args.join(" ")).not.toMatch(/[^\n\P{Cc}]|[\u200f\u202a-\u202e\u2066-\u2069]/u);
    expect((out + err).length, args.join(" ")).toBeGreaterThan(0);
    expect(code, args.join(" ")).toBeGreaterThan(0);
  }
});
