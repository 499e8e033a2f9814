// split-dart: a share of a dart goes to other places of the outline, as darts with names of their own.
import { optional, phrase } from "../../grammar/phrase.ts";
import { aboutPivot } from "../alter/about-pivot.ts";
import { type Opening, turnedDart, withDartIn } from "../alter/turned-dart.ts";
import { dartMeasures } from "../dart-measures.ts";
import type { Point } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { type Line, pieceStep, type Worked } from "../step.ts";
import { angleInWords } from "../units.ts";
import type { Piece } from "../working.ts";

export const splitDart = pieceStep({
  name: "split-dart",
  since: "0.1",
  summary: "Splits a dart: a share of its angle goes to other places of the outline, and it keeps what is left.",
  details: `Each place gets a new dart, by the names before the \`=\` and in their order; all point to the tip of the old one, and their angles add
up to what it had. \`by\` says what share of the angle each place gets, one ratio for all or one for each; without it the old dart and the
new ones get equal shares. What turns, and what stays, is as for \`move-dart\`.`,
  example: `chalkline 1
units cm
piece bodice {
  point bust-point = (9 cm, 22 cm)
  line neck     = (0, 0) to (7 cm, 0)
  line shoulder = (7 cm, 0) to (20 cm, 4 cm)
  line side     = (20 cm, 4 cm) to (22 cm, 40 cm)
  line waist    = (0, 40 cm) to (22 cm, 40 cm)
  line center   = (0, 0) to (0, 40 cm)
  outline center, neck, shoulder, side, waist
  mark center as fold
  dart lower = waist at 9 cm width 5 cm to bust-point
  split-dart upper = lower to side at 25 cm by 40%
  shorten-dart lower by 2 cm
  shorten-dart upper by 2.5 cm
  true-seam side, waist
}`,
  phrase: [
    phrase`split-dart ${slot.names("names", "what the new darts are called")} = ${slot.ownDart("dart", "the dart that is split")}
      to ${slot.places("places", "where the new darts open, on the outline")}
      ${optional`by ${slot.numbers("shares", "the share of the angle that goes there")}`}
      ${optional`about ${slot.place("about", "what it turns about; its tip where not said")}`}`,
  ],
  work({ names, dart: old, places, shares, about }, piece, line) {
    refuseUnequalLists(names, places, shares);
    const given = sharesOf(names.length, shares);
    const dart = aboutPivot(piece.darts.get(old)!, about, line.units);
    const { angle } = dartMeasures(dart);
    const start: Worked<Piece> = { now: { ...piece, darts: new Map(piece.darts).set(old, dart) }, words: "" };
    return names.reduce<Worked<Piece>>(({ now, words }, name, index) => {
      const part = given[index]! * angle;
      const to = { point: places[index]!, slot: "places", value: index };
      const next = withShareAt(now, old, name, to, part, line);
      return {
        now: next,
        words: [words, `${angleInWords(part)} of ${old} to ${name}`].filter((each) => each).join("; "),
      };
    }, start);
  },
});

const withShareAt = (piece: Piece, old: string, name: string, to: Opening, angle: number, line: Line): Piece => {
  const dart = piece.darts.get(old)!;
  const turned = turnedDart(piece, dart, to, angle, line);
  return withDartIn(turned, { name, tip: dart.tip, drawnBy: line.where });
};

const refuseUnequalLists = (
  names: readonly string[],
  places: readonly Point[],
  shares: readonly number[] | undefined,
): void => {
  if (names.length !== places.length) {
    throw new Problem(
      "split-dart-lists",
      `${names.length} ${names.length === 1 ? "name stands" : "names stand"} before the =, and ${places.length} ${places.length === 1 ? "place" : "places"} behind to.`,
      { hint: "Give each place a name.", slot: "places" },
    );
  }
  if (new Set(names).size < names.length) {
    throw new Problem("split-dart-lists", "Two of the new darts have one name.", { hint: "Give each its own." });
  }
  if (shares && shares.length > 1 && shares.length !== names.length) {
    throw new Problem("split-dart-lists", `There are ${shares.length} shares for ${names.length} darts.`, {
      hint: "Give each new dart a share, or one share for all.",
      slot: "shares",
    });
  }
};

/** The share of the angle that each new dart gets. */
const sharesOf = (count: number, shares: readonly number[] | undefined): number[] => {
  const each = shares ?? [1 / (count + 1)];
  const all = Array.from({ length: count }, (_, index) => each[index] ?? each[0]!);
  if (all.some((share) => share <= 0)) {
    throw new Problem("split-dart-share", "A share of a dart is more than nothing.", {
      hint: "Take a larger share.",
      slot: "shares",
    });
  }
  if (all.reduce((sum, share) => sum + share, 0) < 1 - 1e-9) return all;
  throw new Problem("split-dart-share", "The shares leave nothing of the dart that is split.", {
    hint: count === 1 ? "Take less, or use `move-dart`." : "Take less.",
    slot: "shares",
  });
};
