// Walking a seam: lengths, and which notch is laid on which.
import { describe, expect, test } from "vitest";
import { pointAt } from "../../kernel/geometry/arc-length.ts";
import { cubic, type Path, straight } from "../../kernel/geometry/path.ts";
import { part } from "../../kernel/geometry/split.ts";
import { listInWords, type SeamMark, type SeamWalk, seamName, soundSeams, walkSeam } from "../../kernel/walk.ts";
import type { Piece, Run } from "../../kernel/working.ts";
import { at, garment, madePiece, notch, rectangle, run, seam } from "./made-garment.ts";

/** A strip with an edge "seam" of this length along the top, and notches at these lengths; negative ones are double. */
const strip = (name: string, length: number, notches: readonly number[] = []): Piece =>
  madePiece(
    name,
    [
      ["seam", straight(at(0, 0), at(length, 0))],
      ["end", straight(at(length, 0), at(length, 50))],
      ["far", straight(at(length, 50), at(0, 50))],
      ["start", straight(at(0, 50), at(0, 0))],
    ],
    { notches: notches.map((x) => notch("seam", at(Math.abs(x), 0), x < 0)) },
  );

const walkStrips = (first: readonly Piece[], second: readonly Piece[], ease = 0): SeamWalk =>
  walkSeam(
    seam(
      first.map((piece) => run(piece, "seam")),
      second.map((piece) => run(piece, "seam")),
      { ease },
    ),
    garment([...first, ...second]),
  );

const marked = ({ kind, at: along }: SeamMark): string => `${kind} ${thousandths(along)}`;
/** To a thousandth of a millimetre: places found along a path end in the last digits. */
const thousandths = (length: number): number => Math.round(length * 1000) / 1000 + 0;

const pairsOf = (walk: SeamWalk): string[] =>
  walk.pairs.map(({ first, second }) => `${marked(first)}, ${marked(second)}`);

describe("lengths", () => {
  test("each list is laid end to end", () => {
    const walk = walkStrips([strip("sleeve", 530)], [strip("back", 250), strip("front", 260)]);
    expect(walk.firstLength).toBe(530);
    expect(walk.secondLength).toBe(510);
    expect(walk.difference).toBe(20);
  });

  test("an edge may stand twice", () => {
    const quarter = strip("quarter", 180);
    expect(walkStrips([strip("band", 360)], [quarter, quarter]).difference).toBe(0);
  });
});

describe("pairs", () => {
  test("notches pair in order", () => {
    const walk = walkStrips([strip("a", 400, [100, 300])], [strip("b", 400, [101, 298])]);
    expect(pairsOf(walk)).toEqual(["single 100, single 101", "single 300, single 298"]);
    expect(walk.pairs.map(({ difference, off }) => [thousandths(difference), thousandths(off)])).toEqual([
      [-1, 1],
      [2, 2],
    ]);
    expect(walk.leftOver).toEqual({ first: [], second: [] });
  });

  test("the order of the statements does not matter", () => {
    expect(pairsOf(walkStrips([strip("a", 400, [300, 100])], [strip("b", 400, [100, 300])]))).toEqual([
      "single 100, single 100",
      "single 300, single 300",
    ]);
  });

  test("a run walked from its end meets its notches the other way about", () => {
    const a = strip("a", 400, [100]);
    const b = strip("b", 400, [300]);
    const walk = walkSeam(seam([run(a, "seam")], [run(b, "seam", true)]), garment([a, b]));
    expect(pairsOf(walk)).toEqual(["single 100, single 100"]);
  });

  test("a double notch pairs with a double one only", () => {
    const walk = walkStrips([strip("a", 400, [-100])], [strip("b", 400, [100])]);
    expect(walk.pairs).toEqual([]);
    expect(walk.leftOver.first.map(marked)).toEqual(["double 100"]);
    expect(walk.leftOver.second.map(marked)).toEqual(["single 100"]);
  });

  test("notches in another order cannot all be paired", () => {
    const walk = walkStrips([strip("a", 400, [-100, 200])], [strip("b", 400, [100, -200])]);
    expect(walk.pairs).toHaveLength(1);
    expect([...walk.leftOver.first, ...walk.leftOver.second]).toHaveLength(2);
  });

  test("of too many notches the one that lies worst is left over", () => {
    const walk = walkStrips([strip("a", 400, [100, 200, 300])], [strip("b", 400, [100, 300])]);
    expect(pairsOf(walk)).toEqual(["single 100, single 100", "single 300, single 300"]);
    expect(walk.leftOver.first.map(marked)).toEqual(["single 200"]);
  });

  test("within the ease a pair is not off", () => {
    const walk = walkStrips([strip("a", 420, [110, 215, 322])], [strip("b", 400, [111, 200, 300])], 20);
    expect(walk.pairs.map(({ difference, off }) => [thousandths(difference), thousandths(off)])).toEqual([
      [-1, 1],
      [15, 0],
      [22, 2],
    ]);
  });
});

describe("joints", () => {
  test("a joint pairs with a single notch", () => {
    const walk = walkStrips([strip("sleeve", 510, [252])], [strip("back", 250), strip("front", 260)]);
    expect(pairsOf(walk)).toEqual(["single 252, joint 250"]);
  });

  test("a joint pairs with a joint", () => {
    const walk = walkStrips([strip("a", 200), strip("b", 210)], [strip("c", 205), strip("d", 205)]);
    expect(pairsOf(walk)).toEqual(["joint 200, joint 205"]);
  });

  test("a joint that is left over is nobody's partner", () => {
    const walk = walkStrips([strip("collar", 510)], [strip("back", 250), strip("front", 260)]);
    expect(walk.pairs).toEqual([]);
    expect(walk.leftOver.second.map(marked)).toEqual(["joint 250"]);
  });

  test("a notch takes the notch before it takes a joint", () => {
    const walk = walkStrips([strip("sleeve", 510, [400])], [strip("back", 250), strip("front", 260, [150])]);
    expect(pairsOf(walk)).toEqual(["single 400, single 400"]);
    expect(walk.leftOver.second.map(marked)).toEqual(["joint 250"]);
  });

  test("a joint does not stand in for a double notch", () => {
    const walk = walkStrips([strip("sleeve", 510, [-250])], [strip("back", 250), strip("front", 260)]);
    expect(walk.pairs).toEqual([]);
    expect(walk.leftOver.first.map(marked)).toEqual(["double 250"]);
  });

  test("a notch cut at a joint, on both pieces, is one mark", () => {
    const walk = walkStrips([strip("sleeve", 510, [250])], [strip("back", 250, [250]), strip("front", 260, [0])]);
    expect(pairsOf(walk)).toEqual(["single 250, single 250"]);
  });

  test("notches at the ends of the seam say nothing", () => {
    const walk = walkStrips([strip("a", 400, [0, 400])], [strip("b", 400)]);
    expect(walk.pairs).toEqual([]);
    expect(walk.leftOver).toEqual({ first: [], second: [] });
  });
});

describe("which notches count", () => {
  test("those on the stretch that is sewn", () => {
    const a = strip("a", 400, [50, 250]);
    const b = strip("b", 300, [150]);
    const stretch: Run = { ...run(a, "seam"), path: part(a.edges.get("seam")!.path, 100, 400), whole: false };
    const walk = walkSeam(seam([stretch], [run(b, "seam")]), garment([a, b]));
    expect(pairsOf(walk)).toEqual(["single 150, single 150"]);
    expect(walk.leftOver).toEqual({ first: [], second: [] });
  });

  test("those within 0.01 mm of it, and of this edge", () => {
    const a = strip("a", 400);
    const off = {
      ...a,
      notches: [notch("seam", at(100, 0.011)), notch("far", at(200, 0)), notch("seam", at(300, 0.009))],
    };
    const b = strip("b", 400);
    const walk = walkSeam(seam([run(off, "seam")], [run(b, "seam")]), garment([off, b]));
    expect(walk.leftOver.first.map(({ at: along }) => thousandths(along))).toEqual([300]);
  });
});

describe("very many notches", () => {
  const every = (count: number) => Array.from({ length: count }, (_, index) => index + 1);

  test("a hundred a side are paired", () => {
    const walk = walkStrips([strip("a", 400, every(100))], [strip("b", 400, every(99))]);
    expect(walk.pairs).toHaveLength(99);
    expect(walk.leftOver.first.map(marked)).toEqual(["single 100"]);
    expect(walk.tooManyMarks).toBe(false);
  });

  test("more are left alone, and the walk says so", () => {
    const walk = walkStrips([strip("a", 400, every(101))], [strip("b", 400, every(99))]);
    expect(walk.pairs).toEqual([]);
    expect(walk.leftOver).toEqual({ first: [], second: [] });
    expect(walk.tooManyMarks).toBe(true);
  });
});

describe("words", () => {
  const [back, front, sleeve] = [strip("back", 250), strip("front", 260), strip("sleeve", 530)];
  const cap = seam([run(sleeve, "seam")], [run(back, "seam"), run(front, "seam")]);

  test("a seam is called by its edges", () => {
    expect(seamName(cap)).toBe("sleeve.seam with back.seam, front.seam");
  });

  test("a list is spelled out", () => {
    expect(listInWords(cap.second)).toBe("the seam of back and the seam of front");
    expect(listInWords([run(back, "seam"), run(back, "seam")])).toBe("twice the seam of back");
    expect(listInWords([{ ...run(back, "seam"), whole: false }])).toBe("part of the seam of back");
  });

  test("a seam is sound when all its pieces are", () => {
    expect(soundSeams(garment([back, front, sleeve], { seams: [cap] }))).toEqual([cap]);
    expect(soundSeams(garment([{ ...back, doubtful: true }, front, sleeve], { seams: [cap] }))).toEqual([]);
    expect(soundSeams(garment([front, sleeve], { seams: [cap] }))).toEqual([]);
  });
});

// Source: trade handbook 3.3 and 3.4, worked example R88, fitted bodice and one-piece set-in sleeve; figures to 0.1 mm.
describe("the fitted sleeve of the handbook", () => {
  const cubics = (...points: readonly (readonly [number, number])[]): Path => {
    const spans = [];
    for (let i = 0; i + 3 < points.length; i += 3) {
      const [a, b, c, d] = points.slice(i, i + 4).map(([x, y]) => at(x, y));
      spans.push(cubic(a!, b!, c!, d!));
    }
    return spans;
  };
  const backArmscye = cubics(
    [193.6, 17.5],
    [183.1, 49.9],
    [180.0, 84.7],
    [180.0, 118.7],
    [180.0, 174.7],
    [204.6, 220.0],
    [235.0, 220.0],
  );
  const frontArmscye = cubics(
    [183.0, 23.1],
    [170.6, 53.8],
    [170.0, 88.4],
    [170.0, 121.5],
    [170.0, 175.9],
    [203.6, 220.0],
    [245.0, 220.0],
  );
  const cap = cubics([-161.9, 0], [-89.0, 0], [-97.1, -161.1], [0, -161.1], [84.1, -161.1], [75.7, 0], [168.1, 0]);
  // Only the edge that is sewn matters here; the rest closes the piece.
  const closing = (name: string, edge: string, path: Path, notchedAt: readonly number[]): Piece => {
    const [start, end] = [path[0]!.start, path.at(-1)!.end];
    return madePiece(
      name,
      [
        [edge, path],
        ["rest", straight(end, start)],
      ],
      {
        notches: notchedAt.map((along) => notch(edge, pointAt(path, along))),
      },
    );
  };
  // Notches at one third of each armscye from the underarm; the armscyes are drafted from the shoulder tip down.
  const back = closing("back", "armscye", backArmscye, [(228.04 * 2) / 3]);
  const front = closing("front", "armscye", frontArmscye, [(236.84 * 2) / 3]);
  const sleeve = closing("sleeve", "cap", cap, [228.04 / 3, 242.75, 489.88 - 236.84 / 3]);
  const walk = walkSeam(
    seam([run(sleeve, "cap")], [run(back, "armscye", true), run(front, "armscye")], { ease: 25 }),
    garment([back, front, sleeve]),
  );

  test("cap 489.88, armscye 464.88, ease 25", () => {
    expect(Math.abs(walk.firstLength - 489.88)).toBeLessThan(0.2);
    expect(Math.abs(walk.secondLength - 464.88)).toBeLessThan(0.2);
    expect(Math.abs(walk.difference - 25)).toBeLessThan(0.2);
  });

  test("no ease below the back notch, 14.71 from the underarm to the shoulder, all 25 at the front notch", () => {
    const differences = walk.pairs.map(({ difference }) => difference);
    [0, 14.71, 25].forEach((wanted, index) => {
      expect(Math.abs(differences[index]! - wanted)).toBeLessThan(0.2);
    });
    expect(walk.pairs[1]!.second.kind).toBe("joint");
    expect(walk.leftOver).toEqual({ first: [], second: [] });
  });
});

test("rectangles walk side by side", () => {
  const [a, b] = [rectangle("a", 300, 400), rectangle("b", 200, 403)];
  expect(walkSeam(seam([run(a, "side")], [run(b, "side")]), garment([a, b])).difference).toBe(-3);
});
