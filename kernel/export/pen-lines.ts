// Strokes as a knife or a pen takes them: those of one kind that go on where another ended are one line.
import type { Stroke } from "../drawing/drawing.ts";
import { endOf, joined, startOf } from "../geometry/path.ts";
import { sameSpot } from "../geometry/point.ts";

/** The strokes with those joined that meet end to start, so that an outline that closes is one closed line. */
export const penLines = (strokes: readonly Stroke[]): Stroke[] =>
  strokes.reduce<Stroke[]>((lines, stroke) => {
    const before = lines.findIndex((line) => goesOn(line, stroke));
    const grown = before < 0 ? stroke : { ...stroke, path: joined([lines[before]!.path, stroke.path]) };
    const rest = lines.filter((_, index) => index !== before);
    // An outline that is walked from the middle of a line comes round to where that line begins.
    const after = rest.findIndex((line) => goesOn(grown, line));
    const whole = after < 0 ? grown : { ...grown, path: joined([grown.path, rest[after]!.path]) };
    return [...rest.filter((_, index) => index !== after), whole];
  }, []);

const goesOn = (line: Stroke, next: Stroke): boolean =>
  line.kind === next.kind &&
  line.of === next.of &&
  !isClosed(line) &&
  !isClosed(next) &&
  sameSpot(endOf(line.path), startOf(next.path));

const isClosed = ({ path }: Stroke): boolean => path.length > 1 && sameSpot(startOf(path), endOf(path));
