// The picture in the README: one coat with the same width added to its back in three places. The file is what is drawn now;
// CHALKLINE_UPDATE=1 rewrites it.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { type Figure, figuresOf } from "../../kernel/cloth/hang/figures.ts";
import { keyTo } from "../../kernel/cloth/hang/hang-sheet.ts";
import { hangSvg } from "../../kernel/cloth/hang/hang-svg.ts";
import { rigged } from "../../kernel/cloth/hang/rigged.ts";
import { workedText } from "../worked-recipe.ts";

const file = fileURLToPath(new URL("../../recipes/pictures/where-fullness-hangs.svg", import.meta.url));

const coat = (line: string): readonly Figure[] => {
  const { garment, findings } = workedText(`chalkline 1
recipe "Lobby coat"
units cm
use "blocks/straight-coat.chalk" as straight
piece back = straight.back {
  strip center by 1.5 cm
  mark center as fold
  ${line}
  true-seam hem
}
piece front = straight.front {
}
seam front.side with back.side
`);
  // Opened at the side, the armhole gets a corner over the side seam; that is a finding, and here only the hang counts.
  expect(findings.filter(({ severity, code }) => severity === "error" && code !== "seam-smooth")).toEqual([]);
  const { rounds, columns, straight } = rigged(garment);
  return figuresOf(rounds[0]!, columns, straight);
};

const coats = [
  { title: "14 cm at the center", figures: coat("spread-from nape to hem by 14 cm along center") },
  { title: "14 cm at mid-shoulder", figures: coat("spread-from shoulder at 50% to hem by 14 cm") },
  { title: "14 cm at the side", figures: coat("flare-side side to hem by 14 cm") },
];

const from = (way: Figure["from"]) =>
  coats.map(({ title, figures }) => ({ title, figure: figures.find((figure) => figure.from === way)! }));

const picture = hangSvg({
  title: "Lobby coat: 14 cm more hem on each half of the back, opened in three places",
  units: "cm",
  rows: [from("front"), from("below").map((each) => ({ ...each, title: "from below" }))],
  notes: [keyTo("cm")],
});

if (process.env.CHALKLINE_UPDATE) writeFileSync(file, picture);

test("the picture of where fullness hangs is up to date (npm run test:update)", () => {
  expect(readFileSync(file, "utf8")).toBe(picture);
});

// Common practice, no source: fullness hangs below the point it was opened from, and nowhere else.
test.each([
  ["at the center, the folds fall in the middle of the back", 0, (x: number) => Math.abs(x) < 120],
  ["at mid-shoulder, they fall in the middle of each half", 1, (x: number) => Math.abs(x) > 60 && Math.abs(x) < 260],
  ["at the side, they fall outside of everything that was there", 2, (x: number) => Math.abs(x) > 190],
] as const)("opened %s", (_, index, isThere) => {
  const { shapes } = from("front")[index]!.figure;
  const crests = shapes.flatMap((shape) => (shape.kind === "crest" ? [shape.along.at(-1)!.x] : []));
  expect(crests.length).toBeGreaterThan(0);
  expect(crests.filter((x) => !isThere(x))).toEqual([]);
});
