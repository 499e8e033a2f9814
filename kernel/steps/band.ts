// band: draws a straight band from a length and a lap: a waistband, a cuff, a belt.
import { optional, phrase } from "../../grammar/phrase.ts";
import { withEdge, withPlace } from "../drawn.ts";
import { straight } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Notch, Piece, Role } from "../working.ts";

export const band = pieceStep({
  name: "band",
  since: "0.2",
  summary: "Draws a straight band from a length, a height and a lap: a waistband, a cuff, a belt.",
  details: `It lies level, \`lower\` and \`upper\` drawn to the right, from \`front-end\` to \`lap-end\`, and is the piece's outline. The lap, where one is said, lies beyond the length, and is
notched where it begins; the place there is called \`lap-start\`. With \`folded\` the upper edge is a fold, so that the band is cut twice as high, inside and out in one. The grain runs along it, unless
a line below says otherwise.
By custom a waistband has 2.5 to 4 cm of lap and is as high, a cuff is the wrist and 4 to 6 cm with its lap of 2 to 2.5 cm, 5 to 7 cm high; a belt with a buckle is the waist and 15 to 20 cm, a tied one the waist and 90 to 110 cm.`,
  phrase: [
    phrase`band ${slot.length("length", "its length without the lap")} high ${slot.length("height", "its finished height")}
      ${optional`lap ${slot.length("lap", "how far one end goes over the other")}`} ${optional`folded`}`,
  ],
  example: `chalkline 1
units cm
piece waistband {
  band 74 cm high 3.5 cm lap 3 cm folded
  allow lower, front-end, lap-end by 1 cm
}`,
  work(fill, piece, { where, units }) {
    const { length, height, lap = 0 } = fill;
    const folded = "folded" in fill;
    if (length <= 0 || height <= 0 || lap < 0) {
      throw new Problem("band-size", "A band has a length and a height, and a lap of 0 or more.", {
        hint: "Write lengths above 0.",
      });
    }
    if (piece.outline.length > 0) {
      throw new Problem("outline-twice", `${piece.name} already has its outline.`, {
        hint: "Draw the band in a piece of its own.",
      });
    }
    const taken = [...edgeNames, "lap-start"].find((name) => piece.edges.has(name) || piece.places.has(name));
    if (taken !== undefined) {
      throw new Problem("name-taken", `${taken} already names something here.`, {
        hint: "Draw the band in a piece of its own.",
      });
    }
    const right = length + lap;
    const corner = (x: number, y: number): Point => ({ x, y });
    const [a, b, c, d] = [corner(0, height), corner(right, height), corner(right, 0), corner(0, 0)];
    const lines: [string, Point, Point, Role][] = [
      ["lower", a, b, "seam"],
      ["lap-end", c, b, "seam"],
      ["upper", d, c, folded ? "fold" : "seam"],
      ["front-end", d, a, "seam"],
    ];
    const drawn = lines.reduce(
      (now, [name, start, end, role]) => withEdge(now, { name, path: straight(start, end), role, drawnBy: where }),
      piece,
    );
    const lapStart = corner(length, height);
    const notches: Notch[] = [
      { edge: "lower", point: lapStart, double: false, drawnBy: where },
      ...(folded ? [] : [{ edge: "upper", point: corner(length, 0), double: false, drawnBy: where }]),
    ];
    const marked: Piece =
      lap === 0
        ? drawn
        : { ...withPlace(drawn, "lap-start", lapStart, where), notches: [...piece.notches, ...notches] };
    return {
      now: {
        ...marked,
        outline: [
          { edge: "lower", turned: true },
          { edge: "front-end", turned: true },
          { edge: "upper", turned: false },
          { edge: "lap-end", turned: false },
        ],
        grain: { kind: "along", edge: "lower", drawnBy: where },
      },
      words: `a band ${lengthIn(right, units)} long${lap > 0 ? `, ${lengthIn(lap, units)} of it lap` : ""}, ${lengthIn(height, units)} high${folded ? " folded" : ""}`,
    };
  },
});

const edgeNames = ["lower", "lap-end", "upper", "front-end"];
