// What a plugin is given to declare steps and checks with: the very parts that the built-in ones are made of. A plugin imports
// nothing of ours, so that it works with the program as it is built and never with a second copy of it.
import { optional, phrase } from "../grammar/phrase.ts";
import { defineCheck } from "./check.ts";
import * as arcLength from "./geometry/arc-length.ts";
import * as intersect from "./geometry/intersect.ts";
import * as nearest from "./geometry/nearest.ts";
import * as path from "./geometry/path.ts";
import * as point from "./geometry/point.ts";
import * as split from "./geometry/split.ts";
import * as trig from "./geometry/trig.ts";
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
  geometry: { ...point, ...path, ...arcLength, ...split, ...nearest, ...intersect, ...trig },
} as const;

export type Kit = typeof kit;
