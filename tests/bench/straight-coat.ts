// The straight coat of recipes/blocks/straight-coat.chalk as a program of its own, on the same geometry: what a recipe's language
// costs is told by how much longer the recipe takes. It knows nothing but the one size that the recipe starts with.
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { hobbyCurve } from "../../kernel/geometry/hobby.ts";
import { cubic, joined, type Path, straight } from "../../kernel/geometry/path.ts";
import { distance, type Point, plus, times } from "../../kernel/geometry/point.ts";
import { bearing, cos, sin, toRadians } from "../../kernel/geometry/trig.ts";

/** A piece as this program knows it: its edges, and where its notches are. */
export interface Drawn {
  readonly edges: Readonly<Record<string, Path>>;
  readonly notches: readonly Point[];
}

/** The three pieces, drawn anew at every call; mm. */
export const straightCoat = (): { readonly back: Drawn; readonly front: Drawn; readonly sleeve: Drawn } => {
  const [bustGirth, neckBaseGirth, scyeDepth, shoulderLength] = [880, 370, 205, 123];
  const [acrossBack, acrossChest, upperArm, armLength] = [350, 330, 280, 590];
  const [coatLength, bustEase, drop, reach, wrap, armEase, capEase, wristWidth, centerSeam] = [
    1000, 200, 40, 15, 20, 120, 25, 280, 15,
  ];
  const neckWidth = neckBaseGirth / 5;
  const neckRise = neckWidth / 3;
  const neckDrop = Math.min(Math.max(neckBaseGirth / 5 + 10, neckRise + 51), neckRise + 74);
  const quarter = (bustGirth + bustEase) / 4;
  const shoulder = shoulderLength + reach;
  const armLevel = Math.max(scyeDepth, 0.19 * bustGirth + 20, 0.62 * upperArm) + drop;
  const level = Math.max(
    armLevel,
    0.86 * (neckWidth + shoulder * cos(toRadians(18))) + shoulder * sin(toRadians(22)) - neckRise,
  );

  const back = ((): Drawn => {
    const nape = at(0, 0);
    const centerTop = at(-centerSeam, 0);
    const neckPoint = at(neckWidth, -neckRise);
    const shoulderTip = toward(neckPoint, 18, shoulder);
    const underarm = at(quarter, level);
    const across = at(acrossBack / 2 + 15, (shoulderTip.y + level) / 2);
    const [sideHem, centerHem] = [at(quarter, coatLength), at(-centerSeam, coatLength)];
    const third = distance(across, shoulderTip) / 3;
    const armscye = joined([
      [
        cubic(
          underarm,
          right(underarm, -kappa * (quarter - across.x)),
          down(across, kappa * (level - across.y)),
          across,
        ),
      ],
      [cubic(across, down(across, -third), toward(shoulderTip, 108, third), shoulderTip)],
    ]);
    const neckOut = cubic(nape, right(nape, 0.6 * neckWidth), toward(neckPoint, 108, 0.6 * neckRise), neckPoint);
    const side = straight(underarm, sideHem);
    return {
      edges: {
        neck: joined([straight(centerTop, nape), [neckOut]]),
        shoulder: straight(neckPoint, shoulderTip),
        armscye,
        side,
        hem: straight(centerHem, sideHem),
        center: straight(centerTop, centerHem),
      },
      notches: [pointAt(armscye, pathLength(armscye) / 3), pointAt(side, Math.min(200, pathLength(side) / 2))],
    };
  })();

  const front = ((): Drawn => {
    const neckPoint = at(neckWidth, -neckRise);
    const frontNeck = at(0, neckDrop - neckRise);
    const frontTop = right(frontNeck, -wrap);
    const shoulderTip = toward(neckPoint, 22, shoulder);
    const underarm = at(quarter, level);
    const across = at(acrossChest / 2 + 10, (shoulderTip.y + level) / 2);
    const [sideHem, frontHem] = [at(quarter, coatLength), at(-wrap, coatLength)];
    const third = distance(shoulderTip, across) / 3;
    const armscye = joined([
      [cubic(shoulderTip, toward(shoulderTip, 112, third), down(across, -third), across)],
      [
        cubic(
          across,
          down(across, kappa * (level - across.y)),
          right(underarm, -kappa * (quarter - across.x)),
          underarm,
        ),
      ],
    ]);
    const neckOut = cubic(
      frontNeck,
      right(frontNeck, kappa * neckWidth),
      toward(neckPoint, 112, kappa * neckDrop),
      neckPoint,
    );
    const side = straight(underarm, sideHem);
    const length = pathLength(armscye);
    return {
      edges: {
        neck: joined([straight(frontTop, frontNeck), [neckOut]]),
        shoulder: straight(neckPoint, shoulderTip),
        armscye,
        side,
        hem: straight(frontHem, sideHem),
        opening: straight(frontTop, frontHem),
      },
      notches: [pointAt(armscye, length - length / 3), pointAt(side, Math.min(200, pathLength(side) / 2))],
    };
  })();

  const sleeve = ((): Drawn => {
    const [armholeBack, armholeFront] = [pathLength(back.edges.armscye!), pathLength(front.edges.armscye!)];
    const biceps = upperArm + armEase;
    const wb = (biceps * armholeBack) / (armholeBack + armholeFront);
    const wf = biceps - wb;
    const [backUnderarm, frontUnderarm] = [at(-wb, 0), at(wf, 0)];
    const capOf = (height: number): Path => {
      const crown = at(0, -height);
      return joined([
        [cubic(backUnderarm, right(backUnderarm, 0.45 * wb), right(crown, -0.6 * wb), crown)],
        [cubic(crown, right(crown, 0.5 * wf), right(frontUnderarm, -0.55 * wf), frontUnderarm)],
      ]);
    };
    const wanted = armholeBack + armholeFront + capEase;
    const height = halved(10, 450, (tried) => pathLength(capOf(tried)) - wanted);
    const cap = capOf(height);
    const wristMiddle = at((wf - wb) / 2, armLength - height);
    const [wristBack, wristFront] = [right(wristMiddle, -wristWidth / 2), right(wristMiddle, wristWidth / 2)];
    const downward = Math.PI / 2;
    const under = (top: Point, foot: Point): Path =>
      hobbyCurve([
        { point: top, leaving: downward },
        { point: foot, arriving: downward },
      ]);
    const length = pathLength(cap);
    return {
      edges: {
        cap,
        "under-back": under(backUnderarm, wristBack),
        "under-front": under(frontUnderarm, wristFront),
        wrist: straight(wristBack, wristFront),
      },
      notches: [armholeBack / 3, armholeBack + 0.55 * capEase, length - armholeFront / 3].map((s) => pointAt(cap, s)),
    };
  })();

  for (const piece of [back, front, sleeve]) for (const edge of Object.values(piece.edges)) pathLength(edge);
  return { back, front, sleeve };
};

const kappa = 0.5522847;

const at = (x: number, y: number): Point => ({ x, y });
const right = (p: Point, by: number): Point => ({ x: p.x + by, y: p.y });
const down = (p: Point, by: number): Point => ({ x: p.x, y: p.y + by });
const toward = (p: Point, degrees: number, by: number): Point => plus(p, times(bearing(toRadians(degrees)), by));

/** Where a rising value is nought, by as many halvings as the recipe's `solve` takes. */
const halved = (from: number, to: number, valueAt: (tried: number) => number): number => {
  let [low, high] = [from, to];
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (valueAt(middle) > 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
};
