// raglan-sleeve: makes a raglan of a bodice and its set-in sleeve; the shoulders go over from the bodice to the sleeve.
import { optional, phrase } from "../../grammar/phrase.ts";
import { cutAlong } from "../alter/cut-across.ts";
import { type Cap, cutHalf, isClothOnRight, type LaidHalf, pieceWith } from "../alter/raglan-half.ts";
import { bodyNotched, evenlyLaid, type LaidSleeve, raglanPart, raglanWhole } from "../alter/raglan-sleeve-piece.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, type Path, reversed, startOf } from "../geometry/path.ts";
import { distance, dot, minus, quarterTurn, sameSpotTolerance, times, unit } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { EdgeValue } from "../value.ts";
import type { Piece, Units } from "../working.ts";

// By custom the tips lie about so many mm above the top of the cap, which takes up its ease (trade handbook 3.5, rule 3).
const customaryLift = 10;

export const raglanSleeve = garmentStep({
  name: "raglan-sleeve",
  since: "0.2",
  summary:
    "Makes a raglan of a bodice and its set-in sleeve: the shoulders are cut off the bodice and laid on the cap.",
  details: `Draw the raglan line in back and front first, from the neck to the armhole: by custom from 2.5 to 3.5 cm below the neck point in the back and 3.5 to 5 cm in the front,
to a third of the armhole up from the underarm. The cap and the armholes are named as in their seam, back before front. Each shoulder is laid on the cap as far from the underarm
as its line meets the armhole, and turned until its tip lies \`lift\` above the top of the cap, 1 cm where not said; this takes up the cap's ease, and leaves a gap between the tips.

Three names before the = give back, front and one sleeve, with a dart cut out over the shoulder: its sides \`BACK-shoulder\` and \`FRONT-shoulder\` meet in the middle of the sleeve, \`reach\` below the top of the cap.
Four names give back, front and a sleeve in two, back before front: their \`overarm\` runs along the shoulder, comes into the middle by \`reach\`, and goes on down it. Either is notched at the shoulder tip, and where the line meets the cap if either bodice or sleeve is notched there.
The edges keep their names: \`neck\`, \`raglan\`, and the rest of the cap \`cap\`; on one sleeve each has the name of its bodice in front, as in \`back-raglan\`. The pieces themselves stay as they were.`,
  phrase: [
    phrase`raglan-sleeve ${slot.names("names", "what back, front and sleeve are called; two names for a sleeve in two")} = ${slot.edge("cap", "the cap, from its back underarm to its front one")}
      with ${slot.edges("armholes", "the armholes of back and front, as they are sewn to the cap")}
      along ${slot.edges("lines", "the raglan lines of back and front")}
      over ${slot.edge("middle", "the line down the middle of the sleeve, from the top of the cap to the wrist")}
      reach ${slot.length("reach", "how far down it the shaping over the shoulder ends")}
      ${optional`lift ${slot.length("lift", "how far the shoulder tips lie above the top of the cap")}`}`,
  ],
  example: `chalkline 1
units cm
piece bodice-back {
  line shoulder = (7 cm, -2 cm) to (19 cm, 2 cm)
  curve neck    = (0, 0) to (7 cm, -2 cm) leaving right arriving square-to shoulder
  curve armhole = (24 cm, 22 cm) to (19 cm, 2 cm) through (18 cm, 13 cm) heading up leaving left
  line side     = (24 cm, 22 cm) to (24 cm, 45 cm)
  line hem      = (0, 45 cm) to (24 cm, 45 cm)
  line center   = (0, 0) to (0, 45 cm)
  outline center, neck, shoulder, armhole, side, hem
  mark center as fold
  mark hem as hem
  curve raglan  = armhole at 35% to neck at end - 3 cm leaving along armhole
}
piece bodice-front = bodice-back { }
piece whole-sleeve {
  curve cap     = (-18 cm, 0) to (18 cm, 0) through (0, -14 cm) heading right leaving right arriving right
  curve under-front = (18 cm, 0) to (13 cm, 42 cm) leaving down arriving down
  curve under-back  = (-18 cm, 0) to (-13 cm, 42 cm) leaving down arriving down
  line wrist    = (-13 cm, 42 cm) to (13 cm, 42 cm)
  outline cap, under-front, wrist, under-back
  mark wrist as hem
  line middle   = (0, -14 cm) to (0, 42 cm)
  grain middle at 5 cm to middle at 40 cm
}
raglan-sleeve back, front, sleeve = whole-sleeve.cap with bodice-back.armhole, turned(bodice-front.armhole) along bodice-back.raglan, bodice-front.raglan over whole-sleeve.middle reach 11 cm
seam turned(back.raglan), turned(back.armhole) with turned(sleeve.back-raglan), turned(sleeve.back-cap)
seam turned(front.raglan), turned(front.armhole) with turned(sleeve.front-raglan), sleeve.front-cap
seam sleeve.back-shoulder with sleeve.front-shoulder`,
  work({ names, cap: capValue, armholes, lines, middle, reach, lift = customaryLift }, garment, { where, units }) {
    const [backName, frontName, sleeveName, otherName] = namesOf(names);
    const [backArmhole, backLine, frontArmhole, frontLine] = pairsOf(armholes, lines);
    const { piece: sleeve, edge: capEdge } = pieceWith(capValue, garment, "raglan-cap", "cap", units);
    refuseTakenCap(sleeve, capEdge);
    const downMiddle = downFrom(capValue.path, middle, sleeve, capEdge);
    refuseReach(downMiddle, reach, lift, units);
    const cap = capOf(capValue, sleeve, capEdge, downMiddle);
    const { back, front } = evenlyLaid(
      cutHalf("back", backName, backArmhole, backLine, garment, where),
      cutHalf("front", frontName, frontArmhole, frontLine, garment, where),
      { cap, middle: downMiddle, reach, lift },
      units,
    );
    refuseBeyond(back, front, units);
    const middleName = middle.of?.piece.split(".").at(-1) === sleeve.name ? middle.of.edge : undefined;
    const on = {
      sleeve,
      cap,
      capEdge,
      capTurned: capValue.turned,
      back,
      front,
      middle: downMiddle,
      middleName,
      reach,
      where,
    };
    const sleeves = otherName === undefined ? [raglanWhole(on, sleeveName)] : inTwo(on, sleeveName, otherName, units);
    const pieces = new Map(garment.pieces);
    for (const piece of [bodyNotched(on, back), bodyNotched(on, front), ...sleeves]) pieces.set(piece.name, piece);
    return { now: { ...garment, pieces }, words: inWords(back, front, units) };
  },
});

const namesOf = (names: readonly string[]): [string, string, string, string | undefined] => {
  const [back, front, sleeve, other, more] = names;
  if (back === undefined || front === undefined || sleeve === undefined || more !== undefined) {
    throw new Problem(
      "raglan-names",
      `A raglan is a back, a front and a sleeve in one or in two, and here ${names.length === 1 ? "is one name" : `are ${names.length} names`}.`,
      {
        hint: "Write three names before the =, or four: back, front, back-sleeve, front-sleeve.",
      },
    );
  }
  const twice = names.find((name, index) => names.indexOf(name) < index);
  if (twice !== undefined) {
    throw new Problem("name-taken", `Two of the pieces would be called ${twice}.`, { hint: "Choose a name for each." });
  }
  return [back, front, sleeve, other];
};

const pairsOf = (
  armholes: readonly EdgeValue[],
  lines: readonly EdgeValue[],
): [EdgeValue, EdgeValue, EdgeValue, EdgeValue] => {
  const [[backArmhole, frontArmhole], [backLine, frontLine]] = [armholes, lines];
  if (!backArmhole || !frontArmhole || !backLine || !frontLine || armholes.length > 2 || lines.length > 2) {
    throw new Problem(
      "raglan-pairs",
      `Of armholes ${countOf(armholes)} named, and of raglan lines ${countOf(lines)}.`,
      {
        hint: "Name two of each, that of the back first.",
      },
    );
  }
  if (backArmhole.of?.piece === frontArmhole.of?.piece) {
    throw new Problem("raglan-pairs", "Both armholes belong to one piece.", {
      hint: "Name that of the back and that of the front.",
    });
  }
  return [backArmhole, backLine, frontArmhole, frontLine];
};

const countOf = ({ length }: readonly unknown[]): string => (length === 1 ? "one is" : `${length} are`);

/** The middle as it runs down from the cap. */
const downFrom = (cap: Path, { path }: EdgeValue, { name }: Piece, capEdge: string): Path => {
  const isOn = (end: Path): boolean => nearest(cap, startOf(end)).distance <= sameSpotTolerance;
  if (isOn(path)) return path;
  const upward = reversed(path);
  if (isOn(upward)) return upward;
  throw new Problem("raglan-middle", `The middle of ${name} does not start on its ${capEdge}.`, {
    hint: "Draw it from the top of the cap to the middle of the wrist.",
  });
};

const refuseReach = (middle: Path, reach: number, lift: number, units: Units): void => {
  const length = pathLength(middle);
  if (reach <= 0 || reach >= length) {
    throw new Problem(
      "raglan-reach",
      `The shaping over the shoulder ends within the ${lengthIn(length, units)} of the middle, not ${lengthIn(reach, units)} down it.`,
      {
        slot: "reach",
        hint: "By custom it ends some 8 to 13 cm below the top of the cap.",
      },
    );
  }
  if (lift < 0) {
    throw new Problem("raglan-lift", "The shoulder tips lie above the top of the cap, or on its level.", {
      slot: "lift",
      hint: "Write 0 or more; 1 cm is customary.",
    });
  }
};

const refuseTakenCap = (sleeve: Piece, capEdge: string): void => {
  const isOnCap = ({ edge }: { readonly edge: string }): boolean => edge === capEdge;
  if (![...sleeve.darts.values()].some(isOnCap) && !sleeve.takeUps.some(isOnCap)) return;
  throw new Problem(
    "raglan-taken",
    `Cloth is taken up along the ${capEdge} of ${sleeve.name}, and the top of it gives way to the shoulders.`,
    {
      hint: "Use the sleeve as it was before.",
    },
  );
};

const capOf = ({ path, turned }: EdgeValue, sleeve: Piece, capEdge: string, middle: Path): Cap => {
  const down = unit(minus(endOf(middle), startOf(middle)));
  const square = quarterTurn(down);
  const isForward = dot(square, minus(endOf(path), startOf(path))) >= 0;
  return {
    path,
    clothOnRight: isClothOnRight(sleeve, capEdge, turned),
    crown: startOf(middle),
    down,
    across: isForward ? square : times(square, -1),
  };
};

// A tip beyond the middle would lie on the other half's shoulder.
const refuseBeyond = (back: LaidHalf, front: LaidHalf, units: Units): void => {
  const beyond = [back, front].find(({ aside }) => aside < 0);
  if (!beyond) return;
  throw new Problem(
    "raglan-beyond",
    `The shoulder tip of the ${beyond.half} would lie ${lengthIn(-beyond.aside, units)} beyond the middle of the sleeve: the cap has no ease for it.`,
    {
      hint: "Lift the tips more, give the cap more ease, or draw the middle from where the shoulder seam meets the cap.",
    },
  );
};

const inTwo = (on: LaidSleeve, backName: string, frontName: string, units: Units): Piece[] => {
  const { sleeve, middle, middleName, back, front } = on;
  const slash = cutAlong(sleeve, middle, middleName ?? "the middle", units);
  return [raglanPart(on, back, slash, backName), raglanPart(on, front, slash, frontName)];
};

const inWords = (back: LaidHalf, front: LaidHalf, units: Units): string => {
  const lineOf = ({ laid, raglan }: LaidHalf): string => lengthIn(pathLength(laid.edges.get(raglan)!.path), units);
  const apart = lengthIn(distance(back.tipNow, front.tipNow), units);
  return `cut the shoulders off along ${lineOf(back)} in the back and ${lineOf(front)} in the front, and laid them on the cap, their tips ${apart} apart`;
};
