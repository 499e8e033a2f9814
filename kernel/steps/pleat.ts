// pleat: folds an edge into pleats.
import { optional, phrase } from "../../grammar/phrase.ts";
import { type StretchTaken, stretchTaken } from "../alter/stretch-taken.ts";
import { pointAt } from "../geometry/arc-length.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn, plainNumber } from "../units.ts";
import type { TakeUp, Units } from "../working.ts";

export const pleat = pieceStep({
  name: "pleat",
  since: "0.2",
  summary: "Folds an edge, or a stretch of it, into so many even pleats.",
  details: `A pleat of a depth takes up twice its depth; a box pleat and an inverted pleat are two pleats laid away from each other or against
each other, and take up four times the depth. Say \`deep\` how deep each is, or \`into\` what the stretch measures when it is folded. There is half a space before the first pleat and behind the
last. Knife pleats are laid toward the end of the edge, unless \`facing start\` says otherwise. The cloth stays as it is cut; seams and
\`length(EDGE)\` reckon with the folded length. The drawing shows both lines of every pleat, and an arrow from the line that is lifted
to the line it is laid on. Where cloth is wanting, add it first with \`spread-apart\`.`,
  example: `chalkline 1
units cm
piece panel {
  line waist = (0, 0) to (60 cm, 0)
  line side  = (60 cm, 0) to (60 cm, 50 cm)
  line hem   = (0, 50 cm) to (60 cm, 50 cm)
  line front = (0, 0) to (0, 50 cm)
  outline waist, side, hem, front
  mark hem as hem
  pleat waist in 5 deep 4 cm
}`,
  phrase: [
    phrase`pleat ${slot.ownEdge("edge", "the edge that is folded")}
      in ${slot.number("count", "how many pleats")}
      deep ${slot.length("depth", "how deep each is, from its fold to the line it turns back at")}
      ${optional`as ${slot.choice("kind", "how they are folded; knife where not said", ["knife", "box", "inverted"])}`}
      ${optional`facing ${slot.choice("facing", "the end of the edge that knife pleats are laid toward", ["start", "end"])}`}
      ${optional`from ${slot.place("from", "where the pleats begin, if not at the end of the edge")}`}
      ${optional`until ${slot.place("until", "where they end, if not at the end of the edge")}`}
      ${optional`long ${slot.length("long", "how far into the cloth their lines are drawn; 6 cm where not said")}`}`,
    phrase`pleat ${slot.ownEdge("edge", "the edge that is folded")}
      in ${slot.number("count", "how many pleats")}
      into ${slot.length("length", "what it measures when it is folded")}
      ${optional`as ${slot.choice("kind", "how they are folded; knife where not said", ["knife", "box", "inverted"])}`}
      ${optional`facing ${slot.choice("facing", "the end of the edge that knife pleats are laid toward", ["start", "end"])}`}
      ${optional`from ${slot.place("from", "where the pleats begin, if not at the end of the edge")}`}
      ${optional`until ${slot.place("until", "where they end, if not at the end of the edge")}`}
      ${optional`long ${slot.length("long", "how far into the cloth their lines are drawn; 6 cm where not said")}`}`,
  ],
  work(fill, piece, { units, where }) {
    const { edge, count, kind = "knife", facing, from, until, long = usualLength } = fill;
    if (!Number.isInteger(count) || count < 1 || count > mostPleats) {
      throw new Problem("pleat-count", `Pleats come in a whole number, from 1 to ${mostPleats}.`, {
        hint: "Write for example `in 5`.",
      });
    }
    if (facing !== undefined && kind !== "knife") {
      throw new Problem("pleat-facing", `Only knife pleats face one way, and these are ${kind} pleats.`, {
        hint: "Leave `facing` out.",
      });
    }
    const stretch = stretchTaken(piece, edge, { from, until }, units);
    const cloth = stretch.to - stretch.from;
    const folds = kind === "knife" ? 1 : 2;
    const depth = "depth" in fill ? fill.depth : (cloth - fill.length) / (2 * folds * count);
    const finished = cloth - 2 * folds * count * depth;
    refuseImpossible(cloth, depth, finished, units);
    const laid = layings(kind, facing ?? "end", depth, finished / count);
    const takeUps = Array.from({ length: count }, (_, index) =>
      laid.map(({ at, toward }) =>
        pleatAt(stretch, edge, index * (cloth / count) + at, depth, { laid: toward, long, drawnBy: where }),
      ),
    ).flat();
    const pleats = count === 1 ? `1 ${kind} pleat` : `${count} ${kind} pleats`;
    return {
      now: { ...piece, takeUps: [...piece.takeUps, ...takeUps] },
      words: `${pleats} ${lengthIn(depth, units)} deep: ${lengthIn(cloth, units)} of ${edge} folded into ${lengthIn(finished, units)}, ${plainNumber(cloth / finished, 2)} : 1`,
    };
  },
});

/** How far the lines of a pleat are drawn where the recipe does not say, mm. */
const usualLength = 60;

/** More pleats than this in one line are a slip of the finger. */
const mostPleats = 200;

const refuseImpossible = (cloth: number, depth: number, finished: number, units: Units): void => {
  if (depth <= 0) {
    throw new Problem(
      "pleat-depth",
      `There is no cloth for pleats: ${lengthIn(cloth, units)} are to come out no shorter.`,
      {
        hint: "Add cloth first with `spread-apart`, or name a shorter length.",
      },
    );
  }
  // Less than this, in mm, would be left of the edge.
  if (finished > 1e-6) return;
  throw new Problem(
    "pleat-depth",
    `The pleats would take up ${lengthIn(cloth - finished, units)}, and the stretch is ${lengthIn(cloth, units)} long.`,
    { hint: "Take fewer pleats, or less deep ones, or add cloth first with `spread-apart`." },
  );
};

interface Laying {
  /** From where the share of cloth of one pleat begins, mm. */
  readonly at: number;
  readonly toward: "start" | "end";
}

/** The folds of one pleat in its share of the cloth; `space` is what shows of that share, mm. */
const layings = (
  kind: "knife" | "box" | "inverted",
  facing: "start" | "end",
  depth: number,
  space: number,
): Laying[] => {
  if (kind === "knife") return [{ at: space / 2, toward: facing }];
  if (kind === "inverted") {
    return [
      { at: space / 2, toward: "end" },
      { at: space / 2 + 2 * depth, toward: "start" },
    ];
  }
  // The box shows as wide as its two folds reach behind it, where there is room.
  const box = Math.min(2 * depth, space);
  return [
    { at: (space - box) / 2, toward: "start" },
    { at: (space + box) / 2 + 2 * depth, toward: "end" },
  ];
};

const pleatAt = (
  { path, from }: StretchTaken,
  edge: string,
  at: number,
  depth: number,
  more: Required<Pick<TakeUp, "laid" | "long" | "drawnBy">>,
): TakeUp => ({
  kind: "pleat",
  edge,
  from: pointAt(path, from + at),
  to: pointAt(path, from + at + 2 * depth),
  amount: 2 * depth,
  ...more,
});
