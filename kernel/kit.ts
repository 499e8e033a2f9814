// What a plugin is given to declare steps and checks with: the very parts that the built-in ones are made of. A plugin imports
// nothing of ours, so that it works with the program as it is built and never with a second copy of it. Everything in it is named
// one by one: plugins rely on it, so nothing gets in because a file of ours happens to export it.
import { optional, phrase } from "../grammar/phrase.ts";
import { defineCheck } from "./check.ts";
import { directionAt, pathLength, pointAt } from "./geometry/arc-length.ts";
import { crossings, crossingsWithRay, linesMeet, selfCrossings } from "./geometry/intersect.ts";
import { feet, nearest } from "./geometry/nearest.ts";
import {
  corners,
  cubic,
  endDirection,
  endOf,
  isStraight,
  joined,
  line,
  mapped,
  reversed,
  startDirection,
  startOf,
  straight,
  through,
} from "./geometry/path.ts";
import {
  between,
  cross,
  distance,
  dot,
  minus,
  plus,
  quarterTurn,
  sameSpot,
  size,
  times,
  unit,
} from "./geometry/point.ts";
import { part, splitAt } from "./geometry/split.ts";
import {
  acos,
  angleOf,
  asin,
  atan,
  atan2,
  bearing,
  cos,
  sin,
  tan,
  toDegrees,
  toRadians,
  turnBetween,
} from "./geometry/trig.ts";
import { boundary, walked } from "./outline.ts";
import { Problem } from "./problem.ts";
import * as slot from "./slots.ts";
import { garmentStep, pieceStep } from "./step.ts";
import { angleInWords, lengthIn } from "./units.ts";

/** The kit: how sentences, slots, steps and checks are declared, how a line is refused, and geometry in mm and radians. */
export const kit = {
  phrase,
  optional,
  slot,
  pieceStep,
  garmentStep,
  defineCheck,
  Problem,
  lengthIn,
  angleInWords,
  boundary,
  walked,
  geometry: {
    // Points and directions.
    plus,
    minus,
    times,
    between,
    dot,
    cross,
    size,
    distance,
    sameSpot,
    unit,
    quarterTurn,
    // Paths, and what is measured along them.
    line,
    cubic,
    straight,
    through,
    startOf,
    endOf,
    startDirection,
    endDirection,
    reversed,
    mapped,
    joined,
    corners,
    isStraight,
    pathLength,
    pointAt,
    directionAt,
    splitAt,
    part,
    nearest,
    feet,
    crossings,
    crossingsWithRay,
    selfCrossings,
    linesMeet,
    // Angles, the same on every machine.
    sin,
    cos,
    tan,
    asin,
    acos,
    atan,
    atan2,
    toRadians,
    toDegrees,
    bearing,
    angleOf,
    turnBetween,
  },
} as const;
