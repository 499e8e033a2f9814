// Sines, cosines and their inverses in plain arithmetic, and angles on the page. Engines differ in the last bit of
// their built-in ones, which would change a pattern from one machine to the next; nothing else may use the built-in ones.
import type { Point } from "./point.ts";
import { cross, dot } from "./point.ts";

// The polynomials and the pieces of a quarter turn are those of fdlibm (Sun Microsystems 1993, freely given).
// The first two pieces have 33 bits each, so that a whole number of quarter turns times a piece is exact.
const quarterA = 1.5707963267341256;
const quarterB = 6.077100506303966e-11;
const quarterRest = 2.0222662487959506e-21;
const quartersInRadian = 0.6366197723675814;

/** The sine of an angle in radians, exact to the last bit or two for angles below 100,000. */
export const sin = (angle: number): number => {
  const { quarters, rest, tail } = reduced(angle);
  const value = quarters % 2 === 0 ? sinOfSmall(rest, tail) : cosOfSmall(rest, tail);
  return quarters < 2 ? value : -value;
};

/** The cosine of an angle in radians, as exact as the sine. */
export const cos = (angle: number): number => {
  const { quarters, rest, tail } = reduced(angle);
  const value = quarters % 2 === 0 ? cosOfSmall(rest, tail) : sinOfSmall(rest, tail);
  return quarters === 0 || quarters === 3 ? value : -value;
};

/** The tangent of an angle in radians. */
export const tan = (angle: number): number => sin(angle) / cos(angle);

/** The angle in [-pi/2, pi/2] with this sine; not a number outside [-1, 1]. */
export const asin = (value: number): number => atan2(value, Math.sqrt((1 - value) * (1 + value)));

/** The angle in [0, pi] with this cosine; not a number outside [-1, 1]. */
export const acos = (value: number): number => atan2(Math.sqrt((1 - value) * (1 + value)), value);

/** The angle in [-pi/2, pi/2] with this tangent. */
export const atan = (value: number): number => {
  const positive = Math.abs(value);
  if (!(positive > 0)) return value;
  const angle = atanOfPositive(positive);
  return value < 0 ? -angle : angle;
};

/** The angle in [-pi, pi] of the vector (x, y), as the standard function of this name. */
export const atan2 = (y: number, x: number): number => {
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN;
  const down = y < 0 || Object.is(y, -0);
  if (y === 0) {
    const flat = x < 0 || Object.is(x, -0) ? Math.PI : 0;
    return down ? -flat : flat;
  }
  if (x === 0) return down ? -Math.PI / 2 : Math.PI / 2;
  const steep = atanOfPositive(Math.abs(y / x));
  // Half a turn is not a binary fraction; what is missing from Math.PI is put back before the angle is taken off.
  const angle = x > 0 ? steep : Math.PI - (steep - 1.2246467991473532e-16);
  return down ? -angle : angle;
};

/** Degrees as radians. */
export const toRadians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Radians as degrees. */
export const toDegrees = (radians: number): number => (radians * 180) / Math.PI;

/** The vector of length 1 at an angle in radians: 0 points right, a quarter turn points down. */
export const bearing = (angle: number): Point => ({ x: cos(angle), y: sin(angle) });

/** The angle of a vector in (-pi, pi], radians, clockwise on the page from pointing right. */
export const angleOf = (v: Point): number => halfOpen(atan2(v.y, v.x));

/** The turn in (-pi, pi] from direction a to direction b, radians, positive clockwise on the page. */
export const turnBetween = (a: Point, b: Point): number => halfOpen(atan2(cross(a, b), dot(a, b)));

const halfOpen = (angle: number): number => (angle === -Math.PI ? Math.PI : angle);

// Takes whole quarter turns off (Cody and Waite): what is left lies in [-pi/4, pi/4], with its rounding error as `tail`.
const reduced = (angle: number): { quarters: number; rest: number; tail: number } => {
  const whole = Math.round(angle * quartersInRadian);
  if (whole === 0) return { quarters: 0, rest: angle, tail: 0 };
  const coarse = angle - whole * quarterA;
  const fine = coarse - whole * quarterB;
  const missing = whole * quarterRest - (coarse - fine - whole * quarterB);
  const rest = fine - missing;
  return { quarters: ((whole % 4) + 4) % 4, rest, tail: fine - rest - missing };
};

const sinOfSmall = (x: number, tail: number): number => {
  const z = x * x;
  const cube = z * x;
  const high =
    8.33333333332249e-3 +
    z * (-1.984126982985795e-4 + z * (2.7557313707070068e-6 + z * (-2.5050760253406863e-8 + z * 1.58969099521155e-10)));
  return x - (z * (0.5 * tail - cube * high) - tail - cube * -0.16666666666666632);
};

const cosOfSmall = (x: number, tail: number): number => {
  const z = x * x;
  const high =
    z *
    (4.1666666666666602e-2 +
      z *
        (-1.388888888887411e-3 +
          z *
            (2.480158728947673e-5 +
              z * (-2.7557314351390663e-7 + z * (2.087572321298175e-9 + z * -1.1359647557788195e-11)))));
  const half = 0.5 * z;
  const whole = 1 - half;
  return whole + (1 - whole - half + (z * high - x * tail));
};

// For numbers near 1/2, 1, 3/2 and beyond all: the angle known there, in two parts.
const atanHigh = [0.4636476090008061, 0.7853981633974483, 0.982793723247329, 1.5707963267948966] as const;
const atanLow = [2.2698777452961687e-17, 3.061616997868383e-17, 1.3903311031230998e-17, 6.123233995736766e-17] as const;

const atanOfPositive = (x: number): number => {
  if (x < 0.4375) return x - x * atanSeries(x);
  if (x < 0.6875) return atanNear(0, (2 * x - 1) / (2 + x));
  if (x < 1.1875) return atanNear(1, (x - 1) / (x + 1));
  if (x < 2.4375) return atanNear(2, (x - 1.5) / (1 + 1.5 * x));
  return atanNear(3, -1 / x);
};

const atanNear = (known: 0 | 1 | 2 | 3, x: number): number =>
  atanHigh[known] - (x * atanSeries(x) - atanLow[known] - x);

const atanSeries = (x: number): number => {
  const z = x * x;
  const w = z * z;
  const odd =
    z *
    (0.3333333333333293 +
      w *
        (0.14285714272503466 +
          w *
            (0.09090887133436507 + w * (0.06661073137387531 + w * (0.049768779946159324 + w * 0.016285820115365782)))));
  const even =
    w *
    (-0.19999999999876483 +
      w * (-0.11111110405462356 + w * (-0.0769187620504483 + w * (-0.058335701337905735 + w * -0.036531572744216916))));
  return odd + even;
};
