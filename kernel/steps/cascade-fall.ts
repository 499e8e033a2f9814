// cascade-fall: a piece of its own for a front edge, curved so that its free edge ripples.
import { phrase } from "../../grammar/phrase.ts";
import { arcSpans } from "../geometry/arc.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { endOf, type Path, startOf, straight } from "../geometry/path.ts";
import { type Point, plus } from "../geometry/point.ts";
import { emptyPiece } from "../piece.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { Edge, Piece } from "../working.ts";

export const cascadeFall = garmentStep({
  name: "cascade-fall",
  since: "0.2",
  summary:
    "Makes a rippling fall for a front edge: a curved strip whose free edge is longer than the edge it is sewn to.",
  details: `It is a strip as wide as said, slashed square from its free edge to its sewn edge at so many places that the slashes run together, and opened by the angle in
all. So the sewn edge is a true arc as long as the edge it goes to, and the free edge is longer by the width times the angle. Its edges are called \`inner\`, the
one that is sewn, \`free\`, \`top\` and \`bottom\`. Both sides of it show: hem it narrowly, or line it with itself.`,
  example: `chalkline 1
units cm
piece front {
  line top     = (0, 0) to (20 cm, 0)
  line side    = (20 cm, 0) to (24 cm, 60 cm)
  line hem     = (0, 60 cm) to (24 cm, 60 cm)
  line opening = (0, 0) to (0, 60 cm)
  outline opening, top, side, hem
}
cascade-fall fall = front.opening width 15 cm turning 90 deg
seam fall.inner with front.opening`,
  phrase: [
    phrase`cascade-fall ${slot.name("name", "what the new piece is called")} = ${slot.edge("edge", "the edge that it is sewn to")}
      width ${slot.length("width", "how wide it falls")}
      turning ${slot.angle("angle", "how far it curves in all")}`,
  ],
  work({ name, edge, width, angle }, garment, { where, units }) {
    const length = pathLength(edge.path);
    if (width <= 0 || angle <= 0) {
      throw new Problem("fall-nothing", "The width and the angle of a fall are above 0.", {
        hint: "Write a width and an angle above 0.",
      });
    }
    if (angle >= 2 * Math.PI) {
      throw new Problem("fall-laps", `A fall of ${angleInWords(angle)} would lie over itself on the cloth.`, {
        hint: "Stay below 360 deg, or make two falls and sew them together.",
      });
    }
    const piece = fallen(name, { length, width, angle }, where);
    const free = pathLength(piece.edges.get("free")!.path);
    return {
      now: { ...garment, pieces: new Map(garment.pieces).set(name, piece) },
      words: `a fall ${lengthIn(width, units)} wide for ${lengthIn(length, units)}, its free edge ${lengthIn(free, units)}`,
    };
  },
});

interface Fall {
  readonly length: number;
  readonly width: number;
  readonly angle: number;
}

const fallen = (name: string, { length, width, angle }: Fall, drawnBy: Edge["drawnBy"]): Piece => {
  const radius = length / angle;
  const center: Point = { x: 0, y: 0 };
  const [inStart, outStart]: Point[] = [
    { x: -radius, y: 0 },
    { x: -radius - width, y: 0 },
  ];
  const [inner, free] = [arcSpans(center, inStart!, -angle), arcSpans(center, outStart!, -angle)];
  const paths: readonly (readonly [string, Path, Edge["role"]])[] = [
    ["inner", inner, "seam"],
    ["bottom", straight(endOf(inner), endOf(free)), "hem"],
    ["free", free, "hem"],
    ["top", straight(startOf(inner), startOf(free)), "hem"],
  ];
  // The threads run along the front at the top; as far down as the curve leaves room.
  const room = Math.min(length / 2, 0.9 * Math.sqrt((radius + width) ** 2 - (radius + width / 2) ** 2));
  const from: Point = { x: -radius - width / 2, y: room * 0.1 };
  return {
    ...emptyPiece(name, drawnBy),
    edges: new Map(paths.map(([edge, path, role]) => [edge, { name: edge, path, role, drawnBy }])),
    outline: [
      { edge: "inner", turned: false },
      { edge: "bottom", turned: false },
      { edge: "free", turned: true },
      { edge: "top", turned: true },
    ],
    grain: { kind: "line", from, to: plus(from, { x: 0, y: room * 0.8 }), drawnBy },
  };
};
