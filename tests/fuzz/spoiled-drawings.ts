// Drawings from elsewhere, spoiled: those that this program writes, samples that others wrote where they are at hand, and a table of
// points. What happens to them is what happens to files on their way, and what malice does to a format.
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import fc from "fast-check";
import type { DrawingKind } from "../../editor/bring-in/drawing-kinds.ts";
import { cuttingRoomDxf } from "../../kernel/exchange/cutting-room.ts";
import { formats } from "../../kernel/export/formats.ts";
import { seedRecipes } from "./seed-recipes.ts";
import type { Subject } from "./target.ts";
import { drawnOnce, workedOnce } from "./worked-once.ts";

interface Drawing {
  readonly kind: DrawingKind;
  readonly text: string;
}

const tables = [
  "x (cm),y (cm),name,kind\n8,0,neck,corner\n22,4,,\n20.5,10,,curve\n27,24,,corner\n27,60,,\n0,60,,corner\n27,40,,notch\n",
  "x;y\n0;0\n12,5;0\n14;9,25\n12,5;20\n0;20\n",
  '"x (in)"\t"y (in)"\t"name"\n0\t0\tA\n5\t0\tB\n5.5\t4\tC\n5\t9\tD\n0\t9\tE\n',
];

const elements = [
  '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="300mm" viewBox="0 0 200 300">\n<defs><g id="a"><path d="M0 0h90v90z"/></g></defs>\n<use href="#a" x="5"/>\n<circle cx="50" cy="150" r="40"/>\n<ellipse cx="150" cy="150" rx="20" ry="40" transform="rotate(30)"/>\n<polygon points="0,200 50,200 50,280"/>\n<rect x="100" y="200" width="50" height="60" rx="5"/>\n<text x="10" y="20">Front &amp; back</text>\n</svg>\n',
];

// DXF files that other programs wrote lie beside the project where somebody has put them there.
const samplesFolder = resolve("../shared/data/dxf-samples");
const longestSample = 60_000;

const samples = (): Drawing[] =>
  existsSync(samplesFolder)
    ? readdirSync(samplesFolder)
        .filter((name) => name.toLowerCase().endsWith(".dxf"))
        .sort()
        .map((name) => join(samplesFolder, name))
        .filter((path) => statSync(path).size <= longestSample)
        .map((path) => ({ kind: "dxf", text: readFileSync(path, "latin1") }))
    : [];

// Of short recipes only: a drawing of a coat takes a second to trace, and holds no line that these do not.
const longestDrawing = 40_000;

const ownDrawings = (): Drawing[] =>
  seedRecipes
    .flatMap(({ text }): Drawing[] => [
      ...formats.flatMap(({ ending, write }): Drawing[] => {
        const kind = ending.endsWith(".svg") ? "svg" : ending.endsWith(".dxf") ? "dxf" : undefined;
        return kind ? [{ kind, text: write(drawnOnce(text).sheet) }] : [];
      }),
      { kind: "dxf", text: cuttingRoomDxf([{ base: true, garment: workedOnce(text).garment }]) },
    ])
    .filter(({ text }) => text.length <= longestDrawing);

let read: readonly Drawing[] | undefined;
const drawings = (): readonly Drawing[] => {
  read ??= [
    ...ownDrawings(),
    ...samples(),
    ...tables.map((text): Drawing => ({ kind: "csv", text })),
    ...elements.map((text): Drawing => ({ kind: "svg", text })),
  ];
  return read;
};

/** Values at which a reader of numbers, of names or of markup turns over. */
const hostile = [
  "NaN",
  "inf",
  "-0",
  "0",
  "1e308",
  "-1e999",
  "99999999999999999999",
  "0x10",
  "1,5",
  "",
  " ",
  "\u0000",
  "\u202e",
  "\ufeff",
  "__proto__",
  "&a;",
  "<",
  "]]>",
  '"',
  "=1+1",
  "EOF",
  "0\nSECTION\n2\nENTITIES",
  "BLOCK",
  "INSERT",
  "SPLINE",
  "%",
];

/** Whole pieces of a format that are put in. */
const pieces: Readonly<Record<DrawingKind, readonly string[]>> = {
  svg: [
    '<g transform="matrix(0 0 0 0 0 0)">',
    "</g>",
    '<use href="#a"/>',
    '<g id="a"><use href="#a"/></g>',
    '<path d="M0 0C1e9 0 0 1e9 5 5A0 0 0 1 1 9 9zm5 5l"/>',
    '<path d="M0,0 q1 1 2 2 t3 3 s4 4 5 5 a1 0 0 0 1 9 9"/>',
    '<circle cx="50%" cy="5" r="-4"/>',
    '<svg viewBox="0 0 0 0"><rect width="9" height="9"/></svg>',
    "<style>path{display:none}</style>",
    "<![CDATA[<path/>]]>",
    "<!-- -- -->",
    "<?php ?>",
    '<path transform="scale(1e200) rotate(nan)" d="M0 0h9v9z"/>',
  ],
  dxf: [
    "0\nINSERT\n2\nA\n",
    "0\nBLOCK\n2\nA\n0\nINSERT\n2\nA\n0\nENDBLK\n",
    "0\nLWPOLYLINE\n90\n3\n70\n1\n10\n0\n20\n0\n42\n1e9\n10\n90\n20\n0\n10\n90\n20\n90\n",
    "0\nSPLINE\n71\n3\n72\n2\n40\n0\n40\n0\n10\n1\n20\n1\n",
    "0\nARC\n10\n0\n20\n0\n40\n0\n50\n0\n51\n360\n",
    "0\nELLIPSE\n10\n0\n20\n0\n11\n0\n21\n0\n40\n1e-9\n41\n0\n42\n9\n",
    "0\nPOLYLINE\n66\n1\n0\nVERTEX\n10\n1\n20\n1\n",
    "0\nSEQEND\n",
    "0\nENDSEC\n0\nEOF\n",
    "9\n$INSUNITS\n70\n-7\n",
    "0\nCIRCLE\n10\n0\n20\n0\n40\n-5\n210\n0\n220\n0\n230\n-1\n",
    "0\nMTEXT\n1\n{\\fArial|b0;\\H3;x\\P\\U+D800}\n10\n0\n20\n0\n",
    "999\n",
  ],
  csv: ["0,0\n", ",,,,,,\n", '"', "x,y\n", "1;2\n", "1e400,1\n", "3,4,a,notch\n", "3,4,a,hinge\n"],
};

interface Slip {
  readonly kind: (typeof kinds)[number];
  readonly at: number;
  readonly to: number;
  readonly pick: number;
}

const kinds = ["value", "number", "delete", "duplicate", "swap", "put", "put", "cut", "sign", "endings"] as const;

const slip: fc.Arbitrary<Slip> = fc.record({
  kind: fc.constantFrom(...kinds),
  at: fc.nat(1_000_000),
  to: fc.nat(1_000_000),
  pick: fc.nat(1_000_000),
});

/** Drawings with up to five slips in each. */
export const spoiledDrawing = (from: Subject["from"]): fc.Arbitrary<Subject> =>
  fc.tuple(fc.nat(1_000_000), fc.array(slip, { minLength: 1, maxLength: 5 })).map(([pick, slips]) => {
    // There are few tables, and they are read soon.
    const wanted = (["svg", "svg", "dxf", "dxf", "csv"] as const)[pick % 5]!;
    const all = drawings().filter((each) => each.kind === wanted);
    const { kind, text } = all[Math.floor(pick / 5) % all.length]!;
    return { from, kind, text: slips.reduce((now, each) => slipped(now, kind, each), text) };
  });

const slipped = (text: string, format: DrawingKind, { kind, at, to, pick }: Slip): string => {
  // An SVG of ours stands on few long lines; its elements are what is moved about.
  const parts = format === "svg" ? text.split(/(?<=>)/) : text.split("\n");
  const sign = format === "svg" ? "" : "\n";
  const [one, other] = [at % parts.length, to % parts.length];
  switch (kind) {
    case "value":
      // Coordinates, names and layers alike.
      return replacedMatch(text, format === "svg" ? /"[^"\n]*"/g : /^.*$/gm, at, (found) =>
        found.startsWith('"') ? `"${picked(hostile, pick)}"` : picked(hostile, pick),
      );
    case "number":
      return replacedMatch(text, /-?\d+(?:\.\d+)?/g, at, () => picked(hostile, pick));
    case "delete":
      return parts.toSpliced(one, 1 + (pick % 4)).join(sign);
    case "duplicate":
      return parts.toSpliced(one, 0, ...parts.slice(one, one + 1 + (pick % 6))).join(sign);
    case "swap":
      return parts.with(one, parts[other]!).with(other, parts[one]!).join(sign);
    case "put":
      return parts.toSpliced(one, 0, picked(pieces[format], pick)).join(sign);
    case "cut":
      return text.slice(0, at % (text.length + 1));
    case "sign": {
      const place = at % (text.length + 1);
      return text.slice(0, place) + picked(hostile, pick) + text.slice(place);
    }
    case "endings":
      return text.replaceAll("\n", pick % 2 ? "\r\n" : "\r");
  }
};

const picked = <Each>(all: readonly Each[], pick: number): Each => all[pick % all.length]!;

const replacedMatch = (text: string, what: RegExp, at: number, by: (found: string) => string): string => {
  const found = [...text.matchAll(what)];
  const one = found[at % Math.max(1, found.length)];
  return one ? text.slice(0, one.index) + by(one[0]) + text.slice(one.index + one[0].length) : text;
};
