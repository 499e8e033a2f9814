// flat-collar: drafts a collar on front and back laid together at the shoulder, their tips overlapped.
import { phrase } from "../../grammar/phrase.ts";
import { laidOn } from "../alter/brought-together.ts";
import type { Move } from "../alter/moved-piece.ts";
import { trued } from "../alter/trued.ts";
import { withEdge } from "../drawn.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { mirroredIn } from "../geometry/mirror.ts";
import { offsetPath } from "../geometry/offset.ts";
import { endDirection, endOf, joined, mapped, type Path, reversed, startOf, straight } from "../geometry/path.ts";
import { cross, distance, minus, type Point, sameSpot } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { asin } from "../geometry/trig.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { EdgeValue } from "../value.ts";
import type { Piece, Role, Units } from "../working.ts";

export const flatCollar = pieceStep({
  name: "flat-collar",
  since: "0.2",
  summary: "Drafts a flat collar on back and front laid together at the shoulder, their tips overlapped.",
  details: `The neck points lie on each other; the shoulder tips overlap by the length, which turns the front by 2 asin(overlap / 2 shoulder). The two neck edges are traced and made
smooth where they meet, and the outer edge runs beside them at the width. The more overlap, the shorter the outer edge and the higher the collar stands: by custom 1 to 1.5 cm of overlap give 3 to 6 mm of stand, 2.5 cm 8 to 12 mm, 5 cm 15 to 20 mm.
The back comes first in both lists. It draws the outline: \`neck\` from the center back to the front, \`center\` as a fold, \`front-end\` and \`outer\`, and notches the neck at the shoulder. Where the collar ends short of
the front edge, name part of the neck: \`part(front.neck, front.neck at 2 cm, front.neck.end)\`.`,
  phrase: [
    phrase`flat-collar ${slot.edges("necks", "the necks of back and front")} at ${slot.edges("shoulders", "the shoulders of back and front")}
      width ${slot.length("width", "how wide the collar is")} overlap ${slot.length("overlap", "how far the shoulder tips overlap")}`,
  ],
  example: `chalkline 1
units cm
piece back {
  curve neck    = (0, 0) to (7.4 cm, -2.4 cm) leaving right arriving up
  line shoulder = (7.4 cm, -2.4 cm) to (19 cm, 1.4 cm)
  line side     = (19 cm, 1.4 cm) to (19 cm, 20 cm)
  line lower    = (0, 20 cm) to (19 cm, 20 cm)
  line center   = (0, 0) to (0, 20 cm)
  outline center, neck, shoulder, side, lower
}
piece front {
  curve neck    = (0, 6 cm) to (7.4 cm, -2.4 cm) leaving right arriving up
  line shoulder = (7.4 cm, -2.4 cm) to (19 cm, 1.4 cm)
  line side     = (19 cm, 1.4 cm) to (19 cm, 20 cm)
  line lower    = (0, 20 cm) to (19 cm, 20 cm)
  line opening  = (0, 6 cm) to (0, 20 cm)
  outline opening, neck, shoulder, side, lower
}
piece collar {
  flat-collar back.neck, front.neck at back.shoulder, front.shoulder width 7 cm overlap 2.5 cm
}`,
  work({ necks, shoulders, width, overlap }, piece, { where, units }) {
    if (piece.outline.length > 0) {
      throw new Problem("outline-twice", `${piece.name} already has its outline.`, {
        hint: "Draw the collar in a piece of its own.",
      });
    }
    const [backNeck, frontNeck] = pairOf(necks, "necks");
    const [backShoulder, frontShoulder] = pairOf(shoulders, "shoulders");
    const back = sideOf(backNeck, backShoulder, "back");
    const front = sideOf(frontNeck, frontShoulder, "front");
    const shoulder = distance(back.neckPoint, back.tip);
    if (width <= 0 || overlap < 0 || overlap > shoulder) {
      throw new Problem(
        "collar-size",
        `A collar has some width, and the tips overlap by 0 to the shoulder's own ${lengthIn(shoulder, units)}.`,
        { hint: "Write lengths within that." },
      );
    }
    const angle = 2 * asin(overlap / (2 * shoulder));
    const laid = mapped(front.neck, frontLaid(back, front, angle));
    const line = joined([back.neck, reversed(laid)]);
    const neck = trued(line, { start: undefined, end: undefined });
    // The outer edge lies on the side of the shoulder; right of travel is negative.
    const outward = cross(endDirection(back.neck), minus(back.tip, back.neckPoint)) > 0 ? -1 : 1;
    const outer = offsetPath(neck, width * outward);
    return {
      now: drawn(piece, neck, outer, pathLength(back.neck), where),
      words: inWords({ angle, neck, outer, line }, units),
    };
  },
});

const pairOf = (edges: readonly EdgeValue[], what: string): [EdgeValue, EdgeValue] => {
  const [first, second, more] = edges;
  if (first && second && !more) return [first, second];
  throw new Problem("collar-pair", `Two ${what} are wanted here, that of the back and that of the front.`, {
    hint: "Write the back's and the front's, with a comma between them.",
  });
};

/** What of one side the collar is drafted on: its neck toward the neck point, and its shoulder away from it. */
interface NeckSide {
  readonly neck: Path;
  readonly neckPoint: Point;
  readonly tip: Point;
}

const sideOf = (neck: EdgeValue, shoulder: EdgeValue, which: string): NeckSide => {
  const tips = [startOf(shoulder.path), endOf(shoulder.path)] as const;
  const isShared = (point: Point): boolean => tips.some((tip) => sameSpot(tip, point));
  const path = isShared(endOf(neck.path)) ? neck.path : reversed(neck.path);
  const neckPoint = endOf(path);
  if (!isShared(neckPoint)) {
    throw new Problem("collar-apart", `Neck and shoulder of the ${which} do not meet.`, {
      hint: "Name the two edges that meet at the neck point.",
    });
  }
  return { neck: path, neckPoint, tip: sameSpot(tips[0], neckPoint) ? tips[1] : tips[0] };
};

/** Lays the front's shoulder on the back's, on its other side, and lets the tips overlap. */
const frontLaid = (back: NeckSide, front: NeckSide, angle: number): Move => {
  const beside = ({ neck, neckPoint, tip }: NeckSide): number =>
    Math.sign(cross(minus(tip, neckPoint), minus(startOf(neck), neckPoint)));
  const isSame = beside(back) === beside(front);
  const over: Move = isSame ? (point) => mirroredIn(point, front.neckPoint, front.tip) : (point) => point;
  const along = laidOn(front.neckPoint, back.neckPoint, front.tip, back.tip);
  // The back lies on one side of its shoulder; the front turns over that side.
  return (point) => rotated(along(over(point)), back.neckPoint, beside(back) * angle);
};

const drawn = (piece: Piece, neck: Path, outer: Path, notchAt: number, drawnBy: Piece["drawnBy"]): Piece => {
  const edges: [string, Path, Role][] = [
    ["neck", neck, "seam"],
    ["front-end", straight(endOf(neck), endOf(outer)), "seam"],
    ["outer", outer, "seam"],
    ["center", straight(startOf(neck), startOf(outer)), "fold"],
  ];
  const taken = edges.find(([name]) => piece.edges.has(name) || piece.places.has(name));
  if (taken) {
    throw new Problem("name-taken", `${taken[0]} already names something here.`, {
      hint: "Draw the collar in a piece of its own.",
    });
  }
  const now = edges.reduce((sofar, [name, path, role]) => withEdge(sofar, { name, path, role, drawnBy }), piece);
  return {
    ...now,
    outline: [
      { edge: "center", turned: true },
      { edge: "neck", turned: false },
      { edge: "front-end", turned: false },
      { edge: "outer", turned: true },
    ],
    grain: { kind: "along", edge: "center", drawnBy },
    notches: [
      ...piece.notches,
      { edge: "neck", point: pointAt(neck, Math.min(notchAt, pathLength(neck))), double: false, drawnBy },
    ],
  };
};

interface Drafted {
  readonly angle: number;
  readonly neck: Path;
  readonly outer: Path;
  /** The necks as traced. */
  readonly line: Path;
}

const inWords = ({ angle, neck, outer, line }: Drafted, units: Units): string => {
  const shorter = pathLength(line) - pathLength(neck);
  const loss = shorter > 0.05 ? `, ${lengthIn(shorter, units)} shorter than the necks` : "";
  return `tips overlap by ${angleInWords(angle)}; neck ${lengthIn(pathLength(neck), units)}${loss}, outer edge ${lengthIn(pathLength(outer), units)}`;
};
