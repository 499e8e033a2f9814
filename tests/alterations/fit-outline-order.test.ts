// A fit alteration asks nothing of how the outline was written down: from any edge on and either way round, it is one shape.
import { describe, expect, test } from "vitest";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { distance, type Point } from "../../kernel/geometry/point.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { workedText } from "../worked-recipe.ts";

interface Altered {
  readonly edges: readonly string[];
  readonly drawn: string;
}

const bodice: Altered = {
  edges: ["center", "neck", "shoulder", "armhole", "side", "hem"],
  drawn: `  point tip      = (200 mm, 50 mm)
  point across   = (180 mm, 140 mm)
  point underarm = (240 mm, 230 mm)
  point bust     = (102 mm, 244 mm)
  point blade    = (90 mm, 145 mm)
  point waist    = (120 mm, 410 mm)
  curve neck     = (0, 0) to (80 mm, -20 mm) leaving right
  line shoulder  = (80 mm, -20 mm) to tip
  curve high     = tip to across leaving square-to shoulder arriving down
  curve low      = across to underarm leaving down arriving right
  join armhole   = high, low
  line side      = underarm to (250 mm, 600 mm)
  curve hem      = (0, 610 mm) to (250 mm, 600 mm) leaving right
  line center    = (0, 0) to (0, 610 mm)
  line level     = (0, 410 mm) to (245 mm, 410 mm)`,
};

const finished = `  mark hem as hem
  mark center as fold
  notch hem at 30%
  notch hem at 80%
  notch armhole at 30%
  notch side at 40%`;

const sleeve: Altered = {
  edges: ["cap", "under-front", "wrist", "under-back"],
  drawn: `  point crown = (0, -161.1 mm)
  curve cap-back  = (-161.88 mm, 0) to crown handles (-89.03 mm, 0), (-97.13 mm, -161.1 mm)
  curve cap-front = crown to (168.12 mm, 0) handles (84.06 mm, -161.1 mm), (75.65 mm, 0)
  join cap         = cap-back, cap-front
  line under-front = (168.12 mm, 0) to (113.12 mm, 428.9 mm)
  line wrist       = (-106.88 mm, 428.9 mm) to (113.12 mm, 428.9 mm)
  line under-back  = (-161.88 mm, 0) to (-106.88 mm, 428.9 mm)`,
};

const outlines = (edges: readonly string[]): string[] =>
  edges.flatMap((_, turn) => {
    const order = [...edges.slice(turn), ...edges.slice(0, turn)];
    return [order.join(", "), [...order].reverse().join(", ")];
  });

const worked = ({ drawn }: Altered, outline: string, lines: string): Outcome =>
  workedText(`chalkline 1\nunits mm\npiece one {\n${drawn}\n  outline ${outline}\n${lines}\n}\n`);

/** Everything there is to see of a piece, in the order in which it was drafted. */
const shape = ({ garment }: Outcome): readonly Point[] => {
  const piece = garment.pieces.get("one")!;
  const shares = Array.from({ length: 41 }, (_, index) => index / 40);
  return [
    ...[...piece.edges.values()].flatMap(({ path }) => shares.map((share) => pointAt(path, share * pathLength(path)))),
    ...[...piece.places.values()].map(({ point }) => point),
    ...piece.notches.map(({ point }) => point),
    ...[...piece.darts.values()].flatMap(({ first, second, tip }) => [first, second, tip]),
  ];
};

const alterations: readonly [string, Altered, string][] = [
  ["a bust dart at the side", bodice, "  fuller-bust d = bust by 12 mm about across to side at 80 mm"],
  ["a bust dart at the shoulder", bodice, "  fuller-bust d = bust by 12 mm about across to shoulder at 40%"],
  ["a bust dart at the neck", bodice, "  fuller-bust d = bust by 12 mm about across to neck at 60%"],
  [
    "a bust dart that gives",
    bodice,
    `  dart d = shoulder at 50% width 30 mm to bust
  fuller-bust bust by -6 mm about across into d`,
  ],
  ["a round back", bodice, "  round-back d = blade by 10 mm to shoulder at 45%"],
  ["a hollow back", bodice, "  hollow-back waist by 12 mm about side"],
  ["a hollow back that is let out", bodice, "  hollow-back waist by -12 mm about side"],
  ["a fuller arm", sleeve, "  notch crown\n  notch cap at 30%\n  fuller-arm cap by 50 mm"],
];

describe("is the same from any edge on and either way round", () => {
  test.each(alterations)("%s", (_, piece, line) => {
    const lines = piece === bodice ? `${finished}\n${line}` : line;
    const [first, ...others] = outlines(piece.edges).map((outline) => worked(piece, outline, lines));
    const seen = shape(first!);
    expect(seen.length).toBeGreaterThan(150);
    for (const outcome of [first!, ...others]) {
      expect(outcome.findings.filter(({ severity }) => severity === "error").map(({ message }) => message)).toEqual([]);
      const here = shape(outcome);
      expect(here.length).toBe(seen.length);
      expect(Math.max(...here.map((point, index) => distance(point, seen[index]!)))).toBeLessThan(1e-6);
    }
  });
});

describe("is the mirror image on a piece for the other side of the body", () => {
  const mirrored = (text: string): string =>
    text.replace(/\((-?)(\d)/g, (_, minus, digit) => `(${minus === "-" ? "" : "-"}${digit}`).replace(/right/g, "left");
  test.each(alterations.filter(([, piece]) => piece === bodice))("%s", (_, piece, line) => {
    const lines = `${finished}\n${line}`;
    const seen = shape(worked(piece, piece.edges.join(", "), lines));
    const here = shape(worked({ ...piece, drawn: mirrored(piece.drawn) }, piece.edges.join(", "), lines));
    const off = here.map(({ x, y }, index) => distance({ x: -x, y }, seen[index]!));
    expect(Math.max(...off)).toBeLessThan(1e-6);
  });
});

describe("a hollow back that laps over at the hem", () => {
  const outcome = worked(bodice, bodice.edges.join(", "), `${finished}\n  hollow-back waist by 12 mm about side`);
  const piece = outcome.garment.pieces.get("one")!;
  const hem = piece.edges.get("hem")!.path;

  test("leaves the hem at the center as it was, 12 mm higher: the step falls on the part that swung", () => {
    const before = worked(bodice, bodice.edges.join(", "), finished).garment.pieces.get("one")!.edges.get("hem")!.path;
    for (const along of [0, 30, 60, 90, 115]) {
      const was = pointAt(before, along);
      expect(distance(pointAt(hem, along), { x: was.x, y: was.y - 12 })).toBeLessThan(1e-6);
    }
  });

  test("takes the notches along on the hem", () => {
    const onHem = piece.notches.filter(({ edge }) => edge === "hem");
    expect(onHem.length).toBe(2);
    for (const { point } of onHem) expect(nearest(hem, point).distance).toBeLessThan(1e-6);
  });
});
