// Splitting, joining, unfolding, turning over: what must hold of any piece. Areas add up, lengths are kept, and what was
// split and joined again is as it was before.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { movedPiece } from "../../kernel/alter/moved-piece.ts";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { mirroredIn } from "../../kernel/geometry/mirror.ts";
import { type Path, straight } from "../../kernel/geometry/path.ts";
import { distance, type Point } from "../../kernel/geometry/point.ts";
import { rotated } from "../../kernel/geometry/rotate.ts";
import { boundary, sense, walked } from "../../kernel/outline.ts";
import { Problem } from "../../kernel/problem.ts";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import { joinPieces } from "../../kernel/steps/join-pieces.ts";
import { mirror } from "../../kernel/steps/mirror.ts";
import { split } from "../../kernel/steps/split.ts";
import { unfold } from "../../kernel/steps/unfold.ts";
import type { EdgeValue } from "../../kernel/value.ts";
import type { Garment, Piece, TakeUp } from "../../kernel/working.ts";
import { anySlash } from "./any-piece.ts";
import { areaOf, at, lengthOf, madePiece, nowhere, pathOf, placeOf, worked } from "./made-piece.ts";

const line = { where: nowhere, units: "mm" } as const;

const garmentOf = (...pieces: readonly Piece[]): Garment => ({
  title: "",
  file: "test.chalk",
  units: "mm",
  pieces: new Map(pieces.map((piece) => [piece.name, piece])),
  fabrics: new Map(),
  seams: [],
  cuts: [],
  accepts: [],
  incomplete: false,
});

const value = (path: Path, of?: { piece: string; edge: string }): EdgeValue => ({
  kind: "edge",
  path,
  turned: false,
  whole: true,
  taken: [],
  ...(of && { of }),
});

const edgeOf = (piece: Piece, edge: string): EdgeValue => value(pathOf(piece, edge), { piece: piece.name, edge });

/** Why a line does not part a piece in two: it leaves the piece on the way, or never enters it. */
const noTwoParts = ["split-several", "split-misses"];

/** The two parts of a piece along a line; undefined where the line parts it in more than two, or not at all. */
const parted = (piece: Piece, path: Path): [Piece, Piece] | undefined => {
  try {
    const fill = { names: ["one", "other"], piece: { kind: "piece", piece, called: piece.name }, line: value(path) };
    const { pieces } = split.work(fill as never, garmentOf(piece), line).now;
    return [pieces.get("one")!, pieces.get("other")!];
  } catch (error) {
    if (error instanceof Problem && noTwoParts.includes(error.code)) return undefined;
    throw error;
  }
};

const joinedAgain = (one: Piece, other: Piece): Piece => {
  const fill = { name: "again", first: edgeOf(one, "style-line"), second: edgeOf(other, "style-line") };
  return joinPieces.work(fill as never, garmentOf(one, other), line).now.pieces.get("again")!;
};

const looks = 16;
const samples = (path: Path): Point[] =>
  Array.from({ length: looks + 1 }, (_, look) => pointAt(path, (pathLength(path) * look) / looks));

/** How far the outline edges of two pieces are apart, name by name and at the same share of each. */
const furthest = (a: Piece, b: Piece): number =>
  Math.max(
    ...a.outline.map(({ edge }) => {
      const there = b.edges.get(edge);
      if (!there) return Number.POSITIVE_INFINITY;
      const own = samples(pathOf(a, edge));
      return Math.max(...samples(there.path).map((point, index) => distance(point, own[index]!)));
    }),
  );

const outlineLength = (piece: Piece): number => walked(piece).reduce((sum, { path }) => sum + pathLength(path), 0);

describe("any piece, split along any straight line", () => {
  test("into parts that add up, and joined again is as it was before", () => {
    let [split, comparable] = [0, 0];
    fc.assert(
      fc.property(anySlash, ({ piece, hinge, target }) => {
        const parts = parted(piece, straight(hinge.point, target.point));
        if (!parts) return;
        split += 1;
        const [one, other] = parts;
        expect(areaOf(one) + areaOf(other)).toBeCloseTo(areaOf(piece), 3);
        const cut = lengthOf(one, "style-line");
        expect(cut).toBeCloseTo(lengthOf(other, "style-line"), 9);
        expect(outlineLength(one) + outlineLength(other)).toBeCloseTo(outlineLength(piece) + 2 * cut, 6);
        for (const place of piece.places.keys()) {
          const holders = parts.filter(({ places }) => places.has(place));
          expect(holders.length).toBeGreaterThan(0);
          for (const holder of holders) expect(placeOf(holder, place)).toEqual(placeOf(piece, place));
        }
        const isNumbered = parts.some(({ edges }) => [...edges.keys()].some((edge) => /^e\d+-\d$/.test(edge)));
        const again = joinedAgain(one, other);
        expect(boundary(again)).toBeDefined();
        expect(areaOf(again)).toBeCloseTo(areaOf(piece), 3);
        // An edge that one part had both ends of keeps its numbers.
        if (isNumbered) return;
        comparable += 1;
        expect(furthest(piece, again)).toBeLessThan(1e-6);
      }),
      { seed: 7, numRuns: 150 },
    );
    // Most lines part the piece in two, and most of those leave every edge its name.
    expect(split).toBeGreaterThan(100);
    expect(comparable).toBeGreaterThan(75);
  });

  test("joined where the second lies elsewhere, turned or turned over, it is as it was before", () => {
    let joined = 0;
    fc.assert(
      fc.property(
        anySlash,
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.boolean(),
        ({ piece, hinge, target }, turn, over) => {
          const parts = parted(piece, straight(hinge.point, target.point));
          if (!parts) return;
          const [one, other] = parts;
          const moved = movedPiece(other, (point) => {
            const turned = rotated(point, at(500, -200), turn);
            return over ? mirroredIn(turned, at(0, 0), at(3, 1)) : turned;
          });
          joined += 1;
          const again = joinedAgain(one, moved);
          expect(areaOf(again)).toBeCloseTo(areaOf(piece), 2);
          expect(outlineLength(again)).toBeCloseTo(outlineLength(piece), 5);
          // Whatever was drawn inside the second part comes back with it.
          for (const name of piece.places.keys())
            expect(distance(placeOf(again, name), placeOf(piece, name))).toBeLessThan(1e-6);
        },
      ),
      { seed: 11, numRuns: 80 },
    );
    expect(joined).toBeGreaterThan(50);
  });
});

/** Half a piece with its fold on x = 0 and a side that swings out to the hem. */
const half = (width: number, bow: number, more: Partial<Piece> = {}): Piece =>
  madePiece(
    [
      { name: "center", path: straight(at(0, 0), at(0, 600)), role: "fold", turned: true },
      { name: "neck", path: straight(at(0, 0), at(width / 3, 0)) },
      {
        name: "side",
        path: [
          {
            kind: "cubic",
            start: at(width / 3, 0),
            startHandle: at(width / 3 + bow, 200),
            endHandle: at(width, 400),
            end: at(width, 600),
          },
        ],
      },
      { name: "hem", path: straight(at(0, 600), at(width, 600)), role: "hem", turned: true },
    ],
    { pocket: at(width / 4, 300) },
    more,
  );

test("unfolding doubles the area, keeps the half and mirrors the rest", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 60, max: 400, noNaN: true }),
      fc.double({ min: -10, max: 60, noNaN: true }),
      (width, bow) => {
        const piece = half(width, bow);
        const { now } = worked(unfold, { fold: "center" }, piece);
        expect(areaOf(now)).toBeCloseTo(2 * areaOf(piece), 3);
        expect(lengthOf(now, "hem")).toBeCloseTo(2 * lengthOf(piece, "hem"), 6);
        expect(pathOf(now, "side")).toEqual(pathOf(piece, "side"));
        const own = samples(pathOf(piece, "side"));
        for (const [index, { x, y }] of samples(pathOf(now, "other-side")).entries())
          expect(distance(at(-x, y), own[index]!)).toBeLessThan(1e-6);
        expect(distance(placeOf(now, "other-pocket"), at(-width / 4, 300))).toBeLessThan(1e-9);
        expect(now.edges.get("hem")!.role).toBe("hem");
        expect(now.outline.map(({ edge }) => edge)).not.toContain("center");
      },
    ),
    { seed: 3, numRuns: 50 },
  );
});

test("what the half takes up by sewing, the other half takes up as its mirror image", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 200, max: 400, noNaN: true }),
      fc.double({ min: 4, max: 30, noNaN: true }),
      fc.double({ min: 4, max: 30, noNaN: true }),
      (width, intake, pleat) => {
        const dart = {
          name: "pinch",
          edge: "hem",
          first: at(60, 600),
          second: at(60 + intake, 600),
          tip: at(60 + intake / 2, 500),
          drawnBy: nowhere,
        };
        const folded = { edge: "hem", from: at(100, 600), to: at(100 + 2 * pleat, 600), drawnBy: nowhere };
        const takeUp: TakeUp = { ...folded, kind: "pleat", amount: pleat, laid: "end" };
        const piece = half(width, 0, { darts: new Map([["pinch", dart]]), takeUps: [takeUp] });
        const { now } = worked(unfold, { fold: "center" }, piece);
        expect(sewnLengthOf(piece, "hem")).toBeCloseTo(width - intake - pleat, 9);
        expect(sewnLengthOf(now, "hem")).toBeCloseTo(2 * (width - intake - pleat), 6);
        // The hem runs to the right all through, so in the other half the legs change places and the pleat faces its start.
        expect(now.darts.get("pinch")).toMatchObject(dart);
        const other = now.darts.get("other-pinch")!;
        expect(other.edge).toBe("hem");
        expect(distance(other.first, at(-60 - intake, 600))).toBeLessThan(1e-9);
        expect(distance(other.second, at(-60, 600))).toBeLessThan(1e-9);
        expect(distance(other.tip, at(-60 - intake / 2, 500))).toBeLessThan(1e-9);
        expect(now.takeUps.map(({ laid }) => laid)).toEqual(["end", "start"]);
        expect(distance(now.takeUps[1]!.from, at(-100 - 2 * pleat, 600))).toBeLessThan(1e-9);
      },
    ),
    { seed: 13, numRuns: 30 },
  );
});

test("turning over once turns every corner the other way, and twice leaves a piece where it was", () => {
  fc.assert(
    fc.property(anySlash, ({ piece }) => {
      const once = worked(mirror, {}, piece).now;
      expect(areaOf(once)).toBeCloseTo(areaOf(piece), 3);
      expect(sense(once)).toBe(-sense(piece));
      const { now: twice } = worked(mirror, {}, once);
      expect(furthest(piece, twice)).toBeLessThan(1e-9);
      for (const name of piece.places.keys())
        expect(distance(placeOf(twice, name), placeOf(piece, name))).toBeLessThan(1e-9);
    }),
    { seed: 5, numRuns: 50 },
  );
});
