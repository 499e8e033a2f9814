// Where the folds of a hem come from: a chain of stiff rods, which knows nothing of waves, rests in those that the kernel's law
// says, where its slack is, and about as deep.
import { expect, test } from "vitest";
import { foldsOf, wavelengthOf } from "../../kernel/cloth/hang/folds.ts";
import { slackAlong } from "../../kernel/cloth/hang/slack.ts";
import { standing } from "../../kernel/cloth/hang/standing.ts";
import { type ChainAtRest, chainInWaves } from "./chain.ts";

const length = 1000;

/** A hem of four waves, by the law, that hangs less wide by a share, all along alike. */
const evenHem = (bendingLength: number, share: number, waves: number): ChainAtRest => {
  const flat = 4 * wavelengthOf(bendingLength, length);
  return chainInWaves({ flat, bendingLength, length, hungAt: (along) => along * (1 - share), waved: [0, flat] }, waves);
};

/** From crest to hollow, mm. */
const depthOf = ({ joints }: ChainAtRest): number =>
  Math.max(...joints.map(({ y }) => y)) - Math.min(...joints.map(({ y }) => y));

const bendingLengths = [10, 20, 30];
const shares = [0.1, 0.2, 0.35];
const cases = bendingLengths.flatMap((bendingLength) => shares.map((share) => [bendingLength, share] as const));

// Trade handbook, the hang preview: the least energy is at the predicted number of waves in 9 of 9 cases.
test.each(cases)("a bending length of %d mm and a slack of %d of the hem: four waves cost least", (bending, share) => {
  const [fewer, predicted, more] = [3, 4, 5].map((waves) => evenHem(bending, share, waves));
  expect(predicted!.energy).toBeLessThan(fewer!.energy);
  expect(predicted!.energy).toBeLessThan(more!.energy);
  expect(predicted!.isStable).toBe(true);
});

test.each(bendingLengths)(
  "with little slack the waves of a bending length of %d mm are the law's, to one in a hundred",
  (bending) => {
    // Of n low waves bending costs a n^2 and swinging b / n^2 (a beam on an elastic bed, any book of mechanics): least at the
    // fourth root of b / a. Both from half a wave fewer and half a wave more, which the mirrors allow.
    const [low, high] = [3.5, 4.5];
    const [atLow, atHigh] = [evenHem(bending, 0.02, low).energy, evenHem(bending, 0.02, high).energy];
    const a = (atLow * low ** 2 - atHigh * high ** 2) / (low ** 4 - high ** 4);
    const b = (atLow - a * low ** 2) * low ** 2;
    expect(Math.abs((b / a) ** 0.25 / 4 - 1)).toBeLessThan(0.01);
  },
);

test.each(cases)("a bending length of %d mm and a slack of %d of the hem: as deep as is told", (bending, share) => {
  const flat = 4 * wavelengthOf(bending, length);
  const places = Array.from({ length: 21 }, (_, index) => ({
    flat: { x: (flat * index) / 20, y: 0 },
    hung: { x: (flat * (1 - share) * index) / 20, y: 0 },
  }));
  const { count, depth } = foldsOf(slackAlong(places), wavelengthOf(bending, length));
  expect(count).toBe(4);
  // Cloth that goes straight out and back reaches the furthest there is; round bends take up some of it.
  const chained = depthOf(evenHem(bending, share, 4));
  expect(chained).toBeLessThan(depth);
  expect(chained).toBeGreaterThan(0.85 * depth);
});

// Along a hem so long that the round is as good as straight, for round a narrow body folds fan out and are less deep.
test.each(bendingLengths.flatMap((bending) => [0.12, 0.2, 0.35].map((share) => [bending, share] as const)))(
  "a bending length of %d mm and a slack of %d of the hem: drawn as deep as the chain, to one in twenty",
  (bending, share) => {
    const wavelength = wavelengthOf(bending, length);
    const columns = Array.from({ length: 401 }, (_, index) => {
      const flat = (index * wavelength) / 4;
      const hung = flat * (1 - share);
      return [
        { flat: { x: hung, y: 0 }, hung: { x: hung, y: 0 } },
        { flat: { x: flat, y: length }, hung: { x: hung, y: length } },
      ];
    });
    const lines = standing({ panels: [{ piece: "wrap", columns }], depth: 1, wavelength });
    const drawn = Math.max(...lines.map(({ depths }) => depths.at(-1)!));
    expect(Math.abs(drawn / depthOf(evenHem(bending, share, 4)) - 1)).toBeLessThan(0.05);
  },
);

// Common practice, no source: folds hang where the fullness is, and nowhere else.
test.each(
  bendingLengths.flatMap((bending) =>
    [
      [0.5, 0.8, 1.5],
      [1, 0.3, 1],
      [2, 0.6, 2],
    ].map(([wide, share, waves]) => [bending, wide!, share!, waves!] as const),
  ),
)("a bending length of %d mm, slack along %d of a wave: the fold stays there", (bendingLength, wide, share, waves) => {
  const wave = wavelengthOf(bendingLength, length);
  const [flat, from, to] = [6 * wave, (3 - wide / 2) * wave, (3 + wide / 2) * wave];
  const hungAt = (along: number): number => along - share * Math.max(0, Math.min(along, to) - from);
  const waved = [(3 - waves / 2) * wave, (3 + waves / 2) * wave] as const;
  const { joints, isStable } = chainInWaves({ flat, bendingLength, length, hungAt, waved }, waves);
  expect(isStable).toBe(true);
  const rod = flat / (joints.length - 1);
  const folded = joints
    .slice(1)
    .map(({ x }, index) => ({ at: (index + 0.5) * rod, slack: rod - x + joints[index]!.x }));
  const whole = folded.reduce((sum, { slack }) => sum + slack, 0);
  const there = folded.filter(({ at }) => at > from - wave / 2 && at < to + wave / 2);
  expect(there.reduce((sum, { slack }) => sum + slack, 0) / whole).toBeGreaterThan(0.95);
  expect(folded.reduce((sum, { at, slack }) => sum + at * slack, 0) / whole / wave).toBeCloseTo(3, 1);
});
