// A sleeve cap is longer than its armhole by as much as its cloth and its shape can take.

import { armholeOf } from "../alter/armhole.ts";
import { defineCheck } from "../check.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { cross, dot, minus, type Point, sameSpot, size } from "../geometry/point.ts";
import { boundary, walked } from "../outline.ts";
import { lengthIn, plainNumber } from "../units.ts";
import { seamName, soundSeams, walkSeam } from "../walk.ts";
import type { Garment, Judgement, Piece, Run, Seam } from "../working.ts";

// Ease in mm by the kind of sleeve (trade handbook 2.3): a shirt sleeve or a dropped one, a set-in sleeve in dress
// weights, and one in coat weights. In between either is right.
const flat = { least: 0, most: 10 };
const dress = { least: 20, most: 38 };
const coat = { least: 35, most: 60 };

// Cap height over armhole height: below the first the sleeve is dropped, above the second set in (trade handbook 3.4).
const lowCap = 0.5;
const highCap = 0.72;

// Cloth to so many g/m2 is dress weight, from so many coat weight (common practice, no source).
const dressWeight = 250;
const coatWeight = 300;

const rounding = 1e-6;

const jacket = (cap: string): string => `chalkline 1
recipe "Jacket with a set-in sleeve"
units cm

fabric shell "crepe" width 150 cm weight 200 gsm

piece back {
  curve neck    = (0, 2 cm) to (8 cm, 0) leaving right arriving square-to (8 cm, 0)--(20 cm, 4 cm)
  line shoulder = (8 cm, 0) to (20 cm, 4 cm)
  curve armhole = (25 cm, 23 cm) to (20 cm, 4 cm) through (18 cm, 14 cm) heading up leaving left arriving square-to shoulder
  line side     = (25 cm, 23 cm) to (25 cm, 60 cm)
  line hem      = (0, 60 cm) to (25 cm, 60 cm)
  line center   = (0, 2 cm) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
  allow center, neck, shoulder, armhole, side, hem by 1.5 cm
  grain along center
}

piece front {
  curve neck    = (0, 8 cm) to (8 cm, 0) leaving right arriving square-to (8 cm, 0)--(20 cm, 4 cm)
  line shoulder = (8 cm, 0) to (20 cm, 4 cm)
  curve armhole = (20 cm, 4 cm) to (25 cm, 23 cm) through (18 cm, 14 cm) heading down leaving square-to shoulder arriving right
  line side     = (25 cm, 23 cm) to (25 cm, 60 cm)
  line hem      = (0, 60 cm) to (25 cm, 60 cm)
  line center   = (0, 8 cm) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
  allow center, neck, shoulder, armhole, side, hem by 1.5 cm
  grain along center
}

let eased = length(back.armhole) + length(front.armhole) + ${cap}

piece sleeve {
  solve h from 5 cm to 30 cm until length(cap) = eased {
    curve cap-back  = (-16 cm, 0) to (0, -h) handles (-8 cm, 0), (-9 cm, -h)
    curve cap-front = (0, -h) to (16 cm, 0) handles (9 cm, -h), (8 cm, 0)
    join cap        = cap-back, cap-front
  }
  line under-front = (16 cm, 0) to (16 cm, 40 cm)
  line wrist       = (-16 cm, 40 cm) to (16 cm, 40 cm)
  line under-back  = (-16 cm, 0) to (-16 cm, 40 cm)
  outline cap, under-front, wrist, under-back
  notch (0, -h)
  allow cap, under-front, wrist, under-back by 1.5 cm
  grain (0, 0) to (0, 30 cm)
}
`;

const sewn = (cap: string): string => `${jacket(cap)}
seam sleeve.cap with back.armhole, front.armhole ease ${cap} within 5 cm
seam front.shoulder with back.shoulder
seam front.side with back.side
seam sleeve.under-front with sleeve.under-back

cut back 2 from shell
cut front 2 from shell
cut sleeve 2 from shell
`;

export const capEase = defineCheck({
  name: "cap-ease",
  since: "0.2",
  title: "A sleeve cap is longer than its armhole by as much as its cloth can take in.",
  why: "Too much ease puckers along the seam, most of all in light and close-woven cloth; too little in a high cap pulls across the arm, and a flat cap needs hardly any.",
  passes: sewn("2.5 cm"),
  fails: sewn("7 cm"),
  *judge(garment) {
    for (const seam of soundSeams(garment)) {
      const judgement = judged(seam, garment);
      if (judgement) yield judgement;
    }
  },
});

const judged = (seam: Seam, garment: Garment): Judgement | undefined => {
  const isCapFirst = seam.first.length === 1;
  const [caps, parts] = isCapFirst ? [seam.first, seam.second] : [seam.second, seam.first];
  const [cap] = caps;
  if (caps.length !== 1 || !cap || !isArmhole(parts, garment)) return undefined;
  const { difference } = walkSeam(seam, garment);
  const ease = isCapFirst ? difference : -difference;
  const sleeve = garment.pieces.get(cap.piece)!;
  const ratio = heightOf(cap.path) / armholeHeight(parts, garment);
  const weight = weightOf(cap.piece, garment);
  const { least, most } = rangeFor(ratio, weight);
  const inWords = (mm: number): string => lengthIn(mm, garment.units);
  const isWithin = ease >= least - rounding && ease <= most + rounding;
  const about = {
    on: `${cap.piece}.${cap.edge}`,
    verdict: isWithin ? "pass" : "warning",
    found: ease,
    wanted: `${least} to ${most}`,
    where: seam.drawnBy,
  } as const;
  const cloth = weight === undefined ? "" : ` in cloth of ${plainNumber(weight, 0)} g/m2`;
  const kind = ratio < lowCap ? "a flat cap" : ratio < highCap ? "a cap of middle height" : "a high cap";
  const message = `The ${cap.edge} of ${cap.piece} is ${inWords(Math.abs(ease))} ${ease < 0 ? "shorter" : "longer"} than its armhole`;
  if (isWithin) return { ...about, message: `${message}, which ${kind}${cloth} takes.` };
  return {
    ...about,
    message: `${message}; ${kind}${cloth} takes ${inWords(least)} to ${inWords(most)}.`,
    hint:
      ease > most
        ? `Lower or narrow the cap until ${inWords(ease - most)} of it are gone.`
        : `Raise or widen the cap until it is ${inWords(least - ease)} longer.`,
    related: [{ where: sleeve.edges.get(cap.edge)!.drawnBy, message: `The cap of ${seamName(seam)} is drawn here.` }],
  };
};

const rangeFor = (ratio: number, weight: number | undefined): { least: number; most: number } => {
  if (ratio < lowCap) return flat;
  const heavy = weight === undefined || weight > dressWeight;
  const light = weight === undefined || weight < coatWeight;
  const setIn = { least: light ? dress.least : coat.least, most: heavy ? coat.most : dress.most };
  return ratio < highCap ? { least: flat.least, most: setIn.most } : setIn;
};

const weightOf = (piece: string, garment: Garment): number | undefined => {
  const cloths = garment.cuts
    .filter((cut) => cut.piece === piece)
    .map(({ fabric }) => garment.fabrics.get(fabric)?.weight);
  return cloths.find((weight) => weight !== undefined);
};

// Two edges that meet at a shoulder seam, with their other ends at a side seam, make an armhole; a collar's neck does not.
const isArmhole = (parts: readonly Run[], garment: Garment): boolean => {
  const [first, second] = parts;
  if (parts.length !== 2 || !first || !second || first.piece === second.piece) return false;
  return (
    areSewn(beside(first, endOf(first.path), garment), beside(second, startOf(second.path), garment), garment) &&
    areSewn(beside(first, startOf(first.path), garment), beside(second, endOf(second.path), garment), garment)
  );
};

interface Beside {
  readonly piece: string;
  readonly edge: string;
}

/** The edge that goes on from the end of a run. */
const beside = ({ piece: name, edge }: Run, end: Point, garment: Garment): Beside | undefined => {
  const piece = garment.pieces.get(name);
  if (!piece || boundary(piece) === undefined) return undefined;
  const walk = walked(piece);
  const found = walk.find(
    ({ edge: other, path }) => other.name !== edge && (sameSpot(startOf(path), end) || sameSpot(endOf(path), end)),
  );
  return found && { piece: name, edge: found.edge.name };
};

const areSewn = (one: Beside | undefined, other: Beside | undefined, garment: Garment): boolean =>
  one !== undefined &&
  other !== undefined &&
  garment.seams.some(({ first, second }) => {
    const has = (list: readonly Run[], { piece, edge }: Beside): boolean =>
      list.some((run) => run.piece === piece && run.edge === edge);
    return (has(first, one) && has(second, other)) || (has(first, other) && has(second, one));
  });

/** How far a cap rises above the straight line between its ends, mm. */
const heightOf = (cap: Path): number => {
  const [start, end] = [startOf(cap), endOf(cap)];
  const chord = minus(end, start);
  const length = pathLength(cap);
  const rises = Array.from({ length: looks + 1 }, (_, look) =>
    Math.abs(cross(chord, minus(pointAt(cap, (look / looks) * length), start))),
  );
  return Math.max(...rises) / size(chord);
};

/** The mean height of the armhole from its tips to the underarm, mm. */
const armholeHeight = (parts: readonly Run[], garment: Garment): number => {
  const heights = parts.map(({ piece: name, edge }) => {
    const piece: Piece = garment.pieces.get(name)!;
    const armhole = armholeOf(piece, edge);
    return armhole ? dot(minus(armhole.underarm, armhole.tip), armhole.down) : 0;
  });
  return Math.max(1, heights.reduce((sum, height) => sum + height, 0) / heights.length);
};

const looks = 128;
