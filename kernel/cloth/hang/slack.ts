// How much cloth lies folded along a line of a hanging piece: its flat length less the length it takes up as it hangs.
import { distance, minus, type Point, size } from "../../geometry/point.ts";

/** A place of a line as cut and as hung, mm. */
export interface HungPlace {
  readonly flat: Point;
  readonly hung: Point;
}

export interface SlackPlace extends HungPlace {
  /** Slack of the half stretches to both sides of it, mm. */
  readonly slack: number;
}

/** The slack along a line from end to end. */
export interface Slack {
  readonly flat: number;
  readonly hung: number;
  readonly slack: number;
  /** The middle of the slack as it hangs; that of the line where there is next to none. */
  readonly center: Point;
  readonly places: readonly SlackPlace[];
}

/** The slack along places that follow one another on the cloth. */
export const slackAlong = (line: readonly HungPlace[]): Slack => {
  const stretches = line.slice(1).map((to, index) => {
    const from = line[index]!;
    const [flat, hung] = [distance(from.flat, to.flat), distance(from.hung, to.hung)];
    return { flat, hung, slack: flat - hung };
  });
  const sum = (of: (stretch: (typeof stretches)[number]) => number): number =>
    stretches.reduce((total, stretch) => total + of(stretch), 0);
  const places = line.map((place, index) => ({
    ...place,
    slack: ((stretches[index - 1]?.slack ?? 0) + (stretches[index]?.slack ?? 0)) / 2,
  }));
  const slack = sum((stretch) => stretch.slack);
  return { flat: sum(({ flat }) => flat), hung: sum(({ hung }) => hung), slack, center: middle(places, slack), places };
};

const middle = (places: readonly SlackPlace[], slack: number): Point => {
  const weigh = slack > least ? (place: SlackPlace): number => place.slack / slack : (): number => 1 / places.length;
  return places.reduce(
    (at, place) => ({ x: at.x + place.hung.x * weigh(place), y: at.y + place.hung.y * weigh(place) }),
    { x: 0, y: 0 },
  );
};

/**
 * The same places, drawn together where the formula set neighbours further apart than the cloth between them is long: between
 * two supports the cloth is taut and hangs from both. Nearest in the least squares (isotonic regression).
 */
export const withoutGaps = (line: readonly HungPlace[]): HungPlace[] => {
  const way = line.length > 1 && line.at(-1)!.hung.x < line[0]!.hung.x ? -1 : 1;
  let reach = 0;
  const blocks: { sum: number; count: number }[] = [];
  const reaches = line.map(({ flat, hung }, index) => {
    const before = line[index - 1];
    if (before) {
      const [length, fall] = [size(minus(flat, before.flat)), hung.y - before.hung.y];
      reach += Math.sqrt(Math.max(0, length * length - fall * fall));
    }
    blocks.push({ sum: way * hung.x - reach, count: 1 });
    while (blocks.length > 1 && mean(blocks.at(-1)!) > mean(blocks.at(-2)!)) {
      const last = blocks.pop()!;
      blocks[blocks.length - 1] = { sum: blocks.at(-1)!.sum + last.sum, count: blocks.at(-1)!.count + last.count };
    }
    return reach;
  });
  const shifts = blocks.flatMap((block) => Array.from({ length: block.count }, () => mean(block)));
  return line.map(({ flat, hung }, index) => ({
    flat,
    hung: { x: way * (reaches[index]! + shifts[index]!), y: hung.y },
  }));
};

const mean = ({ sum, count }: { readonly sum: number; readonly count: number }): number => sum / count;

// Less slack than this, in mm, has no place.
const least = 0.5;
