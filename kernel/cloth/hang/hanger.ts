// A piece made ready to hang: what holds it, its outline as a bent line, and the points of its hem as they hang.
import { pathLength, pointAt } from "../../geometry/arc-length.ts";
import { flattened } from "../../geometry/area.ts";
import type { Path, Span } from "../../geometry/path.ts";
import type { Point } from "../../geometry/point.ts";
import { boundary } from "../../outline.ts";
import type { Garment, Hang, Piece } from "../../working.ts";
import { flatness } from "./body-places.ts";
import { type Hanging, hangingOn, type Sheet } from "./exact.ts";
import { type Holding, holdingOf } from "./supports.ts";
import { withoutFacing } from "./without-facing.ts";

export interface Hanger {
  readonly piece: Piece;
  readonly holding: Holding;
  readonly sheet: Sheet;
}

/** Every piece of a garment that hangs from something and has one hem. */
export const hangers = (garment: Garment): Hanger[] =>
  [...garment.pieces.values()].flatMap((piece) => hangerOf(piece, hangOf(piece, garment)) ?? []);

/** What the recipe says a piece hangs from. */
export const hangOf = ({ name }: Piece, { hangs }: Garment): Hang | undefined =>
  hangs?.find(({ piece }) => piece === name);

/** A piece as its `hang` line has it held, or as is usual; undefined where it has no one hem that hangs from something. */
export const hangerOf = (whole: Piece, hang?: Hang): Hanger | undefined => {
  const piece = withoutFacing(whole);
  const loop = piece.doubtful ? undefined : boundary(piece);
  const holding = loop && holdingOf(piece, hang);
  return (
    holding && {
      piece,
      holding,
      sheet: { outline: flattened(loop, flatness).slice(0, -1), supports: holding.supports },
    }
  );
};

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
