// A piece made ready to hang: what holds it, its outline as a bent line, and the points of its hem as they hang.
import { pathLength, pointAt } from "../../geometry/arc-length.ts";
import { flattened } from "../../geometry/area.ts";
import type { Path, Span } from "../../geometry/path.ts";
import type { Point } from "../../geometry/point.ts";
import { boundary } from "../../outline.ts";
import type { Garment, Piece } from "../../working.ts";
import { type Hanging, hangingOn, type Sheet } from "./exact.ts";
import { flatness, type Holding, holdingOf } from "./supports.ts";
import { withoutFacing } from "./without-facing.ts";

export interface Hanger {
  readonly piece: Piece;
  readonly holding: Holding;
  readonly sheet: Sheet;
}

/** Every piece of a garment that hangs from something and has one hem. */
export const hangers = (garment: Garment): Hanger[] =>
  [...garment.pieces.values()].map(withoutFacing).flatMap((piece) => {
    const whole = piece.doubtful ? undefined : boundary(piece);
    const holding = whole && holdingOf(piece);
    if (!holding) return [];
    return [
      { piece, holding, sheet: { outline: flattened(whole, flatness).slice(0, -1), supports: holding.supports } },
    ];
  });

/** Points of the hem, evenly spread and as many mm apart at most, as they hang. */
export const stationsOf = ({ holding: { hem }, sheet }: Hanger, apart: number): Hanging[] => {
  // On the bent line that stands for the hem, for a point of the curve may lie outside of it, where nothing holds it.
  const bent = flattened(hem.path, flatness);
  const line: Path = bent.slice(1).map((end, index): Span => ({ kind: "line", start: bent[index]!, end }));
  const length = pathLength(line);
  const count = Math.ceil(length / apart);
  const at = hangingOn(sheet);
  const points = Array.from({ length: count + 1 }, (_, index): Point => pointAt(line, (length * index) / count));
  return points.flatMap((point) => at(point) ?? []);
};

/** How far apart points of the hem are for the formula and for the mesh, mm. */
export const fine = 20;
export const coarse = 40;
