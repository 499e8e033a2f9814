// two-piece-sleeve: parts a one-piece sleeve into an upper and an under sleeve, with a hindarm and a forearm seam.
import { phrase } from "../../grammar/phrase.ts";
import { partedSleeve, type SleeveAsked } from "../alter/parted-sleeve.ts";
import { pieceWith } from "../alter/raglan-half.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";

export const twoPieceSleeve = garmentStep({
  name: "two-piece-sleeve",
  since: "0.2",
  summary: "Makes an upper and an under sleeve of a sleeve in one piece.",
  details: `The sleeve has a cap, two underarm seams and a straight wrist. Its underarm seam is no seam any more: the hindarm seam lies \`hindarm\` in from it on the back, the forearm seam
\`forearm\` in from it on the front, both measured across the sleeve at the underarm. What the underarm seams came in from there
to the wrist, the sleeve loses at the new seams, half on the upper and half on the under sleeve. So the two edges of a seam are mirror images, equally long. They leave the cap straight down the sleeve and meet the wrist squarely;
the forearm comes in all the way, the hindarm mostly below the elbow, which is \`elbow\` below the top of the cap.

The cap is shared out and measures what it did, and so does the wrist. The under sleeve lies flat along the old underarm, its grain down the middle. Both pieces have the edges \`hindarm\` and \`forearm\`, notched at the elbow, where the places \`hind-elbow\` and \`fore-elbow\` lie;
cap and wrist keep their names, and notches and places stay where they are on the cloth. Lines inside stay on the upper sleeve where it holds the whole of them. Elbow ease is opened in the upper sleeve afterwards, with \`spread-from\`, 6 to 15 mm by custom.`,
  phrase: [
    phrase`two-piece-sleeve ${slot.names("names", "what upper and under sleeve are called")} = ${slot.edge("cap", "the cap, from its back underarm to its front one")}
      hindarm ${slot.length("hindarm", "how far in from the back underarm the hindarm seam lies")}
      forearm ${slot.length("forearm", "how far in from the front underarm the forearm seam lies")}
      elbow ${slot.length("elbow", "the level of the elbow below the top of the cap")}`,
  ],
  example: `chalkline 1
units cm
piece sleeve {
  curve cap        = (-18 cm, 0) to (18 cm, 0) through (0, -14 cm) heading right leaving right arriving right
  curve under-front = (18 cm, 0) to (12 cm, 42 cm) leaving down arriving down
  curve under-back = (-18 cm, 0) to (-12 cm, 42 cm) leaving down arriving down
  line wrist       = (-12 cm, 42 cm) to (12 cm, 42 cm)
  outline cap, under-front, wrist, under-back
  mark wrist as hem
  grain (0, 0) to (0, 35 cm)
}
two-piece-sleeve upper, under = sleeve.cap hindarm 8 cm forearm 6 cm elbow 34 cm
seam upper.hindarm with under.hindarm
seam upper.forearm with under.forearm`,
  work({ names, cap, hindarm, forearm, elbow }, garment, { where, units }) {
    const [upper, under] = twoNames(names);
    const { piece: sleeve, edge: capEdge } = pieceWith(cap, garment, "sleeve-cap", "cap", units);
    const asked: SleeveAsked = {
      sleeve,
      capEdge,
      cap: cap.path,
      capTurned: cap.turned,
      hindarm,
      forearm,
      elbow,
      where,
    };
    const parts = partedSleeve(asked, upper, under, units);
    const pieces = new Map(garment.pieces).set(upper, parts.upper).set(under, parts.under);
    return { now: { ...garment, pieces }, words: inWords(parts.upper, parts.under, units) };
  },
});

const twoNames = (names: readonly string[]): [string, string] => {
  const [upper, under, more] = names;
  if (upper === undefined || under === undefined || more !== undefined) {
    throw new Problem(
      "sleeve-names",
      `The sleeve comes apart into two pieces, and here ${names.length === 1 ? "is one name" : `are ${names.length} names`}.`,
      { hint: "Write two names before the =, that of the upper sleeve first." },
    );
  }
  if (upper === under) {
    throw new Problem("name-taken", `Both parts would be called ${upper}.`, { hint: "Choose two names." });
  }
  return [upper, under];
};

const inWords = (upper: Piece, under: Piece, units: Units): string => {
  const long = (edge: string): string => lengthIn(pathLength(upper.edges.get(edge)!.path), units);
  return `parted into ${upper.name} and ${under.name}: hindarm ${long("hindarm")}, forearm ${long("forearm")}`;
};
