// The SVG file: true to size, the same every time, and harmless whatever a recipe says.
import { describe, expect, test } from "vitest";
import { draw, drawPiece } from "../../kernel/drawing/draw.ts";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { fittedDashes } from "../../kernel/drawing/line-style.ts";
import { escaped, idOf, svg } from "../../kernel/export/svg.ts";
import { straight } from "../../kernel/geometry/path.ts";
import { at, bent, madePiece, nowhere } from "../cloth/made-piece.ts";
import { back, garmentOf, lobbyCoat } from "./made-garment.ts";

/** The names of all elements that open, after seeing that each closes in turn: enough of XML for what is written here. */
const elementsOf = (text: string): string[] => {
  const open: string[] = [];
  const seen: string[] = [];
  for (const [, closing, name, , own] of text.matchAll(/<(\/?)([A-Za-z]+)((?: [a-z:A-Z-]+="[^"<]*")*)(\/?)>/g)) {
    if (closing) expect(open.pop()).toBe(name);
    else seen.push(name!);
    if (!closing && !own) open.push(name!);
  }
  expect(open).toEqual([]);
  return seen;
};

describe("the bytes", () => {
  const text = svg(draw(lobbyCoat).sheet);

  test("are the same for the same garment", () => {
    expect(svg(draw(structuredClone(lobbyCoat)).sheet)).toBe(text);
  });

  test("end in one line feed and hold no other line end than that", () => {
    expect(text.endsWith("</svg>\n")).toBe(true);
    expect(text).not.toMatch(/\r|\n\n/);
  });

  test("have one element a line", () => {
    for (const line of text.split("\n").slice(1, -1)) {
      expect(line.match(/<(?!\/)/g)?.length ?? 0, line).toBeLessThanOrEqual(1);
      expect(line, line).toMatch(/^<.*>$/);
    }
  });

  test("have no exponents, no minus nought and at most three decimals", () => {
    for (const [, attribute] of text.matchAll(/ (?:d|x|y|width|height|viewBox|transform|font-size)="([^"]*)"/g)) {
      expect(attribute).not.toMatch(/e[+-]?\d|-0(?![.\d])|\.\d{4}/);
    }
  });

  test("have nothing that runs and nothing from outside", () => {
    const known = ["svg", "title", "desc", "rect", "g", "path", "text"];
    expect([...new Set(elementsOf(text))].sort()).toEqual(known.sort());
    expect(text.replace("http://www.w3.org/2000/svg", "")).not.toMatch(/href|url\(|https?:|script|style=|<!/);
  });

  test("of a piece do not change when another piece is added", () => {
    const alone = svg(draw(garmentOf([back])).pieces.get("back")!);
    const among = svg(
      draw({ ...garmentOf([back]), pieces: new Map([...garmentOf([back]).pieces, ["z", back]]) }).pieces.get("back")!,
    );
    expect(among).toBe(alone);
  });
});

describe("the size", () => {
  test("is in mm, with one unit of the drawing to the mm", () => {
    for (const drawing of [draw(lobbyCoat).sheet, drawPiece(lobbyCoat, back)]) {
      const { left, top, right, bottom } = drawing.paper;
      const head = svg(drawing).split("\n")[1]!;
      expect(head).toContain(` width="${right - left}mm" height="${bottom - top}mm"`);
      expect(head).toContain(` viewBox="${left} ${top} ${right - left} ${bottom - top}"`);
    }
  });

  test("a line of 50 mm is written 50 long, at its own place", () => {
    const drawing: Drawing = {
      title: "t",
      words: "w",
      paper: { left: -5, top: -5, right: 65, bottom: 15 },
      groups: [
        {
          of: "piece",
          name: "a",
          words: "a",
          strokes: [{ kind: "cutting-line", path: straight(at(2.0004, -0.0001), at(52.0004, 1e-9)) }],
          texts: [],
        },
      ],
    };
    expect(svg(drawing)).toContain('<path d="M2 0 L52 0"/>');
  });

  test("a number that is none stops the program rather than spoil a pattern", () => {
    const piece = madePiece("back", [{ name: "a", path: bent([0, 0], [10, 10]), inner: true }]);
    const drawing = drawPiece(garmentOf([piece]), piece);
    const broken = { ...drawing, paper: { ...drawing.paper, right: Number.NaN } };
    expect(() => svg(broken)).toThrow("not finite");
  });
});

describe("what a recipe says", () => {
  const hostile = `</text><script>alert(1)</script>&"'\u0000\u0007\u202E]]><!--`;

  test("stays text, in labels, titles and names", () => {
    const piece = {
      ...back,
      name: 'b"><script>',
      labels: [
        { text: hostile, drawnBy: nowhere },
        { text: hostile, at: at(100, 600), drawnBy: nowhere },
      ],
    };
    const drawings = draw({ ...garmentOf([piece]), title: hostile });
    for (const drawing of [drawings.sheet, drawings.pieces.get(piece.name)!]) {
      const text = svg(drawing);
      expect(elementsOf(text)).not.toContain("script");
      expect(text).not.toMatch(/<script|<!--/);
      expect(text).toContain("&lt;/text&gt;&lt;script&gt;alert(1)&lt;/script&gt;&amp;&quot;&#39;]]&gt;&lt;!--");
      expect(text).toContain('<g id="piece-b%22%3E%3Cscript%3E">');
    }
  });

  test("loses controls, halves of characters and what turns the reading direction, and nothing else", () => {
    expect(escaped("a\u0000b\u001bc\u0085d\ud800e\ufffff\u202eg\u2066h")).toBe("abcdefgh");
    expect(escaped("tab\there,\r\nline")).toBe("tab here, line");
    expect(escaped("Ärmel, rückwärts 前 🧵")).toBe("Ärmel, rückwärts 前 🧵");
  });

  test("makes ids of its bytes", () => {
    expect(idOf("side-front")).toBe("side-front");
    expect(idOf("straight.back")).toBe("straight.back");
    expect(idOf("Ärmel 1")).toBe("%C3%84rmel%201");
  });

  test("a label as long as a book does not stop the drawing", () => {
    const piece = { ...back, labels: [{ text: "hem ".repeat(20_000) + "x".repeat(20_000), drawnBy: nowhere }] };
    expect(svg(drawPiece(garmentOf([piece]), piece))).toContain(">BACK<");
  });
});

describe("dashes", () => {
  test("begin and end a line with a whole dash", () => {
    const [dash, gap] = fittedDashes([4, 2], 101) as [number, number];
    const count = Math.round((101 - dash) / (dash + gap));
    expect(count * (dash + gap) + dash).toBeCloseTo(101, 9);
    expect(dash).toBeGreaterThan(3.5);
    expect(dash).toBeLessThan(4.5);
  });

  test("a line shorter than a dash and a gap is solid, and a solid line stays so", () => {
    expect(fittedDashes([16, 4], 20)).toEqual([]);
    expect(fittedDashes([], 500)).toEqual([]);
  });

  test("of the fold reach the hem's cutting edge", () => {
    const text = svg(drawPiece(lobbyCoat, back));
    // 1040 mm: 51 times 16 and 4, and one dash of 16, stretched by 1040 / 1036.
    expect(text).toContain('<path d="M0 1025 L0 -15" stroke-dasharray="16.062 4.015"/>');
  });
});
