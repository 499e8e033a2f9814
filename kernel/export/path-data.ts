// A path in the letters of SVG's `d`, and numbers as every format of text writes them.
import { endOf, type Path, type Span, startOf } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { plainNumber } from "../units.ts";

/** A path as SVG writes it (W3C SVG 2, 9.3: M, L, C, Z), in mm, closed with Z where it comes back to its start. */
export const pathData = (path: Path): string => {
  const start = startOf(path);
  const end = endOf(path);
  const closes = path.length > 1 && place(start) === place(end);
  return [`M${place(start)}`, ...path.map(spanData), ...(closes ? ["Z"] : [])].join(" ");
};

const spanData = (span: Span): string =>
  span.kind === "line"
    ? `L${place(span.end)}`
    : `C${place(span.startHandle)} ${place(span.endHandle)} ${place(span.end)}`;

/** A point as `x y`. */
export const place = ({ x, y }: Point): string => `${number(x)} ${number(y)}`;

/** A number as it is written, rounded once to 0.001; a number that is none would be a fault of the program. */
export const number = (value: number): string => {
  if (!Number.isFinite(value)) throw new Error("a drawing holds a number that is not finite");
  return plainNumber(value, 3);
};
