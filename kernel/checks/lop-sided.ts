// What is drafted apart for left and right, and was alike, hangs with as much fullness on both sides.
import { defineCheck } from "../check.ts";
import { halvesIn, type Pair, type Whole } from "../cloth/hang/halves.ts";
import { lengthIn } from "../units.ts";
import type { Garment, Judgement } from "../working.ts";

// mm: less than this is not even a small fold (common practice, no source).
const mostApart = 20;

// As a share of the fuller side: among many folds nobody sees one more or less.
const mostShare = 0.1;

const fronts = (left: string): string => `chalkline 1
recipe "Usher's vest, drafted apart for left and right"
units cm

fabric shell "satin" width 150 cm weight 200 gsm

piece front {
  line shoulder = (0, 0) to (20 cm, 0)
  line side     = (20 cm, 0) to (20 cm, 50 cm)
  line hem      = (0, 50 cm) to (20 cm, 50 cm)
  line opening  = (0, 0) to (0, 50 cm)
  outline shoulder, side, hem, opening
  mark hem as hem
  mark opening as opening
  grain along opening
  allow shoulder, side, hem, opening by 1 cm
}

piece right-front = front {
  spread-from shoulder at 50% to hem by 6 cm
  true-seam hem, shoulder
}

piece left-front = front {
  mirror
  spread-from shoulder at 50% to hem by ${left}
  true-seam hem, shoulder
}

cut right-front 1 from shell
cut left-front 1 from shell
`;

export const lopSided = defineCheck({
  name: "lop-sided",
  since: "0.2",
  title: "Left and right that were alike hang with as much fullness on both sides.",
  why: "The fuller side hangs in more and deeper folds and pulls the other round, and a fuller front shows it to everybody.",
  passes: fronts("6 cm"),
  fails: fronts("3 cm"),

  *judge(garment) {
    for (const halves of halvesIn(garment)) yield judged(halves, garment);
  },
});

const judged = (halves: Pair | Whole, garment: Garment): Judgement => {
  const [left, right] = halves.slack;
  const apart = Math.abs(left - right);
  const inWords = (mm: number): string => lengthIn(mm, garment.units);
  const hems =
    "piece" in halves
      ? [`${halves.piece.piece.name}.${halves.piece.holding.hem.edge.name}`]
      : halves.pieces.map(({ piece, holding }) => `${piece.name}.${holding.hem.edge.name}`);
  const pieces = "piece" in halves ? [halves.piece.piece] : halves.pieces.map(({ piece }) => piece);
  const about = {
    on: hems.join(" with "),
    found: apart,
    wanted: Math.max(mostApart, mostShare * Math.max(left, right)),
    where: garment.pieces.get(pieces.at(-1)!.name)!.drawnBy,
  };
  const [first, second] =
    "piece" in halves ? [`The left half of ${pieces[0]!.name}`, "its right half"] : [pieces[0]!.name, pieces[1]!.name];
  const said = `${first} hangs with ${inWords(left)} of fullness at its hem, and ${second} with ${inWords(right)}`;
  if (apart <= about.wanted) return { ...about, verdict: "pass", message: `${said}.` };
  return {
    ...about,
    verdict: "warning",
    message: `${said}: ${inWords(apart)} apart, though they were alike before.`,
    hint: "Open both by the same amount, or accept it where it is meant for a figure or a design.",
  };
};
