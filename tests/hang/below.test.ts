// The hem from below as a program reads it: which way round it lies, which piece a fold is of, what goes round an arm and not
// round the body, and what is said of pieces that the recipe leaves open.
import { expect, test } from "vitest";
import { type Figure, figuresOf } from "../../kernel/cloth/hang/figures.ts";
import { hangFindings } from "../../kernel/cloth/hang/hang-findings.ts";
import { hungRounds } from "../../kernel/cloth/hang/hang-sheet.ts";
import { hangers } from "../../kernel/cloth/hang/hanger.ts";
import { hungExactly } from "../../kernel/cloth/hang/hung.ts";
import { rigged } from "../../kernel/cloth/hang/rigged.ts";
import { roundNotes } from "../../kernel/cloth/hang/round-notes.ts";
import { roundsOf } from "../../kernel/cloth/hang/rounds.ts";
import type { HungPlace } from "../../kernel/cloth/hang/slack.ts";
import { hemSeenFromBelow, standing } from "../../kernel/cloth/hang/standing.ts";
import { hangJson } from "../../kernel/report/hang-json.ts";
import type { Garment } from "../../kernel/working.ts";
import { workedRecipe, workedText } from "../worked-recipe.ts";
import { straightCoat } from "./coats.ts";

const rounds = (garment: Garment): string[] =>
  roundsOf(hangers(garment), garment).map(({ turns, around }) =>
    [around, ...turns.map(({ piece, isReversed }) => `${piece}${isReversed ? "'" : ""}`)].join(" "),
  );

const notes = (garment: Garment): string[] => roundNotes(hangers(garment), garment);

test("right stays right, and the side that one looks at lies at the top", () => {
  // 1200 mm of cloth round 1000, its slack between 50 and 150 mm to the right of the middle of the near side.
  const columns = Array.from({ length: 61 }, (_, index): HungPlace[] => {
    const flat = index * 20;
    const x = flat - Math.max(0, Math.min(flat, 350) - 150);
    return [0, 1000].map((y) => ({ flat: { x: flat, y }, hung: { x, y } }));
  });
  const lines = standing({ panels: [{ piece: "wrap", columns }], depth: 0.68, wavelength: 300 });
  const hem = hemSeenFromBelow(lines);
  const crests = lines.flatMap(({ isCrest, spots }, index) =>
    isCrest ? [{ from: hem[index]!, room: spots.at(-1)! }] : [],
  );
  expect(crests.length).toBe(1);
  expect(crests[0]!.room.x).toBeGreaterThan(50);
  expect(crests[0]!.room.z).toBeGreaterThan(50);
  expect(crests[0]!.from).toEqual({ x: crests[0]!.room.x, y: -crests[0]!.room.z });
});

test("every fold tells its place, its depth and its piece, alike on both sides", () => {
  const outcome = workedRecipe("lobby-coat-swing.chalk");
  const json = JSON.parse(
    JSON.stringify(hangJson(hungExactly(outcome.garment), hungRounds(outcome), hangFindings(outcome.garment))),
  ) as {
    folds: {
      count: number;
      plan: [number, number][];
      crests: { at: [number, number]; depth: number; piece: string }[];
    };
  };
  const { count, plan, crests } = json.folds;
  expect(crests.length).toBe(count);
  for (const { at, depth, piece } of crests) {
    expect(plan).toContainEqual(at);
    expect(depth).toBeGreaterThan(0);
    // The back comes first, so it is the side that one looks at.
    expect(piece).toBe(at[1] < 0 ? "back" : "front");
    const off = Math.min(...crests.map((other) => Math.hypot(other.at[0] + at[0], other.at[1] - at[1])));
    expect(off).toBeLessThan(1e-6);
  }
});

test("a fold that is alike on both sides of a seam stands over it", () => {
  const { garment } = workedRecipe("half-circle-skirt.chalk");
  const { rounds: plans, columns, straight } = rigged(garment);
  const { crests } = figuresOf(plans[0]!, columns, straight).find(({ from }) => from === "below") as Figure;
  for (const { at } of crests) {
    expect(Math.min(...crests.map((other) => Math.hypot(other.at.x + at.x, other.at.y - at.y)))).toBeLessThan(1e-6);
  }
});

test("the sleeves of a raglan go round an arm, and no hip is drawn in them", () => {
  const { garment } = workedRecipe("raglan-stage-cloak.chalk");
  expect(rounds(garment)).toEqual(["body back' front front' back", "arm back-sleeve front-sleeve"]);
  expect(rigged(garment, 980).rounds.map(({ hip }) => hip)).toEqual([980, undefined]);
});

test("both legs of trousers are alike, and one is shown", () => {
  const { garment } = workedRecipe("blocks/trousers.chalk");
  const cut = garment.seams[0]!.drawnBy;
  const cuts = ["front", "back"].map((piece) => ({ piece, count: 2, fabric: "shell", drawnBy: cut }));
  expect(rounds({ ...garment, cuts })).toEqual(["leg front back'"]);
});

const gores = `chalkline 1
units cm
fabric shell "serge" width 150 cm
piece wide {
  line waist = (0, 0) to (12 cm, 0)
  line right-side = (12 cm, 0) to (20 cm, 60 cm)
  line hem = (-8 cm, 60 cm) to (20 cm, 60 cm)
  line left-side = (0, 0) to (-8 cm, 60 cm)
  outline waist, right-side, hem, left-side
  mark hem as hem
}
piece narrow = wide {
}
seam wide.right-side with narrow.left-side
seam narrow.right-side with wide.left-side
`;

test("two kinds of gores go round by turns, as often as they are cut", () => {
  const { garment } = workedText(`${gores}cut wide 3 from shell\ncut narrow 3 from shell\n`);
  expect(rounds(garment)).toEqual([`body ${Array(3).fill("wide narrow").join(" ")}`]);
  expect(notes(garment)).toEqual([]);
});

test("where a recipe has no `cut` lines, what goes from center to center is one half", () => {
  const { garment } = workedRecipe("blocks/straight-coat.chalk");
  expect(rounds(garment)).toEqual(["body back' front front' back", "arm sleeve"]);
  expect(notes(garment)).toEqual([
    "No `cut` line says how often back and front are cut: taken as one half of two.",
    "Nothing is sewn to back.center: the hem seen from below is taken to close there.",
  ]);
});

test("a half back by itself goes round with its mirror image, its center in the middle", () => {
  expect(rounds(straightCoat)).toEqual(["body straight' straight"]);
  expect(notes(straightCoat)).toEqual([
    "Nothing is sewn to straight.side: the hem seen from below is taken to close there.",
  ]);
});

test("what is left out is told, with the reason", () => {
  expect(notes(workedRecipe("lobby-coat-straight-again.chalk").garment)).toEqual([
    "plain is left out of the hem seen from below: the recipe does not cut it.",
  ]);
  expect(notes(workedRecipe("lobby-coat-collar.chalk").garment)).toEqual([
    "front-facing is left out of the hem seen from below: nothing is sewn to its sides.",
  ]);
});

test("a recipe that tells all leaves nothing to be taken for granted", () => {
  for (const file of ["lobby-coat-swing", "gored-skirt", "stage-cape", "uneven-jacket"]) {
    expect(notes(workedRecipe(`${file}.chalk`).garment)).toEqual([]);
  }
});
