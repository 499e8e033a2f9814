// Which edit caused what: on a rectangle where it can be told by hand.
import { expect, test } from "vitest";
import { blameOnEdits } from "../../kernel/compare/blame.ts";
import { causeOf, causesOf } from "../../kernel/compare/causes.ts";
import { compareGarments } from "../../kernel/compare/compare-garments.ts";
import { edgeLife } from "../../kernel/compare/edge-life.ts";
import { apron, workedAfresh } from "./compared.ts";

const causesBetween = (before: string, after: string) => {
  const [was, is] = [workedAfresh(before), workedAfresh(after)];
  return causesOf(compareGarments(was, is), was, is, [{ file: "test.chalk", before, after }], (_, text) =>
    workedAfresh(text),
  );
};

test("width and length, changed at once, are told apart", () => {
  const { causes, untried } = causesBetween(
    apron,
    apron.replace("wide = 30 cm", "wide = 32 cm").replace("long = 100 cm", "long = 90 cm"),
  );
  expect(untried).toBe(0);
  expect(causes.map(({ line }) => line).sort()).toEqual([4, 5]);
  const wide = causes.find(({ line }) => line === 4)!;
  expect(wide.was).toBe('param wide = 30 cm from 10 cm to 60 cm "width"');
  const names = wide.undoes.map(({ kind, name }) => `${kind} ${name}`);
  // Without the new width its level edges are as long as before, and B lies where it lay.
  expect(names).toEqual(expect.arrayContaining(["value wide", "edge panel.waist", "place panel.B"]));
  expect(names).not.toContain("edge panel.center");
  // The hem is as long again but still lies higher, and the cloth is still other: made less, not undone.
  expect(wide.eases.map(({ kind, name }) => `${kind} ${name}`)).toContain("edge panel.hem");
  expect(causeOf(causes, { kind: "edge", name: "panel.center" })?.line).toBe(5);
  expect(causeOf(causes, { kind: "edge", name: "panel.waist" })?.line).toBe(4);
});

test("edits that lean on one another are taken back together", () => {
  const after = apron.replace("param wide", "param breadth").replace("right wide", "right breadth + 1 cm");
  const { causes } = causesBetween(apron, after);
  expect(causes.map(({ line, isBound, was }) => [line, isBound, was])).toEqual([
    [4, true, 'param wide = 30 cm from 10 cm to 60 cm "width" / point B = A right wide'],
  ]);
  expect(causes[0]!.undoes).toContainEqual({ kind: "edge", name: "panel.waist" });
  expect(causes[0]!.eases).toEqual([]);
  // One alone has no other to go with.
  const again = apron
    .replace("point pocket", "point bag = B\n  point pocket")
    .replace("side = B to C", "side = bag to C");
  const lone = causesBetween(apron, again.replace("wide = 30 cm", "wide = 31 cm"));
  expect(lone.causes.find(({ was }) => was === "")).toMatchObject({ isBound: true, undoes: [] });
});

test("edits that change nothing cause nothing", () => {
  const { causes } = causesBetween(
    apron,
    apron.replace('"width"', '"how wide"').replace("long = 100 cm", "long = 90 cm"),
  );
  expect(causes.map(({ line }) => line)).toEqual([5]);
});

test("no more edits are tried than anybody reads", () => {
  const lines = Array.from({ length: 60 }, (_, i) => `  point p${i} = A right ${i} mm\n  # ${i}\n`).join("");
  const before = apron.replace("  line waist", `${lines}  line waist`);
  const { untried } = causesBetween(before, before.replace(/right (\d+) mm/g, "right 9$1 mm"));
  expect(untried).toBe(20);
});

test("the life of an edge goes back to the line that drafted it", () => {
  const recipe = `${apron}piece longer = panel {\n  extend-hem hem by 5 cm\n  spread-from waist at 50% to hem by 4 cm\n}\n`;
  const stages = edgeLife(workedAfresh(recipe), "longer", "side");
  expect(stages.slice(0, 2).map(({ record, piece, after }) => [record.step, piece, Math.round(after!)])).toEqual([
    ["line", "panel", 1000],
    ["extend-hem", "longer", 1050],
  ]);
  const hem = edgeLife(workedAfresh(recipe), "longer", "hem");
  // 300 mm, and a straight line over the 40 mm that the slash opens, until the hem is trued.
  expect(hem.map(({ record }) => record.step)).toEqual(["line", "extend-hem", "spread-from"]);
  expect(hem.at(-1)!.after).toBeCloseTo(340, 6);
});

test("of two edits that both move an edge, the one that took its length is named beside it", () => {
  const coat = (by: string, longer: string): string => `${apron}piece copy = panel {
  spread-from waist at 50% to hem by ${by}
  extend-hem hem by ${longer}
}
`;
  const [before, after] = [coat("6 cm", "2 cm"), coat("9 cm", "3 cm")];
  const [was, is] = [workedAfresh(before), workedAfresh(after)];
  const comparison = compareGarments(was, is);
  const causes = causesOf(comparison, was, is, [{ file: "test.chalk", before, after }], (_, text) =>
    workedAfresh(text),
  );
  const lines = before.split("\n");
  const lineOf = (start: string): number => lines.findIndex((line) => line.trim().startsWith(start)) + 1;
  const blame = blameOnEdits(comparison, causes);
  // The wider opening turns the side and leaves its length; only the longer hem lengthens it.
  expect(blame.get("copy.side")?.line).toBe(lineOf("extend-hem"));
  expect(blame.get("copy.hem")?.line).toBe(lineOf("spread-from"));
});
