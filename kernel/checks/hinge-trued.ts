// What a slash left behind has been trued: the kink at its hinge, and the straight bridge over its opening.
import { defineCheck } from "../check.ts";
import { pointAt } from "../geometry/arc-length.ts";
import { corners, type Span } from "../geometry/path.ts";
import { sameSpot } from "../geometry/point.ts";
import { toDegrees, toRadians } from "../geometry/trig.ts";
import { boundary, walked } from "../outline.ts";
import { angleInWords } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Edge, Hinge, Judgement, Piece } from "../working.ts";

// Degrees; a kink up to this is lost in the stitching (handbook of the trade 5.3).
const tolerance = 1;

// An angle just at the tolerance is within it, whatever its last digits.
const rounding = 1e-6;

export const hingeTrued = defineCheck({
  name: "hinge-trued",
  since: "0.1",
  title: "Where a piece was slashed, no edge keeps a kink over 1 degree.",
  why: "Nobody sews a kink: the line must be a curve before the piece is cut, and then it has another length.",
  passes: `chalkline 1
recipe "Gown panel, flared and trued"
units cm

piece panel {
  point A = (0, 0)
  point B = A right 30 cm
  point C = B down 100 cm
  point D = A down 100 cm
  line waist = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline waist, side, hem, center
}

piece flared = panel {
  spread-from waist at 50% to hem by 20 cm
  true-seam hem, waist
}
`,
  fails: `chalkline 1
recipe "Gown panel, flared, its waist left with a kink"
units cm

piece panel {
  point A = (0, 0)
  point B = A right 30 cm
  point C = B down 100 cm
  point D = A down 100 cm
  line waist = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline waist, side, hem, center
}

piece flared = panel {
  spread-from waist at 50% to hem by 20 cm
  true-seam hem
}
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      if (piece.doubtful || boundary(piece) === undefined) continue;
      for (const hinge of piece.hinges) {
        const judgement = kinkAt(piece, hinge);
        if (judgement) yield judgement;
      }
      for (const { edge } of walked(piece)) {
        const judgement = bridgesOf(piece, edge);
        if (judgement) yield judgement;
      }
    }
  },
});

// A hinge whose edge another edge has replaced is no longer in the way.
const kinkAt = (piece: Piece, hinge: Hinge): Judgement | undefined => {
  const part = walked(piece).find(({ edge }) => edge.name === hinge.edge);
  if (!part) return undefined;
  const { edge } = part;
  const there = corners(edge.path, 0).filter(({ at }) => sameSpot(pointAt(edge.path, at), hinge.point));
  const turn = Math.max(0, ...there.map((corner) => Math.abs(corner.turn)));
  const about = { on: `${piece.name}.${edge.name}`, found: toDegrees(turn), wanted: 0, where: hinge.drawnBy };
  if (turn <= toRadians(tolerance + rounding)) {
    const message = `The ${edge.name} of ${piece.name} is smooth where its slash was hinged.`;
    return { ...about, verdict: "pass", message };
  }
  return {
    ...about,
    verdict: "warning",
    message: `The ${edge.name} of ${piece.name} has a kink of ${angleInWords(turn)} where its slash was hinged.`,
    hint: `Add \`true-seam ${edge.name}\` below the last slash.`,
    related: [{ where: whereToMend(piece, edge), message: `${edge.name} is drawn here.` }],
  };
};

// One judgement an edge: a hem with several openings is trued by one line.
const bridgesOf = (piece: Piece, edge: Edge): Judgement | undefined => {
  const bridges = edge.path.filter(isBridge);
  const [first] = bridges;
  if (first === undefined) return undefined;
  const beside = corners(edge.path, 0).filter(
    ({ index }) => isBridge(edge.path[index]!) || isBridge(edge.path[index - 1]!),
  );
  const turn = Math.max(0, ...beside.map((corner) => Math.abs(corner.turn)));
  const hinge = piece.hinges.find(({ point }) => first.pivot && sameSpot(point, first.pivot));
  const where = hinge ? hinge.drawnBy : whereToMend(piece, edge);
  const about = { on: `${piece.name}.${edge.name}`, found: toDegrees(turn), wanted: 0, where };
  if (turn <= toRadians(tolerance + rounding)) {
    const message = `The ${edge.name} of ${piece.name} is smooth across its opening.`;
    return { ...about, verdict: "pass", message };
  }
  const openings = bridges.length === 1 ? "its opening" : `one of its ${bridges.length} openings`;
  return {
    ...about,
    verdict: "warning",
    message: `The ${edge.name} of ${piece.name} runs straight across ${openings}, with a corner of ${angleInWords(turn)}.`,
    hint: `Add \`true-seam ${edge.name}\` below the last slash.`,
    ...(hinge ? { related: [{ where: whereToMend(piece, edge), message: `${edge.name} is drawn here.` }] } : {}),
  };
};

const isBridge = (span: Span): boolean => span.kind === "line" && span.pivot !== undefined;
