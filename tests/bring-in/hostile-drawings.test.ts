// Drawings that were made to do harm, or are broken: each ends in words at a line, soon.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawingLimits } from "../../editor/bring-in/drawing-limits.ts";
import { draw } from "../../kernel/drawing/draw.ts";
import { cuttingRoomDxf } from "../../kernel/exchange/cutting-room.ts";
import { svg } from "../../kernel/export/svg.ts";
import { workedRecipe, workedText } from "../worked-recipe.ts";
import { dxfOf } from "./dxf-of.ts";
import { inMillimetres, refusalOf, traced, tried } from "./traced.ts";

const open = '<svg xmlns="http://www.w3.org/2000/svg">';

/** How long it takes, in ms. */
const timed = (work: () => void): number => {
  const before = performance.now();
  work();
  return performance.now() - before;
};

describe("SVG", () => {
  test.each([
    [
      "entities of its own",
      `<?xml version="1.0"?>\n<!DOCTYPE svg [\n<!ENTITY a "aaaa">\n<!ENTITY b "&a;&a;&a;">\n]>\n<svg>&b;</svg>`,
      "The file declares entities",
      5,
    ],
    [
      "an entity from outside",
      `<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]>\n<svg><text>&a;</text></svg>`,
      "The file declares entities",
      1,
    ],
    [
      "an entity that is not there",
      "<svg>\n<text>&a;</text></svg>",
      "This is not well-formed XML: undefined entity",
      2,
    ],
    ["no end", `${open}\n<g>\n<path d="M0 0"/>\n`, "This is not well-formed XML: unclosed tag", 4],
    ["a tag that ends another", `${open}\n<g></h></svg>`, "This is not well-formed XML", 2],
    ["no SVG", "<html/>", "The outermost element is no svg", 1],
    ["a use of itself", `${open}\n<g id="a"><use href="#a"/></g></svg>`, "is drawn again inside itself", 2],
    [
      "uses in a ring",
      `${open}\n<g id="a"><use href="#b"/></g><g id="b">\n<use href="#a"/></g></svg>`,
      "is drawn again inside itself",
      2,
    ],
    ["an empty box", `${open.replace(">", ' viewBox="0 0 0 10">')}</svg>`, "The viewBox has to be", 1],
    ["a box of nothing", `${open.replace(">", ' viewBox="0 0 NaN 10">')}</svg>`, "The viewBox has to be", 1],
    ["a point beyond the table", inMillimetres('<path d="M0 0L1e30 0L0 9z"/>'), "A point here lies more than 100 m", 2],
    [
      "a scale beyond all numbers",
      inMillimetres('<path d="M0 0L9 0L0 9z" transform="scale(1e300) scale(1e300)"/>'),
      "A point here lies more than 100 m",
      2,
    ],
    ["nothing", "", "This is not well-formed XML", 1],
    ["no line", `${open}</svg>`, "There is no line in this drawing", undefined],
  ])("%s", (_, text, message, line) => {
    const found = refusalOf(text, "svg");
    expect(found.message).toContain(message);
    expect(found.line).toBe(line);
  });

  test.each([
    ["a million groups in one another", () => `${open}${"<g>".repeat(1_000_000)}`, "100 deep"],
    ["a million elements", () => `${open}${"<g/>".repeat(1_000_000)}</svg>`, "200000 elements"],
    [
      "two million stretches in one path",
      () => inMillimetres(`<path d="M0 0${"h1".repeat(10_000_000)}"/>`),
      "100000 stretches",
    ],
    [
      "uses that double and double",
      () =>
        `${open}<defs><rect id="u0" width="9" height="9" stroke="red"/>${Array.from({ length: 7 }, (_, i) => `<g id="u${i + 1}">${`<use href="#u${i}"/>`.repeat(10)}</g>`).join("")}</defs><use href="#u7"/></svg>`,
      "There are more than",
    ],
    [
      "uses without anything, in one another",
      () =>
        `${open}<defs><g id="u0"/>${Array.from({ length: 7 }, (_, i) => `<g id="u${i + 1}">${`<use href="#u${i}"/>`.repeat(10)}</g>`).join("")}</defs><use href="#u7"/></svg>`,
      "200000 elements",
    ],
    [
      "hundreds of circles about one point",
      () => inMillimetres(...Array.from({ length: 300 }, (_, i) => `<circle cx="500" cy="500" r="${10 + i / 10}"/>`)),
      undefined,
    ],
    [
      "more pieces than a recipe has",
      () =>
        inMillimetres(
          ...Array.from({ length: 600 }, (_, i) => `<path d="M${(i % 30) * 30} ${Math.floor(i / 30) * 30}h20v20z"/>`),
        ),
      "600 closed outlines",
    ],
    [
      "a line that runs to and fro",
      () =>
        inMillimetres(
          `<path d="M0 0${Array.from({ length: 40_000 }, (_, i) => `L${(i * 7919) % 900} ${(i * 104_729) % 900}`).join("")}z"/>`,
        ),
      "1 MiB",
    ],
  ])("%s", (_, text, message) => {
    let said: string | undefined;
    const took = timed(() => {
      const made = tried(text(), "svg");
      said = "problem" in made ? made.problem.message : undefined;
    });
    if (message === undefined) expect(said).toBeUndefined();
    else expect(said).toContain(message);
    // Seconds on a busy machine; without limits it would be hours, or the end of the memory.
    expect(took).toBeLessThan(15_000);
  });

  test("a declaration of the type alone, as many programs write it, is read over", () => {
    const doctype =
      '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">';
    expect(traced(`${doctype}\n${inMillimetres('<path d="M0 0h90v90z"/>')}`, "svg").pieces).toHaveLength(1);
  });

  test("words and names from a file cannot write a recipe line, or steer a terminal", () => {
    const words = '&quot; }\npiece other { &#10; } \u202e \\ # "x';
    const { made, outcome } = traced(
      inMillimetres(`<g id="piece } # &quot;"><path d="M0 0h90v90h-90z"/><text x="50" y="50">${words}</text></g>`),
      "svg",
    );
    expect([...outcome.garment.pieces.keys()]).toEqual([made.pieces[0]!.name]);
    expect(made.recipe).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
    expect(outcome.garment.pieces.get(made.pieces[0]!.name)!.labels[0]!.text).toBe('" } piece other { } \\ # "x');
  });

  test("ids like the names of every object's parts are only names", () => {
    const ids = ["__proto__", "constructor", "toString", "length", "end", "piece", "not"];
    const { made } = traced(inMillimetres(...ids.map((id, i) => `<path id="${id}" d="M${i * 100} 0h90v90z"/>`)), "svg");
    expect(new Set(made.pieces.map(({ name }) => name)).size).toBe(ids.length);
  });
});

const corner = (x: string | number, y: string | number, bulge: string | number = 0) => [10, x, 20, y, 42, bulge];
const bent = (...corners: (string | number)[][]) => [0, "LWPOLYLINE", 90, corners.length, 70, 1, ...corners.flat()];
const blocks = (...all: readonly (string | number)[][]): string =>
  [0, "SECTION", 2, "BLOCKS", ...all.flat(), 0, "ENDSEC"].map((each) => `${each}\n`).join("");

describe("DXF", () => {
  test.each([
    ["no group code", "0\nSECTION\n2\nENTITIES\nHELLO\n", "it says “HELLO”", 5],
    ["another kind of file", "%PDF-1.7\n1 0 obj\n", "This is no DXF file", 1],
    [
      "a coordinate that is no number",
      dxfOf([0, "LINE", 10, "NaN", 20, 0, 11, 9, 21, 9]),
      "Group code 10 of LINE has to be a number, and here stands “NaN”",
      8,
    ],
    ["an endless coordinate", dxfOf([0, "CIRCLE", 10, 0, 20, 0, 40, "1e999"]), "has to be a number", 12],
    [
      "a coordinate beyond the table",
      dxfOf([0, "LINE", 10, 0, 20, 0, 11, 1e9, 21, 9]),
      "A point here lies more than 100 m",
      6,
    ],
    ["an endless bulge", dxfOf(bent(corner(0, 0, "inf"), corner(90, 0), corner(90, 90))), "here stands “inf”", 16],
    [
      "a block in itself",
      blocks([0, "BLOCK", 2, "A", 0, "INSERT", 2, "A", 0, "ENDBLK"]) + dxfOf([0, "INSERT", 2, "A"]),
      "The block “A” is placed inside itself",
      10,
    ],
    [
      "blocks in a ring",
      blocks(
        [0, "BLOCK", 2, "A", 0, "INSERT", 2, "B", 0, "ENDBLK"],
        [0, "BLOCK", 2, "B", 0, "INSERT", 2, "A", 0, "ENDBLK"],
      ) + dxfOf([0, "INSERT", 2, "A"]),
      "The block “A” is placed inside itself",
      20,
    ],
    [
      "a block placed beyond count",
      blocks([0, "BLOCK", 2, "A", 0, "ENDBLK"]) + dxfOf([0, "INSERT", 2, "A", 70, 100_000, 71, 100_000]),
      "is placed 100000 times 100000 times",
      18,
    ],
    ["nothing", "", "There is no line in this drawing", undefined],
  ])("%s", (_, text, message, line) => {
    const found = refusalOf(text, "dxf");
    expect(found.message).toContain(message);
    expect(found.line).toBe(line);
  });

  test("bulges beyond all measure are told, and no number that is none comes of them", () => {
    for (const bulge of ["1e300", "-1.7e308", "1e6"]) {
      const made = tried(dxfOf(bent(corner(0, 0, bulge), corner(90, 0), corner(90, 90))), "dxf");
      expect("problem" in made && made.leftOut[0]!.what).toBe("LWPOLYLINE entities with a bulge that is no arc");
    }
    // Nine tenths of a circle and more are still arcs: a bulge is the tangent of a quarter of the turn.
    expect(traced(dxfOf(bent(corner(0, 0, 9), corner(90, 0), corner(90, 90))), "dxf").pieces).toHaveLength(1);
  });

  test("a file that breaks off is read as far as it is whole, and that is told", () => {
    const whole = dxfOf(bent(corner(0, 0), corner(90, 0), corner(90, 90)), [0, "LINE", 10, 0, 20, 0, 11, 9, 21, 9]);
    const { made } = traced(whole.slice(0, whole.indexOf("11\n9")), "dxf");
    expect(made.notes[0]).toContain("breaks off before its end mark");
    expect(traced(whole, "dxf").made.notes.some((note) => note.includes("breaks off"))).toBe(false);
  });

  test.each([
    [
      "blocks that multiply",
      () =>
        blocks(
          [0, "BLOCK", 2, "B0", 0, "ENDBLK"],
          ...Array.from({ length: 7 }, (_, i) => [
            0,
            "BLOCK",
            2,
            `B${i + 1}`,
            ...Array.from({ length: 10 }, () => [0, "INSERT", 2, `B${i}`, 70, 9, 71, 9]).flat(),
            0,
            "ENDBLK",
          ]),
        ) + dxfOf([0, "INSERT", 2, "B7"]),
      "more than",
    ],
    [
      "a million points",
      () => `0\nSECTION\n2\nENTITIES\n${"0\nPOINT\n10\n1\n20\n1\n".repeat(1_000_000)}`,
      "200000 entities",
    ],
    [
      "three million group codes and more",
      () => `0\nSECTION\n2\nENTITIES\n0\nLINE\n${"40\n1\n".repeat(3_100_000)}`,
      "group codes",
    ],
    [
      "a star of lines",
      () => dxfOf(...Array.from({ length: 20_000 }, (_, i) => [0, "LINE", 10, 0, 20, 0, 11, i + 1, 21, (i * i) % 977])),
      "meet at one spot",
    ],
    [
      "a spline of thirty thousand points",
      () =>
        dxfOf([
          0,
          "SPLINE",
          71,
          3,
          ...Array.from({ length: 30_004 }, (_, i) => [40, i]).flat(),
          ...Array.from({ length: 30_000 }, (_, i) => [10, i % 300, 20, (i * 7) % 300]).flat(),
        ]),
      "No line in this drawing is closed",
    ],
  ])("%s", (_, text, message) => {
    let said = "";
    const took = timed(() => {
      said = refusalOf(text(), "dxf").message;
    });
    expect(said).toContain(message);
    expect(took).toBeLessThan(15_000);
  });
});

/** A text with some of its characters changed, taken out or doubled. */
const spoilt = (text: string) =>
  fc
    .array(
      fc.tuple(
        fc.nat({ max: text.length - 1 }),
        fc.constantFrom("", "0", "-", "9e9", "\n", "NaN", "<", '"', "&", "\0", "1\n0\n"),
        fc.nat({ max: 40 }),
      ),
      { minLength: 1, maxLength: 6 },
    )
    .map((changes) => changes.reduce((now, [at, put, gone]) => now.slice(0, at) + put + now.slice(at + gone), text));

describe("our own files, spoilt in any way, end in a recipe or in words", () => {
  const { garment } = workedRecipe("circle-skirt.chalk");
  const files = [
    ["svg", svg(draw(garment).sheet)],
    ["dxf", cuttingRoomDxf([{ base: true, garment }])],
    [
      "csv",
      "x (cm),y (cm),name,kind\n8,0,neck,corner\n22,4,,\n20.5,10,,curve\n27,24,,corner\n27,60,,\n0,60,,corner\n27,40,,notch\n",
    ],
  ] as const;

  test.each(files)("%s", (kind, text) => {
    fc.assert(
      fc.property(spoilt(text), (broken) => {
        const made = tried(broken, kind);
        if ("problem" in made) {
          expect(made.problem.message).toMatch(/\.$/);
          return;
        }
        // Whatever it is, it can be read, and no number in it is none.
        expect(made.recipe).not.toMatch(/NaN|Infinity/);
        expect(workedText(made.recipe).garment.pieces.size).toBeGreaterThan(0);
      }),
      { numRuns: kind === "csv" ? 150 : 25 },
    );
  });
});

test("the limits are those of the handbook of tools, 4b, or below", () => {
  expect(drawingLimits.fileBytes).toBeLessThanOrEqual(64 * 1024 * 1024);
  expect(drawingLimits.spans).toBeLessThanOrEqual(500_000);
});
