// Words of caution, after the trade handbook, section 11: the hazard's row is named beside each.
import { describe, expect, test } from "vitest";
import { cautionsFor } from "../../kernel/drawing/cautions.ts";
import { draw } from "../../kernel/drawing/draw.ts";
import type { Fabric, Garment } from "../../kernel/working.ts";
import { bent, type MadeEdge, madePiece, nowhere } from "../cloth/made-piece.ts";
import { garmentOf } from "./made-garment.ts";

const panel = (name: string, width = 300, more: readonly MadeEdge[] = []) =>
  madePiece(name, [
    { name: "top", path: bent([0, 0], [width, 0]) },
    { name: "rest", path: bent([width, 0], [width, 400], [0, 400], [0, 0]) },
    ...more,
  ]);

const called = (title: string, ...pieces: Parameters<typeof panel>[]): Garment => ({
  ...garmentOf(pieces.map((each) => panel(...each))),
  title,
});

const ofCloth = (title: string): Garment => {
  const shell: Fabric = { name: "shell", title, oneWay: false, drawnBy: nowhere };
  return { ...called("Coat", ["back"]), fabrics: new Map([["shell", shell]]) };
};

const said = (garment: Garment): string => cautionsFor(garment).join("\n");

describe("cautions", () => {
  // "Shears, rotary cutter, pins", "Hot iron, steam", "Sewing machine": one line each.
  test("on shears, iron and machine stand on every sheet", () => {
    const plain = cautionsFor(called("Coat", ["back"], ["sleeve"]));
    expect(plain).toHaveLength(1);
    expect(plain[0]).toMatch(/shears.*cut away from yourself.*pins.*Iron.*scrap.*Machine.*hair.*thread/);
  });

  test.each([
    // "Capes, cloaks, scarves, loose neck ties": a breakaway fastening, no tied neck cord.
    ["a cape", called("Stage cape", ["back"]), /hook-and-loop.*tie no cord/],
    ["a cape among the pieces", called("Coat", ["cape-back"]), /Capes and cloaks catch/],
    // "Drawstrings, children's upper outerwear (US)" and "Cords, children's clothing to 14 years (Europe)".
    ["a hood", called("Coat", ["hood"]), /14 years.*16 CFR 1120 and EN 14682.*current/],
    ["a tie", called("Blouse", ["neck-tie"]), /Cords, ties and hoods/],
    // "Children's sleepwear (US)", "General flammability".
    ["nightwear", called("Nightshirt", ["back"]), /16 CFR 1615 and 1616 and EN 14878/],
    ["brushed cloth", ofCloth("brushed cotton"), /burns fast.*16 CFR 1610/],
    // "Long trailing hems, sashes, wide sleeves": sleeve width over 500 near flame.
    ["a wide sleeve", called("Coat", ["sleeve", 501]), /Wide sleeves.*flame/],
    // "Small parts": under 3 years, 16 CFR 1501.
    [
      "buttonholes",
      called("Coat", ["front", 300, [{ name: "buttonhole-1", path: bent([10, 50], [30, 50]), inner: true }]]),
      /under 3 years.*16 CFR 1501/,
    ],
  ])("are added for %s", (_, garment, wanted) => {
    expect(cautionsFor(garment)).toHaveLength(2);
    expect(said(garment)).toMatch(wanted);
  });

  test("are not added for words that only contain others, nor for a sleeve of 500", () => {
    const alike = called("Landscape coat, likelihood of accordions", ["escape-hatch"], ["untied"], ["sleeve", 500]);
    expect(cautionsFor(alike)).toHaveLength(1);
    expect(cautionsFor(ofCloth("netting wool, tweed"))).toHaveLength(1);
  });

  test("are all on the sheet, and its words say them too", () => {
    const garment = called("Hooded stage cloak", ["hood"], ["sleeve", 700]);
    const block = draw(garment).sheet.groups.find(({ of }) => of === "title-block")!;
    const written = block.texts.map(({ text }) => text).join(" ");
    for (const caution of cautionsFor(garment)) {
      expect(written).toContain(caution);
      expect(block.words).toContain(caution);
    }
    expect(cautionsFor(garment)).toHaveLength(4);
  });

  test("claim nothing to conform", () => {
    const all = said(called("Nightshirt with cape", ["hood"], ["sleeve", 700]));
    expect(all).not.toMatch(/compl(?:y|ies|iant)|conform|safe\b|approved/i);
  });
});
