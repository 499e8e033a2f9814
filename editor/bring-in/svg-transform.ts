// The `transform` attribute of SVG (W3C SVG 1.1, 7.6): a list of moves, the last written done first.
import { tan, toRadians } from "../../kernel/geometry/trig.ts";
import { type Affine, after, scaled, shifted, turned, unmoved } from "./affine.ts";

/** The one move that the list comes to; undefined where it cannot be read. */
export const svgTransform = (written: string): Affine | undefined => {
  let all: Affine = unmoved;
  let at = 0;
  while (at < written.length) {
    one.lastIndex = at;
    const found = one.exec(written);
    if (!found) return /^[\s,]*$/.test(written.slice(at)) ? all : undefined;
    const values =
      found[2]!.trim() === ""
        ? []
        : found[2]!
            .trim()
            .split(/\s*,\s*|\s+/)
            .map(Number);
    const move = values.every(Number.isFinite) ? moveOf(found[1]!, values) : undefined;
    if (!move) return undefined;
    all = after(all, move);
    at = one.lastIndex;
  }
  return all;
};

const one = /[\s,]*([a-zA-Z]+)\s*\(([^()]*)\)/y;

const moveOf = (name: string, v: readonly number[]): Affine | undefined => {
  const [p = 0, q, r] = v;
  switch (`${name} ${v.length}`) {
    case "matrix 6":
      return [p, v[1]!, v[2]!, v[3]!, v[4]!, v[5]!];
    case "translate 1":
    case "translate 2":
      return shifted(p, q ?? 0);
    case "scale 1":
    case "scale 2":
      return scaled(p, q ?? p);
    case "rotate 1":
      return turned(toRadians(p));
    case "rotate 3":
      return after(after(shifted(q!, r!), turned(toRadians(p))), shifted(-q!, -r!));
    case "skewX 1":
      return [1, 0, tan(toRadians(p)), 1, 0, 0];
    case "skewY 1":
      return [1, tan(toRadians(p)), 0, 1, 0, 0];
    default:
      return undefined;
  }
};
