// A piece is no wider across the threads than the cloth it is cut from.
import { defineCheck } from "../check.ts";
import { cuttingLine } from "../cloth/allowances/cutting-line.ts";
import { bounds } from "../geometry/bounds.ts";
import { mirroredIn } from "../geometry/mirror.ts";
import { endOf, mapped, type Path, startOf } from "../geometry/path.ts";
import { cross, dot, type Point, quarterTurn } from "../geometry/point.ts";
import { foldOf, grainDirection } from "../grain-direction.ts";
import { lengthIn } from "../units.ts";
import { capital } from "../value.ts";
import type { Cut, Fabric, Garment, Judgement, Piece, Units } from "../working.ts";

// Widths come from sums of many stretches; a piece just as wide as its cloth fits.
const rounding = 1e-6;

export const fitsCloth = defineCheck({
  name: "fits-cloth",
  since: "0.1",
  title: "Every piece, with its allowances and opened on its fold, fits the width of its cloth when laid on the grain.",
  why: "A piece that is wider than the cloth can only be cut off grain or with a join that the recipe does not have.",
  passes: `chalkline 1
recipe "Stage curtain valance, cut along the cloth"
units cm

fabric drape "velvet" width 140 cm weight 400 gsm

piece valance {
  point A = (0, 0)
  point B = A right 160 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line heading = A to B
  line end-edge = B to C
  line lower = D to C
  line front-edge = A to D
  outline heading, end-edge, lower, front-edge
  grain along heading
  allow heading, end-edge, lower, front-edge by 2 cm
}

cut valance 2 from drape
`,
  fails: `chalkline 1
recipe "Stage curtain valance, cut across the cloth"
units cm

fabric drape "velvet" width 140 cm weight 400 gsm

piece valance {
  point A = (0, 0)
  point B = A right 160 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line heading = A to B
  line end-edge = B to C
  line lower = D to C
  line front-edge = A to D
  outline heading, end-edge, lower, front-edge
  grain along front-edge
  allow heading, end-edge, lower, front-edge by 2 cm
}

cut valance 2 from drape
`,

  *judge(garment) {
    for (const cut of garment.cuts) {
      const piece = garment.pieces.get(cut.piece);
      const fabric = garment.fabrics.get(cut.fabric);
      const judgement = piece && fabric && !piece.doubtful ? fits(piece, fabric, cut, garment) : undefined;
      if (judgement) yield judgement;
    }
  },
});

// Without a width, a grain or a closed outline there is nothing to measure; other checks ask for the last two.
const fits = (piece: Piece, fabric: Fabric, cut: Cut, { units }: Garment): Judgement | undefined => {
  const cutting = cuttingLine(piece);
  const grain = grainDirection(piece);
  if (!cutting || !grain || fabric.width === undefined) return undefined;
  const fold = foldOf(piece);
  const opened = fold ? [cutting.path, mirrorImage(cutting.path, fold.path)] : [cutting.path];
  const found = widthAcross(opened, grain);
  const about = {
    on: piece.name,
    found,
    wanted: `at most ${lengthIn(fabric.width, "mm")}`,
    where: cut.drawnBy,
    message:
      `With its allowances${fold ? ", opened on its fold," : ""} ${piece.name} is ${lengthIn(found, units)} wide ` +
      `across the grain; ${fabric.name} is ${lengthIn(fabric.width, units)} wide.`,
  };
  if (found <= fabric.width + rounding) return { ...about, verdict: "pass" };
  return {
    ...about,
    verdict: "error",
    hint: waysOut(piece, fabric, { found, along: widthAcross(opened, quarterTurn(grain)), width: fabric.width }, units),
    related: [
      { where: fabric.drawnBy, message: `${fabric.name} is described here.` },
      ...(piece.grain ? [{ where: piece.grain.drawnBy, message: "The grain line is drawn here." }] : []),
    ],
  };
};

/** What would solve it, in numbers: the grain turned across, a seam, a wider cloth. */
const waysOut = (
  piece: Piece,
  fabric: Fabric,
  { found, along, width }: { readonly found: number; readonly along: number; readonly width: number },
  units: Units,
): string => {
  const turned =
    along <= width + rounding && !fabric.oneWay
      ? [`turn its grain line across, when it is ${lengthIn(along, units)} wide`]
      : [];
  const ways = [...turned, seamed(piece, width, found, units), `take cloth at least ${lengthIn(found, units)} wide`];
  return `${capital(ways.join(", or "))}.`;
};

/** The fewest seams along the grain that bring each part within the width, every one with its allowance on both sides. */
const seamed = (piece: Piece, width: number, found: number, units: Units): string => {
  const widest = (parts: number): number => (found + 2 * seamAllowance * (parts - 1)) / parts;
  const fold = foldOf(piece);
  if (fold && widest(2) <= width + rounding) {
    return (
      `cut it in two halves with a seam in place of the fold, each ${lengthIn(widest(2), units)} wide: ` +
      `\`mark ${fold.name} as seam\`, \`allow ${fold.name} by ${lengthIn(seamAllowance, units)}\``
    );
  }
  const parts = Array.from({ length: mostSeams }, (_, seams) => seams + 2).find((n) => widest(n) <= width + rounding);
  if (parts === undefined) return "make it narrower";
  const seams = parts === 2 ? "a seam" : `${parts - 1} seams`;
  return `\`split\` it by ${seams} along the grain into ${parts} parts of ${lengthIn(widest(parts), units)} each`;
};

// What a seam takes on either side, mm, where the recipe has not said: the usual 1.5 cm.
const seamAllowance = 15;

// A piece that needs more seams than this is no longer the piece that was meant.
const mostSeams = 7;

const mirrorImage = (path: Path, fold: Path): Path =>
  mapped(path, (point) => mirroredIn(point, startOf(fold), endOf(fold)));

// Turned so that the grain runs down the table, the piece is as wide as its upright box.
const widthAcross = (paths: readonly Path[], grain: Point): number => {
  const turned = paths.map((path) => mapped(path, (point) => ({ x: cross(point, grain), y: dot(point, grain) })));
  const { left, right } = bounds(turned);
  return right - left;
};
