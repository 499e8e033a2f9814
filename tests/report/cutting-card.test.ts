// The cutting card as data and in words: hand-worked values of a small garment, and every recipe's card on paper.
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { noRemarks } from "../../kernel/drawing/remarks.ts";
import { svg } from "../../kernel/export/svg.ts";
import { cardEntries } from "../../kernel/report/card-entries.ts";
import { cutWays } from "../../kernel/report/cut-ways.ts";
import { cuttingCard } from "../../kernel/report/cutting-card.ts";
import { lettersOf } from "../../kernel/report/said.ts";
import { entryLines } from "../../kernel/written/entry-lines.ts";
import { writtenPages } from "../../kernel/written/written-pages.ts";
import { workedRecipe, workedText } from "../worked-recipe.ts";

const apron = `chalkline 1
recipe "Usher's apron" {
  by "the wardrobe workroom"
}
units cm
measure waist-girth = 70 cm from 50 cm to 150 cm "Round the waist"
fabric shell "drill" width 150 cm weight 240 gsm one-way
piece apron {
  point top = (0, 0)
  point top-side = top right 30 cm
  point low-side = top-side down 60 cm
  point low = top down 60 cm
  line waist = top to top-side
  line side = top-side to low-side
  line hem = low to low-side
  line center = top to low
  outline waist, side, hem, center
  mark center as fold
  mark hem as hem
  gather waist into 20 cm
  allow waist, side by 1 cm
  allow hem by 3 cm
  label "nap down"
}
piece band {
  point a = (0, 0)
  point b = a right 20 cm
  point c = b down 4 cm
  point d = a down 4 cm
  line upper = a to b
  line short = b to c
  line lower = d to c
  line center = a to d
  outline upper, short, lower, center
  mark center as fold
}
piece draft {
  point a = (0, 0)
}
seam apron.waist with band.lower
cut apron 1 from shell
cut band 2 from shell
`;

test("the card holds what is cut of which cloth, and leaves out what is not cut", () => {
  const outcome = workedText(apron);
  const card = cuttingCard(outcome, { ...noRemarks, choices: ["size 12"], version: "3f0a91c" });
  expect(card.title).toBe("Usher's apron");
  expect(card.fields).toEqual([{ name: "by", text: "the wardrobe workroom" }]);
  expect(card.body).toEqual([{ name: "waist-girth", text: "70 cm" }]);
  expect(card.cloths).toEqual([{ name: "shell", title: "drill", width: 1500, weight: 240, oneWay: true }]);
  expect(card.pieces).toEqual([
    { name: "apron", cuts: ["1 of shell, on the fold"], labels: ["nap down"] },
    { name: "band", cuts: ["2 of shell, each on the fold"], labels: [] },
  ]);
});

test("measures are as sewn, with how often they come in the garment", () => {
  const { measures } = cuttingCard(workedText(apron), noRemarks);
  // 30 cm gathered into 20 cm; on the fold, so twice in the garment; two bands on the fold have four ends.
  expect(measures).toContainEqual({
    piece: "apron",
    edge: "waist",
    role: "seam",
    sewn: 200,
    cut: 300,
    allowance: 10,
    times: 2,
  });
  expect(measures).toContainEqual({ piece: "apron", edge: "hem", role: "hem", sewn: 300, allowance: 30, times: 2 });
  expect(measures).toContainEqual({ piece: "band", edge: "short", role: "seam", sewn: 40, times: 4 });
  expect(measures.filter(({ edge }) => edge === "center")).toEqual([]);
});

test("seams come in the order of the recipe, steps in words, allowances among the measures only", () => {
  const { seams, steps, cautions } = cuttingCard(workedText(apron), noRemarks);
  expect(seams).toMatchObject([
    { first: ["apron.waist"], second: ["band.lower"], firstLength: 200, secondLength: 200, verdict: "pass" },
  ]);
  expect(steps.map(({ words }) => words).join(" ")).toContain("30 cm of waist into 20 cm");
  expect(steps.map(({ words }) => words).join(" ")).not.toMatch(/^allowed/);
  expect(cautions.length).toBeGreaterThan(0);
});

test("cautions are those that the garment asks for", () => {
  const { cautions } = cuttingCard(workedText(apron.replaceAll("apron", "cloak")), noRemarks);
  // Source: handbook of the trade, section 11, on capes and cloaks.
  expect(cautions.join(" ")).toContain("Capes and cloaks catch.");
});

test("how pieces lie to one another: two are a mirrored pair", () => {
  const cut = (count: number): string[] => {
    const text = apron
      .replace("  mark center as fold\n  mark hem", "  mark hem")
      .replace("cut apron 1", `cut apron ${count}`);
    return cutWays(workedText(text).garment, "apron");
  };
  // Source: handbook of the trade, section 9.1: "Cut 2" means a mirrored pair, "Cut 1 single, right side up".
  expect(cut(1)).toEqual(["1 of shell, single, right side up"]);
  expect(cut(2)).toEqual(["2 of shell, a mirrored pair"]);
  expect(cut(3)).toEqual(["3 of shell, a mirrored pair and 1 single"]);
  expect(cut(4)).toEqual(["4 of shell, 2 mirrored pairs"]);
  expect(cutWays(workedText(apron).garment, "draft")).toEqual([]);
});

const folder = fileURLToPath(new URL("../../recipes/", import.meta.url));
const recipes = ["", "blocks/"].flatMap((under) =>
  readdirSync(folder + under)
    .filter((name) => name.endsWith(".chalk"))
    .map((name) => under + name),
);

test.each(recipes)("%s has a card of three pages at most, the same bytes each time", (file) => {
  const made = () => {
    const outcome = workedRecipe(file);
    return writtenPages(outcome.garment.title, cardEntries(cuttingCard(outcome, noRemarks))).map((page) => svg(page));
  };
  const [first, second] = [made(), made()];
  expect(first.length).toBeGreaterThanOrEqual(1);
  expect(first.length).toBeLessThanOrEqual(3);
  expect(second).toEqual(first);
});

test("a recipe with nothing but a title has a card too, which says what the recipe does not", () => {
  const outcome = workedText('chalkline 1\nrecipe "Nothing yet"\nunits cm\n');
  const text = entryLines(cardEntries(cuttingCard(outcome, noRemarks)), 80)
    .map(lettersOf)
    .join("\n");
  expect(text).toContain("The recipe names no cloth.");
  expect(text).toContain("The recipe tells no seams.");
});

test("labels and titles cannot steer a terminal or run in a page", () => {
  const hostile = apron
    .replace('"nap down"', '"<script>alert(1)</script>\u202e\u0007=1+1"')
    .replace('"Usher\'s apron"', '"\u001b[31mred]]>&<svg onload=x>"')
    .replace('"drill"', '"@cloth\u2066\u009b"');
  const outcome = workedText(hostile);
  const entries = cardEntries(cuttingCard(outcome, noRemarks));
  const said = entryLines(entries, 100).map(lettersOf).join("\n");
  const drawn = writtenPages(outcome.garment.title, entries)
    .map((page) => svg(page))
    .join("\n");
  // Sources: Unicode Standard Annex 9, section 2; ECMA-48 on control characters.
  const steering = /[\p{Cc}\u202a-\u202e\u2066-\u2069]/u;
  expect(said.replaceAll("\n", "")).not.toMatch(steering);
  expect(drawn.replaceAll("\n", "")).not.toMatch(steering);
  expect(drawn).not.toMatch(/<script|<svg onload/);
  expect(drawn).toContain("&lt;script&gt;");
});
