// sizes: what every edge measures in every size, and growth that no cutter would grade so.
import { expect, test } from "vitest";
import { growth } from "../../kernel/sizes/growth.ts";
import { chalkline, recipeSources } from "../worked-recipe.ts";

const grown = (waist: string, sizes: string) =>
  growth(
    chalkline,
    {
      file: "test.chalk",
      text: `chalkline 1
units cm
measure hip-girth = 96 cm from 70 cm to 170 cm "Hip"
${sizes}
piece panel {
  line waist = (0, 0) to (${waist}, 0)
  line round = (${waist}, 0) to (0, 0) through (${waist}, 60 cm), (0, 60 cm)
  outline waist, round
}
`,
    },
    { sources: recipeSources },
  );

const four =
  "size A { hip-girth = 88 cm }\nsize B { hip-girth = 92 cm }\nsize C { hip-girth = 96 cm }\nsize D { hip-girth = 100 cm }";
const unevenIn = (tables: ReturnType<typeof grown>): (string | undefined)[] =>
  tables.flatMap(({ edges }) => edges.filter(({ edge }) => edge === "waist").map(({ uneven }) => uneven));

test("a quarter of the hip grows a quarter of 4 cm a size (plain sums)", () => {
  const [table] = grown("hip-girth / 4", four);
  expect(table!.edges.find(({ edge }) => edge === "waist")!.lengths).toEqual([220, 230, 240, 250]);
  expect(unevenIn(grown("hip-girth / 4", four))).toEqual([undefined]);
});

test("an edge that grows here and shrinks there is uneven", () => {
  expect(unevenIn(grown("20 cm + abs(hip-girth - 92 cm)", four))).toEqual(["shrinks from A to B, and grows elsewhere"]);
});

test("a jump is uneven", () => {
  expect(unevenIn(grown("max(hip-girth / 4, hip-girth - 74 cm)", four))).toEqual(["jumps from C to D"]);
});

test("uneven steps of the body are no jumps of the edge", () => {
  const steps =
    "size A { hip-girth = 88 cm }\nsize B { hip-girth = 92 cm }\nsize C { hip-girth = 102 cm }\nsize D { hip-girth = 106 cm }";
  expect(unevenIn(grown("hip-girth / 4", steps))).toEqual([undefined]);
});

test("the coat block grows evenly in the workroom's table", () => {
  const text = 'chalkline 1\nuse "blocks/straight-coat.chalk" as straight\npiece back = straight.back { }\n';
  const tables = growth(chalkline, { file: "test.chalk", text }, { sources: recipeSources });
  const working = tables.find(({ table }) => table.endsWith("working-table.chalk"))!;
  expect(working.sizes.map(({ name }) => name)).toEqual(["B80", "B84", "B88", "B92", "B96", "B100", "B104"]);
  expect(working.edges.filter(({ uneven }) => uneven !== undefined)).toEqual([]);
});
