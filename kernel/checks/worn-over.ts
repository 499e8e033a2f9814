// A garment that is worn over another has room for it, and falls over its hem.
import { defineCheck } from "../check.ts";
import { lengthIn } from "../units.ts";
import type { Garment, Judgement, Round, WornOver } from "../working.ts";

// A hem falls over the one under it where it is as wide at least. Common practice, no source.
const atHem = 0;

// How much longer half a round is elsewhere at least, mm: half of the 50 by which the bust ease of a coat worn over a jacket
// exceeds that of the jacket over a blouse, least against least (handbook of the trade 2.2: 160 and 110).
const elsewhere = 25;

// A length just at the amount has it, whatever its last digits.
const rounding = 1e-6;

const skirts = (opened: string): string => `chalkline 1
recipe "Stage skirt and the overskirt that goes over it"
units cm

piece skirt {
  line waist  = (0, 0) to (24 cm, 0)
  line side   = (24 cm, 0) to (24 cm, 60 cm)
  line hem    = (0, 60 cm) to (24 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline center, waist, side, hem
  mark hem as hem
  mark center as fold
  spread-from waist at 50% to hem by 8 cm
  true-seam hem, waist
}

piece overskirt = skirt {
  spread-from waist at 25% to hem by ${opened}
  true-seam hem, waist
}

wear overskirt.hem over skirt.hem wider 2 cm
`;

export const wornOver = defineCheck({
  name: "worn-over",
  since: "0.2",
  title: "A garment that is worn over another is wide enough for it.",
  why: "A hem that is narrower than the one under it holds that together: its folds are pressed flat, it shows below, and both climb in walking. Higher up the garment under it creases, and nobody gets an arm in.",
  passes: skirts("4 cm"),
  fails: skirts("1 cm"),

  *judge(garment) {
    for (const worn of garment.wornOver ?? []) {
      if (!worn.outer.edges.some((edge) => isDoubtful(garment, edge))) yield judged(worn, garment);
    }
  },
});

const isDoubtful = ({ pieces }: Garment, edge: string): boolean =>
  pieces.get(edge.slice(0, edge.lastIndexOf(".")))?.doubtful ?? false;

const judged = ({ outer, under, wider, isHem, drawnBy: where }: WornOver, { units }: Garment): Judgement => {
  const wanted = wider ?? (isHem ? atHem : elsewhere);
  const found = outer.length - under.length;
  const inWords = (mm: number): string => lengthIn(mm, units);
  const amount =
    Math.abs(found) <= rounding ? "as long" : `${inWords(Math.abs(found))} ${found > 0 ? "longer" : "shorter"}`;
  const said = `${called(outer)} ${outer.edges.length > 1 ? "measure" : "measures"} ${inWords(outer.length)}, ${amount} ${
    amount === "as long" ? "as" : "than"
  } ${called(under)} under it`;
  const about = { on: `${outer.edges.join(", ")} with ${under.edges.join(", ")}`, found, wanted, where };
  if (found >= wanted - rounding) return { ...about, verdict: "pass", message: `${said}, which is enough.` };
  const missing = inWords(wanted - found);
  return {
    ...about,
    verdict: "warning",
    message: `${said}; ${wanted === 0 ? "it is to be as long at least" : `it is to be ${inWords(wanted)} longer`}.`,
    hint: isHem
      ? `Open it by ${missing} or more with \`spread-evenly\`, or take that out of the one under it.`
      : `Give it ${missing} or more of ease, or say with \`wider\` what is enough here.`,
  };
};

const called = ({ edges }: Round): string =>
  edges.length > 1 ? `${edges.slice(0, -1).join(", ")} and ${edges.at(-1)}` : edges[0]!;
