// What a `hang` line names holds a piece, and nothing else; against closed forms.
import { expect, test } from "vitest";
import type { HungPiece } from "../../kernel/cloth/hang/hung.ts";
import { hungExactly } from "../../kernel/cloth/hang/hung.ts";
import { kernel } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";

// 300 by 1000, with an arm of 18 across and 24 down between top and side.
const bib = `chalkline 1
units mm
piece bib {
  line neck   = (0, 0) to (60 mm, 0)
  line top    = (60 mm, 0) to (120 mm, 0)
  line arm    = (120 mm, 0) to (300 mm, 240 mm)
  line side   = (300 mm, 240 mm) to (300 mm, 1000 mm)
  line hem    = (0, 1000 mm) to (300 mm, 1000 mm)
  line center = (0, 0) to (0, 1000 mm)
  outline center, neck, top, arm, side, hem
  mark hem as hem
  mark center as fold
}
piece sheet {
  line top   = (0, 0) to (300 mm, 0)
  line far   = (300 mm, 0) to (300 mm, 1000 mm)
  line hem   = (0, 1000 mm) to (300 mm, 1000 mm)
  line near  = (0, 0) to (0, 1000 mm)
  outline top, far, hem, near
  mark hem as hem
}
piece scarf {
  line near  = (0, 0) to (0, 400 mm)
  line far   = (0, 0) to (300 mm, 400 mm)
  line hem   = (0, 400 mm) to (300 mm, 400 mm)
  outline far, hem, near
  mark hem as hem
}
`;

const hung = (name: string, lines: string): HungPiece | undefined => {
  const { garment, findings } = kernel(vocabulary).work({ file: "bib.chalk", text: `${bib}${lines}\n` });
  expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
  return hungExactly(garment).pieces.find((piece) => piece.name === name);
};

const ys = (piece: HungPiece): number[] => piece.hem.places.map(({ hung: { y } }) => y);

test("the usual, said out loud, is the usual", () => {
  const said = hung("bib", "hang bib from bib.neck, bib.top held bib.side.start")!;
  const usual = hung("bib", "")!;
  expect(said.holding.spots).toEqual(usual.holding.spots);
  expect(said.hem).toEqual(usual.hem);
});

test("held at one corner a sheet hangs in one line below it", () => {
  const { hem } = hung("sheet", "hang sheet held sheet.top.start")!;
  expect(hem.places.every(({ hung: { x } }) => Math.abs(x) < 1e-9)).toBe(true);
  expect(Math.abs(hem.places[0]!.hung.y - hem.places.at(-1)!.hung.y)).toBeCloseTo(Math.hypot(300, 1000) - 1000, 6);
  // 300 of cloth along a hem that only runs down, by the hypotenuse of 300 and 1000 less 1000.
  expect(hem.slack).toBeCloseTo(300 - (Math.hypot(300, 1000) - 1000), 6);
});

test("held along half of its top, the other half hangs from the end of that", () => {
  const { hem, holding } = hung("sheet", "hang sheet from part(sheet.top, sheet.top.start, sheet.top at 50%)")!;
  expect(holding.edges).toEqual(["top"]);
  const far = hem.places.reduce((a, b) => (b.flat.x > a.flat.x ? b : a));
  expect(far.hung.x).toBeCloseTo(150, 6);
  expect(far.hung.y).toBeCloseTo(Math.hypot(150, 1000), 6);
  const near = hem.places.reduce((a, b) => (b.flat.x < a.flat.x ? b : a));
  expect(near.hung.y).toBeCloseTo(1000, 6);
});

test("held at both corners, its hem is lowest in the middle", () => {
  const piece = hung("sheet", "hang sheet held sheet.top.start, sheet.top.end")!;
  // Places are 20 mm apart, the two nearest to the middle 10 mm off it.
  expect(Math.max(...ys(piece))).toBeCloseTo(Math.hypot(140, 1000), 6);
  expect(Math.min(...ys(piece))).toBeCloseTo(1000, 6);
  expect(piece.holding.edges).toEqual([]);
  expect(piece.hem.slack).toBeLessThan(1);
});

test("a place on an edge that leads down to the hem may hold, too", () => {
  // Hung from its side alone, 240 below the top: the nearest way to every place of the hem begins there.
  const { hem } = hung("bib", "hang bib held bib.side.start")!;
  const far = hem.places.reduce((a, b) => (b.flat.x < a.flat.x ? b : a));
  expect(far.hung.x).toBeCloseTo(300, 6);
  expect(far.hung.y).toBeCloseTo(240 + Math.hypot(300, 760), 6);
});

test("three edges hang by no custom, and do where the recipe says from what", () => {
  expect(hung("scarf", "")).toBeUndefined();
  const { hem } = hung("scarf", "hang scarf held scarf.near.start")!;
  expect(Math.max(...hem.places.map((place) => place.hung.y))).toBeCloseTo(500, 6);
});

test("without its underarm named, a bodice shows slack that is not there", () => {
  // Trade handbook, the hang preview: 1 against 81 mm; here the side lies 180 mm beyond the top.
  expect(hung("bib", "")!.hem.slack).toBeLessThan(1);
  expect(hung("bib", "hang bib from bib.neck, bib.top")!.hem.slack).toBeGreaterThan(150);
});

test("what was turned by a slash is held where the body has it, its side as well", () => {
  const flared = `piece other = sheet {
  mark near as fold
  spread-from top at 50% to hem by 200 mm
  true-seam hem
}
`;
  // A slash of 1000 opened by 200: an arc of 2000 asin(0.1), all of it from the slash; the side hangs as it did.
  for (const from of ["other.top", "other.top, other.far"]) {
    const { hem, holding } = hung("other", `${flared}hang other from ${from}`)!;
    expect(holding.body).toMatch(from === "other.top" ? /level|source/ : /source/);
    expect(Math.abs(hem.slack - 2000 * Math.asin(0.1))).toBeLessThan(5);
    expect(Math.abs(hem.center.x - 150)).toBeLessThan(4);
  }
});

test("so is what was drawn and slashed in one piece, turned back as drafted", () => {
  const text = `piece one {
  line top   = (0, 0) to (300 mm, 0)
  line far   = (300 mm, 0) to (300 mm, 1000 mm)
  line hem   = (0, 1000 mm) to (300 mm, 1000 mm)
  line near  = (0, 0) to (0, 1000 mm)
  outline top, far, hem, near
  mark hem as hem
  mark near as fold
  spread-from top at 50% to hem by 200 mm
  true-seam hem
}
`;
  const { hem, holding } = hung("one", `${text}hang one from one.top held one.far at 50%`)!;
  expect(holding.body).toBe("drafted");
  const spot = holding.supports.at(-1)!.from;
  expect(spot.body.x).toBeCloseTo(300, 6);
  expect(spot.body.y).toBeCloseTo(500, 6);
  expect(Math.abs(hem.slack - 2000 * Math.asin(0.1))).toBeLessThan(5);
});
