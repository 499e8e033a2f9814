// round-back: gives a back room for a rounder back, or takes it away for a more erect one.
import { phrase } from "../../grammar/phrase.ts";
import { type Armhole, armholeBeside } from "../alter/armhole.ts";
import { climbed, highest, isMarkedCenter, type LevelEdge, levelWith, runsUpright } from "../alter/level-with.ts";
import { closedBoundary, turnInOutline } from "../alter/outline-spot.ts";
import { acrossToward, dartInMouth, edgeUnder, rayEnd, refuseUsedUp, swung, tipAfter } from "../alter/swing-part.ts";
import { turnAt } from "../alter/turned.ts";
import { withDart } from "../alter/with-dart.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { distance, dot, minus, type Point, plus, times } from "../geometry/point.ts";
import { bearing, turnBetween } from "../geometry/trig.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { Dart, Edge, Piece, Units } from "../working.ts";

export const roundBack = pieceStep({
  name: "round-back",
  since: "0.2",
  summary: "Makes a back longer over the blades for a round back, the cloth taken up by a dart at the shoulder.",
  details: `The place is the fullest spot of the blade. The back is slashed from it level to the center, up to the shoulder, and to the armhole.
The part at the center goes up by the length, straight along the center, so that a fold stays a fold; the part at the shoulder tip swings
about the armhole, and a dart opens at the shoulder. Neck, armhole and center stay in line, and neck and armhole keep their length, and so does the shoulder
once the dart is sewn.

The name is that of the new dart, which ends at the place: take it back with \`shorten-dart\`. \`into\` names a shoulder dart that is there and takes
it up, or gives it for an erect back.`,
  example: `chalkline 1
units cm
piece back {
  point blade   = (9 cm, 14 cm)
  curve neck    = (0, 0) to (7.4 cm, -2.5 cm) handles (4.4 cm, 0), (6.9 cm, -1.1 cm)
  line shoulder = (7.4 cm, -2.5 cm) to (20.5 cm, 1.8 cm)
  curve armhole = (20.5 cm, 1.8 cm) to (27 cm, 24 cm) through (19 cm, 13 cm) heading down arriving right
  line side     = (27 cm, 24 cm) to (27 cm, 60 cm)
  line hem      = (0, 60 cm) to (27 cm, 60 cm)
  line center   = (0, 0) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
  mark center as fold
  round-back blade-dart = blade by 1 cm to shoulder at 50%
}`,
  phrase: [
    phrase`round-back ${slot.name("dart", "what the new dart is called")} = ${slot.placeOnPiece("blade", "the fullest spot of the blade")}
      by ${slot.length("longer", "how much longer the center gets")}
      to ${slot.placeOnPiece("mouth", "the place on the shoulder where the dart opens")}`,
    phrase`round-back ${slot.placeOnPiece("blade", "the fullest spot of the blade")}
      by ${slot.length("longer", "how much longer the center gets; negative for an erect back")}
      into ${slot.ownDart("into", "the shoulder dart that takes it up or gives it")}`,
  ],
  work(fill, piece, { where, units }) {
    const { blade, longer } = fill;
    const whole = closedBoundary(piece, units);
    if (!contains(whole, blade.point)) {
      throw new Problem("pivot-outside", `The blade does not lie inside ${piece.name}.`, {
        hint: "Name a place inside the piece.",
        slot: "blade",
      });
    }
    const old = "mouth" in fill ? undefined : piece.darts.get(fill.into)!;
    const shoulder = "mouth" in fill ? (edgeUnder(piece, fill.mouth.point) ?? offShoulder()) : old!.edge;
    turnInOutline(piece, shoulder);
    if ("mouth" in fill && longer < 0) {
      throw new Problem("back-no-dart", "An erect back takes from a shoulder dart, and this line makes a new one.", {
        hint: "Write the line without a new name, and with `into` and the dart that gives it in place of `to`.",
        slot: "longer",
      });
    }
    if (longer === 0) return { now: piece, words: "" };
    const center = centerBeside(piece, whole, blade.point, shoulder, "mouth" in fill ? "mouth" : "into", units);
    const armhole = armholeBeside(piece, shoulder, units);
    const down = bearing(Math.PI / 2 + turnAt(piece, center.edge.name, center.point));
    const out = acrossToward(down, armhole.out);
    const hinge = hingeAt({ ...armhole, out }, plus(blade.point, times(down, -longer / 2)), units);
    const pivotTo = plus(blade.point, times(down, -longer));
    const turn = turnBetween(minus(blade.point, hinge), minus(pivotTo, hinge));
    if (old && longer < 0) refuseUsedUp(old, turn, blade.point);
    const result = swung(piece, {
      hinge,
      pivot: blade.point,
      pivotTo,
      mouth: "mouth" in fill ? fill.mouth.point : old!,
      third: rayEnd(whole, blade.point, times(out, -1)),
      turn,
    });
    const name = "mouth" in fill ? fill.dart : old!.name;
    const legs = dartInMouth(result.piece, shoulder, result.mouth);
    const tip = old ? tipAfter(old, blade.point, result.pivot, result.mouth) : result.pivot;
    const dart: Dart = { ...(old ?? { name, edge: shoulder, drawnBy: where }), ...legs, tip };
    return {
      now: withDart(result.piece, dart),
      words:
        `made the back ${lengthIn(Math.abs(longer), units)} ${longer > 0 ? "longer" : "shorter"} over the blade, ${angleInWords(Math.abs(turn))} about the ${armhole.name}; ` +
        `the dart ${name} is ${lengthIn(distance(dart.first, dart.second), units)} wide`,
    };
  },
});

const offShoulder = (): never => {
  throw new Problem("dart-off-outline", "The place of the dart does not lie inside an edge of the outline.", {
    hint: "Give it as a place along the shoulder, as in `shoulder at 50%`.",
    slot: "mouth",
  });
};

/** The center, level with the blade; a Problem where the armhole does not lie level with it, or the dart is not at the shoulder. */
const centerBeside = (
  piece: Piece,
  whole: Path,
  blade: Point,
  shoulder: string,
  slotOfDart: "mouth" | "into",
  units: Units,
): LevelEdge => {
  const { path } = piece.edges.get(shoulder)!;
  const down = bearing(Math.PI / 2 + turnAt(piece, shoulder, pointAt(path, pathLength(path) / 2)));
  const [center, outer] = centerFirst(levelWith(piece, whole, blade, down));
  const climb = climbed(piece, outer.edge, center.edge, down);
  const own = shoulderIn(climb, highest(whole, down), down);
  if (own !== 1 || !runsUpright(center.edge, center.point, down)) {
    throw new Problem(
      "blade-off-armhole",
      `${center.edge.name} and ${outer.edge.name} lie level with the blade, and not the center and the armhole.`,
      {
        hint: `Choose a place between the shoulder tip and the underarm, more than ${lengthIn(least, units)} from the armhole.`,
        slot: "blade",
      },
    );
  }
  if (climb[own]!.name === shoulder) return center;
  throw new Problem(
    "dart-off-shoulder",
    `The dart would open on the ${shoulder}, and the shoulder above the ${outer.edge.name} is ${climb[own]!.name}.`,
    {
      hint: `Let it open on the ${climb[own]!.name}; \`move-dart\` takes it from there to the ${shoulder}.`,
      slot: slotOfDart,
    },
  );
};

/** Center and armhole: what is marked as fold or opening is the center, and of two seams the one that reaches further down. */
const centerFirst = ([one, other]: readonly [LevelEdge, LevelEdge]): readonly [LevelEdge, LevelEdge] => {
  const [isOne, isOther] = [isMarkedCenter(one.edge), isMarkedCenter(other.edge)];
  const isFirst = isOne === isOther ? one.bottom > other.bottom : isOne;
  return isFirst ? [one, other] : [other, one];
};

/** Which of the edges that climb from the armhole to the center is the shoulder: the one that comes to the highest place. */
const shoulderIn = (climb: readonly Edge[], top: number, down: Point): number => {
  const ends = climb.map(({ path }) => [dot(startOf(path), down), dot(endOf(path), down)] as const);
  const first = ends.findIndex((each) => Math.min(...each) <= top + level);
  // Over a level shoulder the armhole comes as high as the neck does.
  const isLevel = first === 0 && climb.length > 2 && Math.abs(ends[1]![0] - ends[1]![1]) <= level;
  return isLevel ? 1 : first;
};

/** Where the armhole lies level with a place, so that the place swings straight up. */
const hingeAt = ({ path, out, name }: Armhole, from: Point, units: Units): Point => {
  const [hit] = crossingsWithRay(path, from, out)
    .filter(({ ahead }) => ahead > 0)
    .sort((a, b) => a.ahead - b.ahead);
  if (hit && distance(hit.point, from) > least) return hit.point;
  throw new Problem("blade-off-armhole", `${name} does not lie level with the blade.`, {
    hint: `Choose a place between the shoulder tip and the underarm, more than ${lengthIn(least, units)} from the armhole.`,
    slot: "blade",
  });
};

// Heights nearer than this, in mm, are level.
const level = 1;

// The part that swings is at least this wide, in mm.
const least = 20;
