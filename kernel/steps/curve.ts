// curve: a fair curve through places, or one cubic with given handles.
import { optional, phrase } from "../../grammar/phrase.ts";
import { headingAt } from "../direction.ts";
import { withNewEdge } from "../drawn.ts";
import { hobbyCurve } from "../geometry/hobby.ts";
import { cubic } from "../geometry/path.ts";
import { minus, sameSpot } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const curve = pieceStep({
  name: "curve",
  since: "0.1",
  summary: "Draws a fair curve through places, or one with handles of your own.",
  details:
    "Through places the curve is the interpolating spline of J. D. Hobby (1986): one cubic a span, with the direction free at its ends " +
    "where none is given. `tension` above 1 pulls it tighter, down to 3/4 lets it swing wider. With `handles` it is one cubic with these control places.",
  phrase: [
    phrase`curve ${slot.name("name", "what the edge is called")} = ${slot.place("start", "where it starts")} to ${slot.place("end", "where it ends")} handles ${slot.places("handles", "the two control places")}`,
    phrase`curve ${slot.name("name", "what the edge is called")} = ${slot.place("start", "where it starts")} to ${slot.place("end", "where it ends")} ${optional`through ${slot.waypoints("through", "where it passes")}`} ${optional`leaving ${slot.direction("leaving", "the direction of travel at its start")}`} ${optional`arriving ${slot.direction("arriving", "the direction of travel at its end")}`} ${optional`tension ${slot.number("tension", "how tight it is, 1 where not said")}`}`,
  ],
  example: `chalkline 1
units cm
piece yoke {
  line center   = (0, 2 cm) to (0, 14 cm)
  curve neck    = (0, 2 cm) to (8 cm, 0) leaving right
  line shoulder = (8 cm, 0) to (20 cm, 4 cm)
  curve armhole = (20 cm, 4 cm) to (18 cm, 14 cm) through (18.2 cm, 9 cm) arriving down
  line seam-line = (18 cm, 14 cm) to (0, 14 cm)
  outline center, neck, shoulder, armhole, seam-line
}`,
  work(fill, piece, { where }) {
    const { name, start, end } = fill;
    if ("handles" in fill) {
      const [first, second] = fill.handles;
      if (!first || !second || fill.handles.length > 2)
        throw new Problem("handles-two", `A curve has two handles, and ${fill.handles.length} stand here.`, {
          slot: "handles",
        });
      return { now: withNewEdge(piece, name, [cubic(start, first, second, end)], where), words: "" };
    }
    const { through = [], leaving, arriving, tension } = fill;
    if (tension !== undefined && tension < 0.75)
      throw new Problem("tension-low", "The tension of a curve is at least 3/4.", { slot: "tension" });
    const points = [start, ...through.map(({ value }) => value), end];
    const doubled = points.some((point, index) => index > 0 && sameSpot(point, points[index - 1]!));
    if (doubled) throw new Problem("curve-empty", "Two places that follow one another on the curve are the same spot.");
    const ahead = minus(end, start);
    const knots = points.map((point, index) => {
      const heading = through[index - 1]?.suffix;
      return {
        point,
        ...(tension !== undefined && { tension }),
        ...(index === 0 && leaving && { leaving: headingAt(leaving, point, ahead) }),
        ...(index === points.length - 1 && arriving && { arriving: headingAt(arriving, point, ahead) }),
        ...(heading && { heading: headingAt(heading, point, ahead) }),
      };
    });
    return { now: withNewEdge(piece, name, hobbyCurve(knots), where), words: "" };
  },
});
