// A garment as it stands round the body: the cloth of every level laid on an ellipse and, where it is fuller than the body is
// round, thrown into folds that are as long as the cloth is. Indicative: the sheet knows how much slack there is and where, the
// cloth's stiffness how many folds it makes, and nobody just how they fall.
import { between, distance, type Point } from "../../geometry/point.ts";
import { cos, sin } from "../../geometry/trig.ts";
import { type HungPlace, withoutGaps } from "./slack.ts";

/** A stretch of a garment's round: cloth in columns that hang straight down, each from its support to the hem. */
export interface Panel {
  readonly piece: string;
  readonly columns: readonly (readonly HungPlace[])[];
}

/** Panels in their order round the body, from the middle of the side that one looks at and to the right; the last meets the first. */
export interface Round {
  readonly panels: readonly Panel[];
  /** How deep the body is for its width. */
  readonly depth: number;
  /** Length of cloth in one fold at the hem, mm. */
  readonly wavelength: number;
}

/** A spot in the room, mm: to the right, down, and toward whoever looks. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A column of cloth in the room. */
export interface Line {
  /** Which panel it is of, from 0. */
  readonly panel: number;
  /** From its support to the hem. */
  readonly spots: readonly Spot[];
  /** At each spot, how far the fold that it is in stands out at its crest, mm. */
  readonly depths: readonly number[];
  readonly isCrest: boolean;
}

/** The columns of a garment in the room, in their order round it. */
export const standing = (round: Round): Line[] => {
  const columns = finer(round.panels.flatMap(({ columns: own }, panel) => own.map((places) => ({ panel, places }))));
  const levels = levelsOf(columns);
  const rows = levels.map((y) => columns.map((column) => placeAt(column, y)));
  const ends = columns.flatMap(({ panel }, index) => (panel === columns[index + 1]?.panel ? [] : [index + 1]));
  const stretches = rows.map((row) => stretchesOf(row, ends));
  const folding = foldingOf(stretches.at(-1)!, round.wavelength);
  // Above the underarm the round has gaps; there the body is as wide as at the first level that has none.
  const closed = levels.findIndex((y) => columns.every((column) => topOf(column) <= y + aHair));
  const laid = stretches.map((level, index) => laidRound(level, stretches[Math.max(index, closed)]!, folding, round));
  return columns.map((column, index) => {
    const top = topOf(column);
    const from = Math.max(
      1,
      levels.findIndex((y) => y > top + aHair),
    );
    const share = (top - levels[from - 1]!) / (levels[from]! - levels[from - 1]!);
    const [before, after] = [laid[from - 1]![index]!, laid[from]![index]!];
    const below = laid.slice(from).map((level) => level[index]!);
    return {
      panel: column.panel,
      spots: [
        { x: before.x + (after.x - before.x) * share, y: top, z: before.z + (after.z - before.z) * share },
        ...below.map(({ x, z }, at) => ({ x, y: rows[from + at]![index]!.hung.y, z })),
      ],
      depths: [0, ...below.map(({ depth }) => depth)],
      isCrest: folding.crests.has(index),
    };
  });
};

/**
 * The hem of a garment in the room, seen from below: a closed line, as long as the cloth, round the middle of the body. As in
 * the view from below that stands under a front view (ISO 5456-2, third angle; from memory), right stays right and the side
 * that one looks at lies at the top.
 */
export const hemSeenFromBelow = (lines: readonly Line[]): Point[] =>
  lines.map(({ spots }) => ({ x: spots.at(-1)!.x, y: -spots.at(-1)!.z }));

interface Column {
  readonly panel: number;
  readonly places: readonly HungPlace[];
}

const topOf = ({ places }: Column): number => places[0]!.hung.y;

/** Columns put in between, so that none are further apart at the hem than a fold is smooth. */
const finer = (columns: readonly Column[]): Column[] =>
  columns.flatMap((column, index) => {
    const next = columns[index + 1];
    if (next?.panel !== column.panel) return [column];
    const count = Math.ceil(distance(column.places.at(-1)!.flat, next.places.at(-1)!.flat) / smooth);
    const ys = [...column.places, ...next.places].map(({ hung }) => hung.y).sort((a, b) => a - b);
    return [
      column,
      ...Array.from({ length: Math.max(0, count - 1) }, (_, step): Column => {
        const share = (step + 1) / count;
        const top = topOf(column) + (topOf(next) - topOf(column)) * share;
        const places = [top, ...ys.filter((y) => y > top)].map((y) => {
          const [a, b] = [placeAt(column, y), placeAt(next, y)];
          return { flat: between(a.flat, b.flat, share), hung: between(a.hung, b.hung, share) };
        });
        return { panel: column.panel, places };
      }),
    ];
  });

/** Levels from the highest support to the lowest spot of the hem, evenly. */
const levelsOf = (columns: readonly Column[]): number[] => {
  const top = Math.min(...columns.map(topOf));
  const bottom = Math.max(...columns.map(({ places }) => places.at(-1)!.hung.y));
  const count = Math.max(2, Math.ceil((bottom - top) / apart));
  return Array.from({ length: count + 1 }, (_, index) => top + ((bottom - top) * index) / count);
};

/** Where a column is at a level; its end where it does not reach so high or so low. */
const placeAt = ({ places }: Column, y: number): HungPlace => {
  let below = 0;
  while (below < places.length && places[below]!.hung.y < y) below += 1;
  if (below === 0) return places[0]!;
  if (below === places.length) return places[below - 1]!;
  const [a, b] = [places[below - 1]!, places[below]!];
  const share = (y - a.hung.y) / (b.hung.y - a.hung.y);
  return { flat: between(a.flat, b.flat, share), hung: between(a.hung, b.hung, share) };
};

/** Cloth from one column to the next, mm: as cut, and as wide as it hangs. */
interface Stretch {
  readonly flat: number;
  readonly hung: number;
}

/** The stretches of a level, each from a column to the next; between two panels, which are sewn where they end, there is none. */
const stretchesOf = (row: readonly HungPlace[], ends: readonly number[]): Stretch[] =>
  ends.flatMap((end, index) => {
    const own = row.slice(ends[index - 1] ?? 0, end);
    const apart = stretchesBetween(own);
    // Few rows have gaps, and all others are what they are.
    return apart.some(({ flat, hung }) => hung > flat + aHair) ? stretchesBetween(withoutGaps(own)) : apart;
  });

const stretchesBetween = (places: readonly HungPlace[]): Stretch[] =>
  places.map((place, at) => {
    const next = places[at + 1];
    return next
      ? { flat: distance(place.flat, next.flat), hung: distance(place.hung, next.hung) }
      : { flat: 0, hung: 0 };
  });

/** Which stretches of the hem lie in folds together, and how far each column stands out of its fold, in times the amplitude. */
interface Folding {
  readonly runs: readonly { readonly from: number; readonly count: number }[];
  readonly bumps: readonly number[];
  readonly crests: ReadonlySet<number>;
}

const foldingOf = (hem: readonly Stretch[], wavelength: number): Folding => {
  const runs = foldedRuns(hem, wavelength);
  const bumps = hem.map(() => 0);
  const crests = new Set<number>();
  for (const { from, count } of runs) {
    const whole = sum(count, (step) => hem[(from + step) % hem.length]!.flat);
    const folds = Math.max(1, Math.round(whole / wavelength));
    const ats = [0];
    for (let step = 0; step < count; step += 1) {
      const column = (from + step) % hem.length;
      ats.push(ats[step]! + hem[column]!.flat);
      bumps[(column + 1) % hem.length] = bump((2 * Math.PI * folds * ats[step + 1]!) / whole);
    }
    for (let fold = 0; fold < folds; fold += 1) {
      crests.add((from + nearestTo((whole * (fold + 0.5)) / folds, ats)) % hem.length);
    }
  }
  return { runs, bumps, crests };
};

/** Which of some places is nearest to where a crest would be. */
const nearestTo = (wanted: number, ats: readonly number[]): number =>
  ats.reduce((best, at, index) => (Math.abs(at - wanted) < Math.abs(ats[best]! - wanted) ? index : best), 0);

/** Neighbouring stretches round which the cloth lies fuller than flat. */
const foldedRuns = (hem: readonly Stretch[], wavelength: number): Folding["runs"] =>
  runsOf(
    bentOver(hem, bend * wavelength).map((share) => share > foldedShare),
    hem,
  ).filter((run) => slackOf(run, hem) >= leastSlack);

/** The share of slack in the cloth round each stretch, so many mm wide: cloth does not bend more sharply than that. */
const bentOver = (hem: readonly Stretch[], width: number): number[] =>
  hem.map((own, index) => {
    let { flat, hung } = own;
    for (const way of [1, -1]) {
      let reach = own.flat / 2;
      for (let step = 1; reach < width / 2 && step < hem.length; step += 1) {
        const next = hem[(index + way * step + hem.length) % hem.length]!;
        const share = next.flat === 0 ? 0 : Math.min(1, (width / 2 - reach) / next.flat);
        flat += next.flat * share;
        hung += next.hung * share;
        reach += next.flat;
      }
    }
    return flat === 0 ? 0 : 1 - hung / flat;
  });

/** Stretches of a kind that follow one another round the hem; a seam between two of them parts nothing. */
const runsOf = (isFolded: readonly boolean[], hem: readonly Stretch[]): { from: number; count: number }[] => {
  const start = Math.max(
    0,
    hem.findIndex(({ flat }, index) => flat > 0 && !isFolded[index]),
  );
  const runs: { from: number; count: number }[] = [];
  let run: { from: number; count: number } | undefined;
  for (let step = 0; step < hem.length; step += 1) {
    const index = (start + step) % hem.length;
    const isSeam = hem[index]!.flat === 0;
    if (!isFolded[index] && !isSeam) run = undefined;
    else if (run) run.count += 1;
    else if (isFolded[index]) {
      run = { from: index, count: 1 };
      runs.push(run);
    }
  }
  return runs;
};

const slackOf = (
  { from, count }: { readonly from: number; readonly count: number },
  level: readonly Stretch[],
): number =>
  sum(count, (step) => {
    const { flat, hung } = level[(from + step) % level.length]!;
    return flat - hung;
  });

/** Every column of a level in the room; `body` is the level that the body's width there is taken from. */
const laidRound = (
  level: readonly Stretch[],
  body: readonly Stretch[],
  { runs, bumps }: Folding,
  { depth }: Round,
): { readonly x: number; readonly z: number; readonly depth: number }[] => {
  const count = level.length;
  // Cloth that is not folded lies as wide as it is cut; folds are as wide as one another.
  const room = body.map(({ flat }) => flat);
  for (const run of runs) {
    const columns = Array.from({ length: run.count }, (_, step) => (run.from + step) % count);
    const flat = sum(run.count, (step) => body[columns[step]!]!.flat);
    const slack = slackOf(run, body);
    const share = flat === 0 ? 1 : 1 - ((1 - roomShare) * slack) / flat;
    for (const column of columns) room[column] = body[column]!.flat * share;
  }
  const around = sum(count, (index) => room[index]!);
  let along = 0;
  const base = room.map((wide) => {
    const spot = onEllipse(along / around, around, depth);
    along += wide;
    return spot;
  });
  const amplitudes = level.map(() => 0);
  for (const run of runs) {
    // As wide as the body there, and the slack of this level besides.
    const cloth = sum(run.count, (step) => {
      const column = (run.from + step) % count;
      const { flat, hung } = level[column]!;
      return room[column]! + (1 - roomShare) * (flat - hung);
    });
    const bends = Array.from({ length: run.count + 1 }, (_, step): Bend => {
      const column = (run.from + step) % count;
      const { at, out } = base[column]!;
      return { at, out, bump: bumps[column]! };
    });
    const amplitude = amplitudeOf(cloth, (trial) => foldedLength(bends, trial));
    for (let step = 0; step <= run.count; step += 1) amplitudes[(run.from + step) % count] = amplitude;
  }
  return base.map(({ at, out }, index) => {
    const high = amplitudes[index]! * bumps[index]!;
    return { x: at.x + out.x * high, z: at.y + out.y * high, depth: 2 * amplitudes[index]! };
  });
};

/** A spot of the base line, the way out from it, and how far in times the amplitude a fold stands out there. */
interface Bend {
  readonly at: Point;
  readonly out: Point;
  readonly bump: number;
}

/** Length of the line through spots that stand out by their bumps at an amplitude, mm. */
const foldedLength = (bends: readonly Bend[], amplitude: number): number => {
  let length = 0;
  let [x, y] = [0, 0];
  bends.forEach(({ at, out, bump: high }, index) => {
    const [nextX, nextY] = [at.x + out.x * amplitude * high, at.y + out.y * amplitude * high];
    if (index > 0) length += Math.sqrt((nextX - x) * (nextX - x) + (nextY - y) * (nextY - y));
    [x, y] = [nextX, nextY];
  });
  return length;
};

/** How high a fold is at a phase, in times its amplitude: out and back once in a turn. */
const bump = (phase: number): number => 1 - cos(phase);

/** The amplitude at which the folded line is as long as the cloth, mm; none where it is as long without folds. */
const amplitudeOf = (cloth: number, lengthAt: (amplitude: number) => number): number => {
  // The line grows with its amplitude, ever faster up to as fast as the folds are many: a chord from above finds it in a few steps.
  let [low, high] = [0, cloth];
  let [below, above] = [lengthAt(low) - cloth, lengthAt(high) - cloth];
  if (below >= 0) return 0;
  for (let turn = 0; turn < mostTurns && high - low > nearEnough; turn += 1) {
    const chord = low - (below * (high - low)) / (above - below);
    // In the middle now and then, so that both ends close in.
    const at = turn % 3 === 2 ? (low + high) / 2 : chord;
    const off = lengthAt(at) - cloth;
    if (Math.abs(off) < nearEnough) return at;
    if (off < 0) [low, below] = [at, off];
    else [high, above] = [at, off];
  }
  return low;
};

/** The spot of an ellipse with this circumference at a share of it, from the middle of the front to the right, and the way out. */
export const onEllipse = (
  share: number,
  around: number,
  depth: number,
): { readonly at: Point; readonly out: Point } => {
  const { angles, length } = unitEllipse(depth);
  const at = share * (angles.length - 1);
  const index = Math.min(angles.length - 2, Math.floor(at));
  const angle = angles[index]! + (angles[index + 1]! - angles[index]!) * (at - index);
  const half = around / length;
  const [x, y] = [sin(angle), cos(angle)];
  const steep = Math.sqrt(depth * depth * x * x + y * y);
  return { at: { x: half * x, y: half * depth * y }, out: { x: (depth * x) / steep, y: y / steep } };
};

/** An ellipse of half width 1: its circumference, and the angles of spots that are evenly apart along it. */
const unitEllipse = (depth: number): { readonly angles: readonly number[]; readonly length: number } => {
  const known = ellipses.get(depth);
  if (known) return known;
  const steps = 1440;
  const spots = Array.from({ length: steps + 1 }, (_, step): Point => {
    const angle = (2 * Math.PI * step) / steps;
    return { x: sin(angle), y: depth * cos(angle) };
  });
  const lengths = [0];
  for (let step = 1; step <= steps; step += 1)
    lengths.push(lengths[step - 1]! + distance(spots[step - 1]!, spots[step]!));
  const length = lengths[steps]!;
  let step = 1;
  const angles = Array.from({ length: 721 }, (_, index) => {
    const wanted = (length * index) / 720;
    while (step < steps && lengths[step]! < wanted) step += 1;
    const share = (wanted - lengths[step - 1]!) / (lengths[step]! - lengths[step - 1]!);
    return (2 * Math.PI * (step - 1 + share)) / steps;
  });
  const made = { angles, length };
  ellipses.set(depth, made);
  return made;
};

const ellipses = new Map<number, ReturnType<typeof unitEllipse>>();

const sum = (count: number, of: (index: number) => number): number => {
  let total = 0;
  for (let index = 0; index < count; index += 1) total += of(index);
  return total;
};

// Columns nearer than this at the hem, and levels nearer than this, draw a fold smoothly, mm.
const smooth = 15;
const apart = 40;

// A fold takes up so much of its slack in width, for its bends are rounder than those of the wave that is drawn here. Fitted to a
// chain of stiff rods (tests/hang/chain.ts): along a straight hem a fold is as deep as the chain's, to one in twenty.
const roomShare = 0.08;

// Cloth that lies fuller than by this share of itself stands in folds; less only waves. Less slack than this in one place, mm, makes no fold.
const foldedShare = 0.1;
const leastSlack = 20;

// Within this share of a wavelength cloth does not tell where its slack lies.
const bend = 0.5;

const aHair = 1e-6;

// A fold is drawn this near to the length of its cloth, mm.
const nearEnough = 0.05;
const mostTurns = 40;
