// How the line at the cursor is written, and which part of it is asked for. The mark | is the cursor.
import { expect, test } from "vitest";
import { signatureHelp } from "../../../editor/assist/signature-help.ts";
import { signature } from "../../../grammar/phrase.ts";
import { chalkline } from "../../worked-recipe.ts";
import { marked } from "./marked.ts";

/** The sentence with the slot at the cursor between « and ». */
const shown = (recipe: string): string | undefined => {
  const { worked, offset } = marked(recipe);
  const help = signatureHelp(worked, offset);
  if (!help) return undefined;
  const { label, slots } = help.signatures[help.active]!;
  const slot = help.activeSlot === undefined ? undefined : slots[help.activeSlot];
  return slot ? `${label.slice(0, slot.from)}«${label.slice(slot.from, slot.to)}»${label.slice(slot.to)}` : label;
};

test("each clause has its slot", () => {
  const spread = (line: string): string | undefined => shown(`piece p {\n  ${line}\n}`)?.split(" [")[0];
  expect(spread("spread-from |")).toBe("spread-from «PLACE» to EDGE-OR-PLACE by LENGTH-OR-ANGLE");
  expect(spread("spread-from A to |")).toBe("spread-from PLACE to «EDGE-OR-PLACE» by LENGTH-OR-ANGLE");
  expect(spread("spread-from A to hem by |")).toBe("spread-from PLACE to EDGE-OR-PLACE by «LENGTH-OR-ANGLE»");
  expect(spread("spread-from A | to hem by 3 cm")).toBe("spread-from «PLACE» to EDGE-OR-PLACE by LENGTH-OR-ANGLE");
});

test("of several forms, the one counts whose clauses the line has", () => {
  expect(shown("piece p {\n  arc a = A to B around |\n}")).toContain("around «PLACE»");
  expect(shown("piece p {\n  arc a = A to B radius |\n}")).toContain("radius «LENGTH»");
});

test("a name that is to be given is a slot too", () => {
  expect(shown("piece p {\n  point |\n}")).toBe("point «NAME» = PLACE");
  expect(shown("let |")).toBe("let «NAME» = VALUE");
});

test("in the brackets of a function, its values are told", () => {
  expect(shown("let a = distance(|")).toBe("distance(«a», b)");
  expect(shown("let a = max(distance(A, |), 3 cm)")).toBe("distance(a, «b»)");
  expect(shown("let a = max(distance(A, B), |)")).toBe("max(a, «b», …)");
});

test("a step of the recipe's own is told by its parameters", () => {
  expect(shown("step trimmed (edge bottom, length amount = 5 cm) {\n}\npiece p {\n  trimmed bottom |\n}")).toBe(
    "trimmed bottom «EDGE» [amount LENGTH]",
  );
});

test("a line that has not begun, and a comment, have no sentence", () => {
  expect(shown("|")).toBeUndefined();
  expect(shown("let a = 3 cm # a |")).toBeUndefined();
});

test("the sentence reads as in the manual, for every form of every step", () => {
  for (const [verb, forms] of chalkline.parse({ file: "", text: "" }).forms) {
    const { worked, offset } = marked(`${verb} |`);
    const help = signatureHelp(worked, offset);
    forms.forEach(({ parts = [] }, index) => {
      if (!help) return;
      const { label, slots } = help.signatures[index]!;
      expect(label.replace(/ \(KIND NAME, …\)| \{ … \}/g, "")).toBe(signature(parts));
      for (const { from, to } of slots) expect(label.slice(from, to)).not.toMatch(/^\s|^$/);
    });
  }
});
