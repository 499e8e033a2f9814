// What a piece's drawing and a sheet show.
import { describe, expect, test } from "vitest";
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { rim, room } from "../../kernel/drawing/box.ts";
import { draw, drawPiece } from "../../kernel/drawing/draw.ts";
import type { Drawing, Group, Stroke, StrokeKind, Text } from "../../kernel/drawing/drawing.ts";
import { boxOf } from "../../kernel/drawing/lettering.ts";
import { extentOf } from "../../kernel/drawing/paper.ts";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { contains, flattened } from "../../kernel/geometry/area.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { endOf, startOf, straight } from "../../kernel/geometry/path.ts";
import { distance, dot, minus, unit } from "../../kernel/geometry/point.ts";
import { boundary } from "../../kernel/outline.ts";
import type { Piece } from "../../kernel/working.ts";
import { at, bent, madePiece, nowhere, polygonEdges } from "../cloth/made-piece.ts";
import { armscye, back, beltLoop, block, cloak, garmentOf, lobbyCoat } from "./made-garment.ts";

const groupOf = (piece: Piece): Group => drawPiece(lobbyCoat, piece).groups[0]!;
const strokesOf = (group: Group, kind: StrokeKind): Stroke[] => group.strokes.filter((stroke) => stroke.kind === kind);
const ofDrawing = (drawing: Drawing, name: string): Group => drawing.groups.find((group) => group.name === name)!;

describe("lines", () => {
  const group = groupOf(back);

  test("the fold is a fold from cutting edge to cutting edge, and no cutting line lies on it", () => {
    const [fold, ...others] = strokesOf(group, "fold");
    expect(others).toEqual([]);
    const { left, top, right, bottom } = bounds([fold!.path]);
    expect([left, right]).toEqual([0, 0]);
    expect(top).toBeCloseTo(-15, 6);
    expect(bottom).toBeCloseTo(1025, 6);
    for (const { path } of strokesOf(group, "cutting-line")) {
      expect(flattened(path, 0.1).filter(({ x }) => x < 1).length).toBeLessThanOrEqual(1);
    }
  });

  test("an edge without allowance is drawn once, as cutting line", () => {
    const sewn = strokesOf(group, "sewing-line").map(({ path }) => startOf(path));
    expect(sewn).toEqual([at(0, 0), at(74, -24.7), at(270, 245)]);
    const cut = strokesOf(group, "cutting-line");
    expect(cut).toHaveLength(5);
    expect(cut[2]!.path).toEqual(expect.arrayContaining([armscye[0], armscye[1]]));
  });

  test("a stretch of which nothing is left is not drawn, its sewing line is", () => {
    // Two walls 20 apart with 15 each: nothing is cut along them or the floor between.
    const slotted = madePiece(
      "slotted",
      polygonEdges(
        [at(0, 0), at(100, 0), at(100, 80), at(120, 80), at(120, 0), at(220, 0), at(220, 150), at(0, 150)],
        15,
      ),
    );
    const drawn = groupOf(slotted);
    expect(strokesOf(drawn, "cutting-line").every(({ path }) => pathLength(path) > 1)).toBe(true);
    expect(strokesOf(drawn, "cutting-line").length).toBeLessThan(8);
    expect(strokesOf(drawn, "sewing-line")).toHaveLength(8);
  });

  test("a hem's own line is told from a seam's", () => {
    expect(strokesOf(group, "hem-line").map(({ path }) => path)).toEqual([bent([350, 1000], [0, 1000])]);
  });

  test("what was before is drawn where it ran otherwise, in its own place", () => {
    const before = strokesOf(group, "before").map(({ path }) => path);
    const of = (name: string) => block.edges.get(name)!.path;
    expect(before).toEqual([of("neck"), of("side"), of("hem"), of("center")]);
  });

  test("an edge off the outline is an inner line", () => {
    expect(strokesOf(group, "inner-line").map(({ path }) => path)).toEqual([bent([0, 400], [280, 400])]);
  });

  test("an open outline is drawn as far as it goes, with its name", () => {
    const open = madePiece("yoke", [
      { name: "top", path: bent([0, 0], [100, 0]), allow: 15 },
      { name: "side", path: bent([100, 0], [100, 80]) },
    ]);
    const drawn = groupOf(open);
    expect(strokesOf(drawn, "cutting-line")).toEqual([]);
    expect(strokesOf(drawn, "sewing-line")).toHaveLength(2);
    expect(drawn.texts.map(({ text }) => text)).toContain("YOKE");
  });

  test("a piece with nothing drawn yet still makes a sheet with its name", () => {
    const { groups, paper } = drawPiece(lobbyCoat, madePiece("nothing", []));
    expect(groups[0]!.texts.map(({ text }) => text)).toContain("NOTHING");
    expect(paper.right).toBeGreaterThan(paper.left);
  });
});

describe("marks", () => {
  const group = groupOf(back);
  const notches = strokesOf(group, "notch").map(({ path }) => path);

  // Trade handbook, section 5.5: depth 3 to 6, never over half the allowance, square to the seam line.
  test("a notch goes 3 to 6 mm in from the cutting line, square to the seam", () => {
    const [shoulder] = notches;
    expect(distance(startOf(shoulder!), at(139.6, -3.35))).toBeCloseTo(15, 2);
    expect(pathLength(shoulder!)).toBeGreaterThanOrEqual(3);
    expect(pathLength(shoulder!)).toBeLessThanOrEqual(6);
    const along = unit(minus(at(205.2, 18), at(74, -24.7)));
    expect(dot(unit(minus(endOf(shoulder!), startOf(shoulder!))), along)).toBeCloseTo(0, 9);
  });

  // Trade handbook, section 5.5: the two strokes of a double notch stand 6 to 10 apart.
  test("a double notch is two strokes 6 to 10 mm apart", () => {
    const [, first, second] = notches;
    const apart = distance(startOf(first!), startOf(second!));
    expect(apart).toBeGreaterThanOrEqual(6);
    expect(apart).toBeLessThanOrEqual(10);
    expect(bounds([first!, second!])).toMatchObject({ top: 1020, bottom: 1025 });
  });

  test("a notch goes no deeper than half of a narrow allowance", () => {
    const narrow = new Map(back.allowances).set("shoulder", { width: 6, corners: "point", drawnBy: nowhere });
    const [shoulder] = strokesOf(groupOf({ ...back, allowances: narrow }), "notch");
    expect(pathLength(shoulder!.path)).toBeCloseTo(3, 6);
  });

  // Trade handbook, section 5.5: depth 3 to 6.
  test("without allowance a notch goes 3 to 6 mm into the piece", () => {
    const inside = notches[3]!;
    expect(pathLength(inside)).toBeGreaterThanOrEqual(3);
    expect(pathLength(inside)).toBeLessThanOrEqual(6);
    expect(contains(boundary(back)!, endOf(inside))).toBe(true);
  });

  test("a double notch at the end of its edge stays on it", () => {
    const piece = { ...back, notches: [{ edge: "hem", point: at(350, 1000), double: true, drawnBy: nowhere }] };
    const [first, second] = strokesOf(groupOf(piece), "notch");
    expect(startOf(first!.path)).toEqual(at(350, 1025));
    expect(startOf(second!.path).x).toBeCloseTo(342, 6);
  });

  test("a drill hole is a cross", () => {
    const [level, upright] = strokesOf(group, "drill");
    expect(pointAt(level!.path, pathLength(level!.path) / 2)).toEqual(at(120, 420));
    expect(pointAt(upright!.path, pathLength(upright!.path) / 2)).toEqual(at(120, 420));
  });

  // Trade handbook, section 9.1: a line along the edge with both ends turned to the edge, labelled PLACE ON FOLD.
  test("the fold has its bracket, inside the piece, with its words", () => {
    const [bracket] = strokesOf(group, "fold-bracket");
    const { path } = bracket!;
    expect([startOf(path).x, endOf(path).x]).toEqual([0, 0]);
    expect(path).toHaveLength(3);
    expect(path[1]!.start.x).toBe(path[1]!.end.x);
    expect(path[1]!.start.x).toBeGreaterThan(0);
    expect(group.texts.map(({ text }) => text)).toContain("PLACE ON FOLD");
    expect(groupOf(beltLoop).texts.map(({ text }) => text)).not.toContain("PLACE ON FOLD");
  });
});

describe("the grain line", () => {
  const grainOf = (piece: Piece) => strokesOf(groupOf(piece), "grain")[0]?.path;

  // Trade handbook, section 5.6: two thirds of the piece or more. The back's longest upright stretch is at the fold, 1000.
  test("of a piece on the fold runs along the fold, two thirds of its length or more, inside", () => {
    const grain = grainOf(back)!;
    expect(startOf(grain).x).toBeCloseTo(endOf(grain).x, 9);
    expect(pathLength(grain)).toBeGreaterThanOrEqual((2 / 3) * 1000);
    for (const point of [startOf(grain), endOf(grain)]) expect(contains(boundary(back)!, point)).toBe(true);
  });

  test("runs along the edge it was given, in a narrow piece too", () => {
    const grain = grainOf(beltLoop)!;
    expect(startOf(grain).y).toBeCloseTo(endOf(grain).y, 9);
    expect(pathLength(grain)).toBeGreaterThanOrEqual((2 / 3) * 400);
    expect(startOf(grain).y).toBeGreaterThan(5);
    expect(startOf(grain).y).toBeLessThan(25);
  });

  test("between two places is drawn as given", () => {
    const grain = { kind: "line", from: at(60, 150), to: at(70, 850), drawnBy: nowhere } as const;
    expect(grainOf({ ...back, grain })).toEqual(straight(at(60, 150), at(70, 850)));
  });

  test("has an arrowhead at both ends", () => {
    const plain = groupOf(beltLoop);
    expect(strokesOf(plain, "arrowhead")).toHaveLength(2);
  });

  test("is not invented", () => {
    const { grain: _, ...without } = beltLoop;
    expect(grainOf(without)).toBeUndefined();
  });
});

describe("writing", () => {
  const labelOf = (piece: Piece): Text[] => {
    const { texts } = groupOf(piece);
    return texts.slice(texts.findIndex(({ text }) => text === piece.name.toUpperCase()));
  };

  test("the label says piece, garment, what to cut, and the recipe's own words", () => {
    expect(labelOf(back).map(({ text }) => text)).toEqual([
      "BACK",
      "Lobby coat, swing version",
      "CUT 1 SHELL ON FOLD",
      "CUT 1 LINING ON FOLD",
      "Interline to the waist.",
    ]);
    expect(labelOf(beltLoop).map(({ text }) => text)).toContain("CUT 4 SHELL, 2 PAIRS");
  });

  // Trade handbook, section 9.1: text 5 to 8 mm high, the piece's name first.
  test("the piece's name is the largest and its capitals are 5 to 8 mm high", () => {
    const [name, ...others] = labelOf(back);
    expect(name!.size * 0.73).toBeGreaterThanOrEqual(5);
    expect(name!.size * 0.73).toBeLessThanOrEqual(8);
    expect(Math.max(...others.map(({ size }) => size))).toBeLessThan(name!.size);
  });

  test.each([
    ["back", back],
    ["belt loop", beltLoop],
    ["cloak", cloak],
  ])("on the %s no text lies over a line or another text", (_, piece) => {
    const { strokes, texts } = groupOf(piece);
    const lines = strokes.filter(({ kind }) => kind !== "before").map(({ path }) => flattened(path, 0.2));
    texts.forEach((text, index) => {
      const others = texts.filter((_, i) => i !== index).map((other) => rim(boxOf(other)));
      expect(room(boxOf(text), [...lines, ...others]), text.text).toBeGreaterThan(1);
      expect(contains(cuttingLine(piece)!.path, boxOf(text).center), text.text).toBe(true);
    });
  });

  test("edges carry their names, those without an allowance say so", () => {
    const texts = groupOf(back).texts.map(({ text }) => text);
    expect(texts).toEqual(
      expect.arrayContaining(["neck", "side", "hem", "armscye, no allowance", "center", "waist", "1.5 cm", "2.5 cm"]),
    );
  });

  test("the label says size and version where they are known, and so does the sheet", () => {
    const remarks = { choices: ["size 12"], size: "12", version: "3f0a91c" };
    const { pieces, sheet } = draw(lobbyCoat, remarks);
    const said = pieces.get("back")!.groups[0]!.texts.map(({ text }) => text);
    expect(said.slice(said.indexOf("BACK"))).toEqual([
      "BACK",
      "Lobby coat, swing version",
      "SIZE 12",
      "CUT 1 SHELL ON FOLD",
      "CUT 1 LINING ON FOLD",
      "Interline to the waist.",
      "version 3f0a91c",
    ]);
    const block = ofDrawing(sheet, "title-block").texts.map(({ text }) => text);
    expect(block).toEqual(expect.arrayContaining(["Drafted with size 12.", "Recipe version 3f0a91c."]));
  });

  test("writing can be read from below or from the right", () => {
    for (const piece of [back, beltLoop, cloak])
      for (const { turn } of groupOf(piece).texts) expect(Math.abs(turn)).toBeLessThanOrEqual(Math.PI / 2 + 1e-6);
  });

  test("a label with a place stands there, line under line", () => {
    const [first, second] = groupOf(cloak).texts.filter(({ text }) => /length|tall/.test(text));
    expect(first).toMatchObject({ text: "Ankle length", at: at(250, 200), align: "middle" });
    expect(second!.text).toBe("for the tall ones");
    expect(second!.at.y).toBeGreaterThan(200 + first!.size);
  });

  test("a piece is told in words, for those who cannot see it", () => {
    const { words } = groupOf(back);
    expect(words).toMatch(
      /^back, cut 1 shell on fold, cut 1 lining on fold, .* wide, .* high over the cutting line\. /,
    );
    // Trade handbook, section 3.2, R88: the shoulder seam measures 138.0.
    expect(words).toContain("shoulder 13.8 cm, allowance 1.5 cm; ");
    expect(words).toContain("center 100 cm, fold");
  });
});

describe("the sheet", () => {
  const { sheet, pieces } = draw(lobbyCoat);

  test("there is one drawing for each piece, in the recipe's order, and the sheet holds them all", () => {
    expect([...pieces.keys()]).toEqual(["back", "belt-loop", "cloak"]);
    expect(sheet.groups.map(({ name }) => name)).toEqual(["back", "belt-loop", "cloak", "title-block"]);
  });

  test("nothing lies on anything else, and all of it on the paper", () => {
    const boxes = sheet.groups.map((group) => extentOf([group]));
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) {
        expect(a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top).toBe(true);
      }
      expect(a.left).toBeGreaterThan(sheet.paper.left);
      expect(a.right).toBeLessThan(sheet.paper.right);
      expect(a.top).toBeGreaterThan(sheet.paper.top);
      expect(a.bottom).toBeLessThan(sheet.paper.bottom);
    });
  });

  test("a piece on the sheet is the piece, moved and not turned", () => {
    const [alone, laid] = [pieces.get("cloak")!.groups[0]!, ofDrawing(sheet, "cloak")];
    const by = minus(startOf(laid.strokes[0]!.path), startOf(alone.strokes[0]!.path));
    laid.strokes.forEach(({ path }, i) => {
      expect(distance(minus(endOf(path), endOf(alone.strokes[i]!.path)), by)).toBeLessThan(1e-9);
    });
  });

  test("the scale square measures 50 x 50 mm and says so", () => {
    const titleBlock = ofDrawing(sheet, "title-block");
    const { left, top, right, bottom } = bounds(strokesOf(titleBlock, "scale-square").map(({ path }) => path));
    expect([right - left, bottom - top]).toEqual([50, 50]);
    expect(titleBlock.texts.map(({ text }) => text)).toContain("50 x 50 mm");
  });

  test("the title block names garment, measures and lines, and asks for care", () => {
    const words = ofDrawing(sheet, "title-block")
      .texts.map(({ text }) => text)
      .join(" ");
    for (const said of [
      "Lobby coat, swing version",
      "All measures in cm.",
      "cut here",
      "sew here",
      "fold of the cloth",
    ])
      expect(words).toContain(said);
    expect(words).toMatch(/fingers clear of shears and cutters, cut away from yourself.*Iron: try it on a scrap first/);
  });

  test("the legend shows only lines that the sheet has", () => {
    const words = ofDrawing(draw(garmentOf([beltLoop])).sheet, "title-block").texts.map(({ text }) => text);
    expect(words).toContain("cut here");
    expect(words).not.toContain("fold of the cloth");
  });

  test("an empty garment is an empty sheet", () => {
    expect(draw(garmentOf([])).sheet.groups.map(({ name }) => name)).toEqual(["title-block"]);
  });
});
