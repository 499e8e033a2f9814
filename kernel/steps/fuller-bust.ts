// fuller-bust: gives a front room for a fuller bust, or takes it away for a flatter one.
import { phrase } from "../../grammar/phrase.ts";
import { closedBoundary, turnInOutline } from "../alter/outline-spot.ts";
import {
  acrossToward,
  dartInMouth,
  downAtCenter,
  edgeUnder,
  hingeOverShutDart,
  mouthPart,
  rayEnd,
  refuseUsedUp,
  type Swing,
  swung,
  tipAfter,
} from "../alter/swing-part.ts";
import { turnAt } from "../alter/turned.ts";
import { withDart } from "../alter/with-dart.ts";
import { contains } from "../geometry/area.ts";
import type { Path } from "../geometry/path.ts";
import { distance, dot, minus, type Point, plus, times } from "../geometry/point.ts";
import { bearing, turnBetween } from "../geometry/trig.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { PlaceOnPiece } from "../value.ts";
import type { Dart, Edge, Piece, Units } from "../working.ts";

export const fullerBust = pieceStep({
  name: "fuller-bust",
  since: "0.2",
  summary:
    "Makes a front wider and longer over the bust point, the cloth taken up by a dart; narrower by a negative length.",
  details: `The front is slashed from the hinge on the armhole to the bust point, from there to the side, and straight down to the hem. The
part at the side swings about the hinge until the bust point has moved out by the length; the part below it follows without turning, so that it stays
on grain, and the front below the bust point gets as much longer as it went down. Armhole, shoulder and neck keep their length, and so does
the side once the dart is sewn. Width and length are those of one piece: a front cut twice gets twice the width.

The dart opens at the side, or above the hinge: in the armhole, at the shoulder or at the neck. There the cloth is the same as if it had been
taken to the side and moved: the part below the hinge goes out and down without turning, and the one between hinge and dart turns.

The name is that of the new dart, which ends at the bust point: take it back 2 to 3 cm with \`shorten-dart\`. \`into\` names a dart that is there
and takes up the swing, or gives it for a flatter bust. A waist dart under the bust point gets wider or narrower by the length.`,
  example: `chalkline 1
units cm
piece front {
  point bust    = (9 cm, 26 cm)
  curve neck    = (0, 6 cm) to (7.4 cm, -2.5 cm) handles (4 cm, 6 cm), (5.6 cm, 1.8 cm)
  line shoulder = (7.4 cm, -2.5 cm) to (20 cm, 2.7 cm)
  curve armhole = (20 cm, 2.7 cm) to (27 cm, 24 cm) through (17.5 cm, 13 cm) heading down arriving right
  line side     = (27 cm, 24 cm) to (27 cm, 60 cm)
  line hem      = (0, 60 cm) to (27 cm, 60 cm)
  line center   = (0, 6 cm) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
  mark hem as hem
  fuller-bust bust-dart = bust by 1.5 cm about armhole at 60% to side at 6 cm
}`,
  phrase: [
    phrase`fuller-bust ${slot.name("dart", "what the new dart is called")} = ${slot.placeOnPiece("bust", "the bust point")}
      by ${slot.length("width", "how far it moves out")}
      about ${slot.placeOnPiece("hinge", "the place on the armhole that the cloth swings about")}
      to ${slot.placeOnPiece("mouth", "where the dart opens: on the side, or above the hinge")}`,
    phrase`fuller-bust ${slot.placeOnPiece("bust", "the bust point")}
      by ${slot.length("width", "how far it moves out; negative makes the bust flatter")}
      about ${slot.placeOnPiece("hinge", "the place on the armhole that the cloth swings about")}
      into ${slot.ownDart("into", "the dart that takes it up or gives it")}`,
  ],
  work(fill, piece, { where, units }) {
    const { bust, width, hinge } = fill;
    const whole = closedBoundary(piece, units);
    if (!contains(whole, bust.point)) {
      throw new Problem("pivot-outside", `The bust point does not lie inside ${piece.name}.`, {
        hint: "Name a place inside the piece.",
        slot: "bust",
      });
    }
    const hingeEdge = onOutline(piece, hinge, "hinge");
    const old = "mouth" in fill ? undefined : piece.darts.get(fill.into)!;
    const mouth = "mouth" in fill ? fill.mouth.point : old!;
    const mouthEdge = "mouth" in fill ? onOutline(piece, fill.mouth, "dart") : old!.edge;
    turnInOutline(piece, mouthEdge);
    if (width === 0) return { now: piece, words: "" };
    if ("mouth" in fill && width < 0) {
      throw new Problem("bust-no-dart", "A flatter bust takes from a dart, and this line makes a new one.", {
        hint: "Write the line without a new name, and with `into` and the dart that gives it in place of `to`.",
        slot: "width",
      });
    }
    const toHinge = minus(hinge.point, bust.point);
    const nearly = bearing(Math.PI / 2 + turnAt(piece, hingeEdge, hinge.point));
    const down = downAtCenter(piece, whole, bust.point, times(acrossToward(nearly, toHinge), -1));
    const out = acrossToward(down, toHinge);
    const level = rayEnd(whole, bust.point, times(out, -1));
    const third = rayEnd(whole, bust.point, down);
    const cuts = { hinge: hinge.point, pivot: bust.point, third, beside: { to: level } };
    refuseMouth(whole, { ...cuts, mouth }, piece.edges.get(mouthEdge)!, units);
    // A dart above the hinge is shut while the cloth swings, so that its legs are as long as one another afterward as well.
    const isAbove = mouthPart(whole, { ...cuts, mouth }) === "above";
    const about = old && isAbove ? hingeOverShutDart(whole, { ...cuts, mouth: old }) : hinge.point;
    const swing = swingOver(bust.point, about, { down, out }, width, units);
    const result = swung(piece, {
      ...cuts,
      mouth,
      turn: swing.turn,
      pivotTo: swing.to,
      beside: { by: times(down, swing.longer), to: level },
    });
    const name = "mouth" in fill ? fill.dart : old!.name;
    const legs = dartInMouth(result.piece, mouthEdge, result.mouth);
    const tip = old ? tipAfter(old, bust.point, result.pivot, result.mouth) : result.pivot;
    const dart: Dart = { ...(old ?? { name, edge: mouthEdge, drawnBy: where }), ...legs, tip };
    if (old && width < 0) refuseUsedUp(old, swing.turn, bust.point);
    return {
      now: withDart(result.piece, dart),
      words:
        `moved the bust point ${lengthIn(Math.abs(width), units)} ${width > 0 ? "out" : "in"} and ${lengthIn(Math.abs(swing.longer), units)} ${swing.longer > 0 ? "down" : "up"}, ` +
        `${angleInWords(Math.abs(swing.turn))} about the ${hingeEdge}; the dart ${name} is ${lengthIn(distance(dart.first, dart.second), units)} wide`,
      amount: width,
    };
  },
});

const onOutline = (piece: Piece, place: PlaceOnPiece, what: string): string => {
  const edge = edgeUnder(piece, place.point);
  if (edge !== undefined) return edge;
  throw new Problem(`${what}-off-outline`, `The place of the ${what} does not lie inside an edge of the outline.`, {
    hint: "Give it as a place along an edge, as in `armhole at 60%`.",
    slot: what === "hinge" ? "hinge" : "mouth",
  });
};

/** A Problem where the dart would open on the part that only goes down, or where nothing would be left to swing. */
const refuseMouth = (
  whole: Path,
  cuts: Pick<Swing, "hinge" | "mouth" | "third"> & { readonly beside: { readonly to: Point } },
  { name: edge, role }: Edge,
  units: Units,
): void => {
  const { mouth, hinge } = cuts;
  const slot = "tip" in mouth ? "into" : "mouth";
  const ends = "tip" in mouth ? [mouth.first, mouth.second] : [mouth];
  if (ends.some((end) => distance(end, hinge) < narrowest)) {
    throw new Problem("dart-at-hinge", `The dart opens less than ${lengthIn(narrowest, units)} from the hinge.`, {
      hint: "Take a hinge further from it.",
      slot: "hinge",
    });
  }
  if (role === "fold") {
    throw new Problem("dart-on-fold", `The dart would open on the ${edge}, and a fold does not open.`, {
      hint: "Let it open at the side, the armhole, the shoulder or the neck.",
      slot,
    });
  }
  if (mouthPart(whole, cuts) !== "between") return;
  throw new Problem(
    "bust-dart-below",
    `The dart would open on the ${edge} between the cut straight down from the bust point and the cut level to the center, and the cloth there only goes down.`,
    {
      hint: "Let it open at the side, the armhole, the shoulder or the neck; `move-dart` takes it from there to anywhere.",
      slot,
    },
  );
};

/** The swing that moves the bust point out by a width: where that goes, and how far down. */
const swingOver = (
  bust: Point,
  hinge: Point,
  { down, out }: { readonly down: Point; readonly out: Point },
  width: number,
  units: Units,
): { readonly turn: number; readonly to: Point; readonly longer: number } => {
  const from = minus(bust, hinge);
  const radius = distance(bust, hinge);
  const [across, below] = [dot(from, out) + width, dot(from, down)];
  if (below <= 0) {
    throw new Problem("hinge-below-bust", "The hinge does not lie above the bust point.", {
      hint: "Take a place higher on the armhole.",
      slot: "hinge",
    });
  }
  if (Math.abs(across) >= radius || across >= 0) {
    throw new Problem("bust-too-much", `The bust point cannot move ${lengthIn(width, units)} with this hinge.`, {
      hint: "Take a smaller length.",
      slot: "width",
    });
  }
  const deeper = Math.sqrt(radius * radius - across * across);
  const way = plus(times(out, across), times(down, deeper));
  return { turn: turnBetween(from, way), to: plus(hinge, way), longer: deeper - below };
};

// The cloth between hinge and dart is at least this wide at the edge, in mm.
const narrowest = 10;
