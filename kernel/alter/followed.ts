// An edge one of whose ends goes elsewhere: all of it follows, the less the further from that end.
import { pathLength, spanLength } from "../geometry/arc-length.ts";
import { endOf, type Path, reversed, type Span } from "../geometry/path.ts";
import { distance, minus, type Point, plus, times } from "../geometry/point.ts";

/** The path with one end elsewhere; the other end stays, the shift dies away evenly along it, and smooth joints stay smooth. */
export const followed = (path: Path, moving: "start" | "end", to: Point): Path => {
  if (moving === "start") return reversed(followed(reversed(path), "end", to));
  const by = minus(to, endOf(path));
  const whole = pathLength(path);
  let done = 0;
  return path.map((span): Span => {
    const [from, until] = [done, done + spanLength(span)];
    done = until;
    const shifted = (point: Point, along: number): Point => plus(point, times(by, along / whole));
    const start = shifted(span.start, from);
    const end = until >= whole ? to : shifted(span.end, until);
    if (span.kind === "line") return { kind: "line", start, end };
    const startHandle = shifted(span.startHandle, from + distance(span.start, span.startHandle));
    const endHandle = shifted(span.endHandle, until - distance(span.endHandle, span.end));
    return { kind: "cubic", start, startHandle, endHandle, end };
  });
};
