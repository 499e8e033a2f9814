// hang: what holds a piece up in the hang preview.
import { optional, phrase } from "../../grammar/phrase.ts";
import { withoutFacing } from "../cloth/hang/without-facing.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, startOf } from "../geometry/path.ts";
import { type Point, sameSpotTolerance } from "../geometry/point.ts";
import { hemsOf } from "../hem-turning.ts";
import { boundary, walked } from "../outline.ts";
import { Problem, type ProblemDetails, Withheld } from "../problem.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { EdgeValue } from "../value.ts";
import type { Edge, Garment, Hang, Piece } from "../working.ts";

export const hang = garmentStep({
  name: "hang",
  since: "0.2",
  summary: "Says what holds a piece up in the hang preview: edges all along, and single places.",
  details: `Nothing else holds the piece then. Where no line says it, a bodice hangs from its neck and shoulder and is held at the underarm, a
skirt hangs from its waist and a sleeve from its cap. A stretch of an edge will do, \`part(back.neck, back.nape, back.tip)\`. All of it stands
on the outline, and the hem, which hangs from it, is no part of it. The pattern is the same with this line and without it.`,
  phrase: [
    phrase`hang ${slot.piece("piece", "the piece")} ${optional`from ${slot.edges("edges", "the edges that are held all along")}`} ${optional`held ${slot.placesOnPiece("spots", "single places of the outline that are held")}`}`,
  ],
  example: `chalkline 1
units cm
piece apron {
  line top  = (0, 0) to (12 cm, 0)
  curve cut-away = (12 cm, 0) to (30 cm, 25 cm) leaving down arriving right
  line side = (30 cm, 25 cm) to (30 cm, 80 cm)
  line hem  = (0, 80 cm) to (30 cm, 80 cm)
  line center = (0, 0) to (0, 80 cm)
  outline center, top, cut-away, side, hem
  mark hem as hem
  mark center as fold
}
hang apron held apron.top.end, apron.side.start`,
  work({ piece: { called }, edges = [], spots = [] }, garment, { where, units }) {
    if (edges.length + spots.length === 0) {
      throw new Problem("hang-nothing", `This line does not say what holds ${called}.`, {
        hint: "Name edges behind `from`, or places behind `held`.",
      });
    }
    const piece = hangable(called, garment);
    const said: Hang = {
      piece: called,
      edges: edges.map((edge, value) => stretchOf(edge, piece, { slot: "edges", value })),
      spots: spots.map(({ point }, value) => spotOf(point, piece, { slot: "spots", value })),
      drawnBy: where,
    };
    const along = edges.map(({ of, path }) => `${lengthIn(pathLength(path), units)} of ${of!.edge}`);
    const places = spots.length === 0 ? [] : [spots.length === 1 ? "at 1 place" : `at ${spots.length} places`];
    const held = [...(along.length > 0 ? [`along ${along.join(", ")}`] : []), ...places];
    return { now: { ...garment, hangs: [...(garment.hangs ?? []), said] }, words: `held ${held.join(" and ")}` };
  },
});

/** The piece as it hangs; a Problem where it is none of this garment's, has no hem to hang, or a line above has it hung. */
const hangable = (called: string, { pieces, hangs = [] }: Garment): Piece => {
  const at = { slot: "piece" };
  const whole = pieces.get(called);
  if (!whole) {
    throw new Problem("hang-foreign", `${called} is not a piece of this garment.`, {
      ...at,
      hint: `Copy it in first: piece ${called.split(".").at(-1)} = ${called} { }.`,
    });
  }
  // Its own finding says what is wrong with it, and it is not hung.
  if (whole.doubtful || boundary(whole) === undefined) throw new Withheld();
  const before = hangs.find(({ piece }) => piece === called);
  if (before) {
    throw new Problem("hang-twice", `A line above says already what ${called} hangs from.`, {
      ...at,
      hint: "Name all that holds it in one line.",
      related: [{ where: before.drawnBy, message: "It does here." }],
    });
  }
  const piece = withoutFacing(whole);
  const [hem, ...others] = hemsOf(piece);
  if (!hem) {
    throw new Problem("hang-hemless", `No edge of ${called} is a hem, and a hem is what one sees hanging.`, {
      ...at,
      hint: "Write `mark EDGE as hem` in the piece.",
    });
  }
  if (others.length > 0) {
    const names = [hem, ...others].map(({ edge }) => edge.name);
    throw new Problem(
      "hang-hems",
      `${called} has ${names.length} hems, ${names.join(", ")}, and the preview hangs a piece by one.`,
      { ...at, hint: "Mark the other edges as seams, or join the edges into one hem." },
    );
  }
  return piece;
};

type At = Required<Pick<ProblemDetails, "slot" | "value">>;

const stretchOf = ({ of, path }: EdgeValue, piece: Piece, at: At): Hang["edges"][number] => {
  if (!of) {
    throw new Problem("hang-loose", `A line between two places is no edge of ${piece.name}.`, {
      ...at,
      hint: "Name an edge of it.",
    });
  }
  if (of.piece !== piece.name) {
    throw new Problem("hang-other", `${of.piece}.${of.edge} is no edge of ${piece.name}.`, {
      ...at,
      hint: `Name one of ${edgesToHold(piece)}.`,
    });
  }
  const part = walked(piece).find(({ edge }) => edge.name === of.edge);
  if (!part) {
    throw new Problem("hang-inner", `${of.edge} is not on the outline of ${piece.name} as it hangs.`, {
      ...at,
      hint: `Name one of ${edgesToHold(piece)}.`,
    });
  }
  if (part.edge.role === "hem") {
    throw new Problem("hang-hem", `${of.edge} is the hem of ${piece.name}: it hangs, and holds nothing.`, {
      ...at,
      hint: `Name one of ${edgesToHold(piece)}.`,
    });
  }
  const ends = [startOf(path), endOf(path)].map((end) => ratioOn(part.edge, end));
  return { edge: of.edge, from: Math.min(...ends), to: Math.max(...ends) };
};

const spotOf = (point: Point, piece: Piece, at: At): Hang["spots"][number] => {
  const there = walked(piece).filter(({ path }) => nearest(path, point).distance <= sameSpotTolerance);
  const [part] = there;
  if (!part) {
    throw new Problem("hang-off", `This place does not lie on the outline of ${piece.name} as it hangs.`, {
      ...at,
      hint: `Take a place on one of ${edgesToHold(piece)}.`,
    });
  }
  if (there.some(({ edge }) => edge.role === "hem")) {
    throw new Problem("hang-hem", `This place lies on the hem of ${piece.name}, which hangs and holds nothing.`, {
      ...at,
      hint: `Take a place on one of ${edgesToHold(piece)}.`,
    });
  }
  return { edge: part.edge.name, at: ratioOn(part.edge, point) };
};

const ratioOn = ({ path }: Edge, point: Point): number => nearest(path, point).at / pathLength(path);

const edgesToHold = (piece: Piece): string =>
  walked(piece)
    .filter(({ edge }) => edge.role !== "hem")
    .map(({ edge }) => `${piece.name}.${edge.name}`)
    .join(", ");
