// What is found out about a hang, against the trade's rule of where fullness falls and against closed forms.
import { expect, test } from "vitest";
import { dipOf } from "../../kernel/cloth/hang/dip.ts";
import { hangFindings, type PanelFinding } from "../../kernel/cloth/hang/hang-findings.ts";
import { hungBefore, hungHem } from "../../kernel/cloth/hang/hung-hem.ts";
import { slackAtLevels } from "../../kernel/cloth/hang/slack-at-levels.ts";
import { slackAtSeams, slackInThirds } from "../../kernel/cloth/hang/slack-between.ts";
import { hangFindingsJson } from "../../kernel/report/hang-findings-json.ts";
import type { Garment } from "../../kernel/working.ts";
import { workedRecipe, workedText } from "../worked-recipe.ts";
import { centerCoat, middleCoat, sideCoat, straightCoat } from "./coats.ts";

const coat = (garment: Garment) => hungHem(garment.pieces.get("coat")!)!;

// 300 mm straight across at the hem, 1000 mm down: an arc of 2000 asin(0.15) mm.
const arc = 2000 * Math.asin(0.15);

// Common practice, no source: fullness added at the side hangs at the side, in mid-piece in mid-piece, at the fold at the fold.
test.each([
  ["the fold", centerCoat, 0],
  ["mid-piece", middleCoat, 1],
  ["the side", sideCoat, 2],
])("fullness added at %s hangs in that third of the piece", (_, garment, third) => {
  const thirds = slackInThirds(coat(garment).hem);
  thirds.forEach((slack, index) => {
    expect(Math.abs(slack - (index === third ? arc : 0))).toBeLessThan(5);
  });
});

test.each([
  ["the fold", centerCoat, 0],
  ["mid-piece", middleCoat, 0],
  ["the side", sideCoat, arc],
])("fullness added at %s is over the side seam, or is not", (_, garment, expected) => {
  const [side, ...others] = slackAtSeams(coat(garment));
  expect(others).toEqual([]);
  expect(side!.edge).toBe("side");
  expect(Math.abs(side!.slack - expected)).toBeLessThan(5);
});

test.each([
  ["the fold", centerCoat],
  ["mid-piece", middleCoat],
  ["the side", sideCoat],
])("fullness opened at %s grows with the way down", (_, garment) => {
  const levels = slackAtLevels(coat(garment));
  expect(levels.map(({ share }) => share)).toEqual([0.25, 0.5, 0.75, 1]);
  for (const { share, slack, down, flat, hung } of levels) {
    expect(Math.abs(down - 1000 * share)).toBeLessThan(3);
    // Of an arc so far from its hinge; the columns stand up to 40 mm apart at the hem, and their chords are that much shorter.
    expect(Math.abs(slack - arc * share)).toBeLessThan(5);
    expect(flat - hung).toBeCloseTo(slack, 6);
  }
});

test("a straight coat has no slack at any level, and does not dip", () => {
  const straight = hungHem(straightCoat.pieces.get("straight")!)!;
  for (const { slack } of slackAtLevels(straight)) expect(Math.abs(slack)).toBeLessThan(0.01);
  expect(dipOf(straight).most).toBeLessThan(0.01);
});

const panel = (lines: string): Garment =>
  workedText(`chalkline 1
units mm
piece block {
  point corner = (240 mm, 600 mm)
  line waist  = (0, 0) to (240 mm, 0)
  line side   = (240 mm, 0) to corner
  line hem    = (0, 600 mm) to corner
  line center = (0, 0) to (0, 600 mm)
  outline waist, side, hem, center
  mark hem as hem
  mark center as fold
}
piece panel = block {
${lines}
}
`).garment;

const dip = (lines: string) => {
  const now = hungHem(panel(lines).pieces.get("panel")!)!;
  return { ...dipOf(now, hungBefore(now)), hem: now.hem };
};

test("a hem that slants down to the side by 30 is to be raised there by 30, and halfway by 15", () => {
  const { most, raises, lowest } = dip("  move corner to corner down 30 mm");
  expect(most).toBeCloseTo(30, 6);
  expect(lowest.at).toBeCloseTo(Math.hypot(240, 30), 6);
  expect(lowest.flat).toEqual({ x: 240, y: 630 });
  for (const { at, by } of raises) expect(by).toBeCloseTo((30 * at) / Math.hypot(240, 30), 6);
});

test("a corner moved out by 120 hangs as far down as it is away from the end of the waist", () => {
  // Hypotenuse of 120 and 600, less 600.
  expect(dip("  move corner to corner right 120 mm").most).toBeCloseTo(Math.hypot(120, 600) - 600, 6);
});

test("across an opening that is left straight the hem hangs short by the height of its arc; trued it does not", () => {
  // The chord of 120 across a radius of 600; the places of the hem, 40 mm apart at most, need not hit its middle.
  const sagitta = 600 - Math.sqrt(600 * 600 - 60 * 60);
  const opened = "  spread-from waist at 50% to hem by 120 mm";
  expect(Math.abs(dip(opened).most - sagitta)).toBeLessThan(0.4);
  expect(dip(`${opened}\n  true-seam hem`).most).toBeLessThan(0.5);
});

test("a hem is held against the one it was made from, which need not be level", () => {
  const text = panel("").pieces;
  expect(text.size).toBe(2);
  const shaped = workedText(`chalkline 1
units mm
piece block {
  line waist  = (0, 0) to (240 mm, 0)
  line side   = (240 mm, 0) to (240 mm, 640 mm)
  line hem    = (0, 600 mm) to (240 mm, 640 mm)
  line center = (0, 0) to (0, 600 mm)
  outline waist, side, hem, center
  mark hem as hem
}
piece panel = block {
  extend-hem hem by 50 mm
}
`).garment.pieces.get("panel")!;
  const now = hungHem(shaped)!;
  expect(dipOf(now).most).toBeGreaterThan(39);
  expect(dipOf(now, hungBefore(now)).most).toBeLessThan(0.01);
});

const coatFindings = (file: string) => hangFindings(workedRecipe(file).garment);

test("the panels of a round share its slack, each as often as it goes round", () => {
  const { rounds } = coatFindings("lobby-coat-swing.chalk");
  const [body] = rounds;
  expect(rounds.map(({ around }) => around)).toEqual(["body", "arm"]);
  expect(body!.panels.map(({ piece, times }) => [piece, times])).toEqual([
    ["back", 2],
    ["front", 2],
  ]);
  const sum = (of: (panel: PanelFinding) => number): number => body!.panels.reduce((all, each) => all + of(each), 0);
  expect(sum(({ share }) => share)).toBeCloseTo(1, 9);
  expect(sum(({ slack, times }) => slack * times)).toBeCloseTo(body!.slack, 9);
  expect(sum(({ folds, times }) => folds.count * times)).toBe(body!.folds);
  for (const { slack, thirds, levels } of body!.panels) {
    expect(thirds[0] + thirds[1] + thirds[2]).toBeCloseTo(slack, 6);
    expect(levels.at(-1)!.slack).toBeCloseTo(slack, 0);
  }
  // The back is opened at the center by 4 cm besides, and carries more than half.
  expect(body!.panels[0]!.share).toBeGreaterThan(0.5);
  expect(body!.panels[0]!.beside).toEqual(["center", "side"]);
});

test("six gores alike carry it all, alike on both sides", () => {
  const [{ panels }] = coatFindings("gored-skirt.chalk").rounds as [ReturnType<typeof coatFindings>["rounds"][number]];
  expect(panels.map(({ times, share }) => [times, share])).toEqual([[6, 1]]);
  expect(Math.abs(panels[0]!.thirds[0] - panels[0]!.thirds[2])).toBeLessThan(1);
});

test("as JSON it is plain data", () => {
  const json = JSON.parse(JSON.stringify(hangFindingsJson(coatFindings("lobby-coat-swing.chalk")))) as {
    rounds: { panels: { piece: string; raise: { by: number }[]; dip: number }[] }[];
  };
  const [{ panels }] = json.rounds as [(typeof json.rounds)[number]];
  for (const { raise, dip: most } of panels) expect(Math.max(...raise.map(({ by }) => by))).toBe(most);
});
