// Findings as an editor lists them.
import { expect, test } from "vitest";
import { findings, findingsIn } from "../../../editor/assist/findings.ts";
import { edited } from "../../../editor/assist/text-edit.ts";
import { worked } from "./marked.ts";

test("a finding stands where it is to be mended, with its hint and its edit", () => {
  const text = "chalkline 1\npiece p {\n  point A = (0 cm, 0 cm)\n  point B = A right 8\n}\n";
  const [finding] = findings(worked(text));
  expect(text.slice(finding!.from, finding!.to)).toBe("8");
  expect([finding!.line, finding!.severity, finding!.hint]).toEqual([4, "error", "Write 8 cm."]);
  expect(edited(text, finding!.fix!.edits)).toContain("A right 8 cm");
});

test("findings of another file are told apart", () => {
  const recipe = worked('chalkline 1\nuse "blocks/straight-coat.chalk" as straight { coat-length = 3 }\n');
  const all = findings(recipe);
  expect(findingsIn(recipe, "test.chalk")).toEqual(all.filter(({ file }) => file === "test.chalk"));
  expect(findingsIn(recipe, "test.chalk").length).toBeGreaterThan(0);
  expect(findingsIn(recipe, "nowhere.chalk")).toEqual([]);
});
