// A hem as a chain of stiff rods, the model that the wavelength of a fold is checked against: it knows bending and gravity, and
// nothing of waves. Between mirrors, so that half a fold at an end goes on in its image. All of it after the trade handbook.

/** A hem between two mirrors. */
export interface ChainedHem {
  /** Where along it the waves begin and end that it is given at first, mm. */
  readonly waved: readonly [number, number];
  /** How wide the cloth hangs above each spot of it that is so far along, mm. */
  readonly hungAt: (along: number) => number;
  /** Length of the cloth, mm. */
  readonly flat: number;
  /** In the sense of ASTM D1388, mm: its cube is the stiffness of a strip over the weight of its cloth. */
  readonly bendingLength: number;
  /** From what holds it down to the hem, mm. */
  readonly length: number;
}

export interface ChainAtRest {
  /** In units of the cloth's weight; only differences count. */
  readonly energy: number;
  /** The joints: along the body, and out from it, mm. */
  readonly joints: readonly { readonly x: number; readonly y: number }[];
  /** Whether every small change that keeps the width costs energy. */
  readonly isStable: boolean;
}

/**
 * The chain at rest in so many waves, found by Newton's way from even waves of that number. A strip that hangs straight out
 * to the hem from what holds it bends at the hem like B = c^3 L / 3, and swings back like K = 1/2 (times weight: work of
 * bending and of lifting, taken down the strip).
 */
export const chainInWaves = (hem: ChainedHem, waves: number): ChainAtRest => {
  const count = Math.round(hem.flat / rod);
  const ds = hem.flat / count;
  const model: Model = {
    ds,
    bend: (hem.bendingLength ** 3 * hem.length) / 3 / ds,
    pull: ds / 2,
    width: hem.hungAt(hem.flat),
    over: Array.from({ length: count + 1 }, (_, joint) => hem.hungAt(joint * ds)),
  };
  let state = evenWaves(model, hem.waved, waves, count);
  let strain = 0;
  for (let step = 0; step < mostSteps; step += 1) {
    const { matrix, right } = newton(model, state, strain);
    if (Math.hypot(...right) < atRest * model.bend) break;
    const way = solved(matrix, right);
    // Not so far at once that a rod turns by more than a quarter radian.
    const share = Math.min(1, 0.25 / Math.max(...way.slice(1, -1).map(Math.abs)));
    state = { lift: state.lift + share * way[0]!, turns: state.turns.map((turn, rod) => turn + share * way[rod + 1]!) };
    strain += share * way.at(-1)!;
    if (step === mostSteps - 1) throw new Error(`${waves} waves did not come to rest`);
  }
  const { matrix } = newton(model, state, strain);
  return { energy: energyOf(model, state), joints: jointsOf(model, state), isStable: holdsStill(matrix) };
};

// Trade handbook, the hang preview: rods of 12 mm.
const rod = 12;
const mostSteps = 200;
const atRest = 1e-9;

interface Model {
  /** Length of a rod, stiffness of a joint, and the pull toward its place of a joint, by length. */
  readonly ds: number;
  readonly bend: number;
  readonly pull: number;
  readonly width: number;
  readonly over: readonly number[];
}

/** How far out the chain begins, and the angle of every rod to the body. */
interface State {
  readonly lift: number;
  readonly turns: readonly number[];
}

/** Waves of one height, as high as the slack of the chain lets them be. */
const evenWaves = (model: Model, [from, to]: ChainedHem["waved"], waves: number, count: number): State => {
  const { width, ds } = model;
  const shape = Array.from({ length: count }, (_, rod) => {
    const share = ((rod + 0.5) * ds - from) / (to - from);
    return share > 0 && share < 1 ? Math.sin(2 * Math.PI * waves * share) : 0;
  });
  let [low, high] = [0, 2.4];
  for (let step = 0; step < 60; step += 1) {
    const steep = (low + high) / 2;
    if (shape.reduce((sum, each) => sum + ds * Math.cos(steep * each), 0) > width) low = steep;
    else high = steep;
  }
  const turns = shape.map((each) => low * each);
  const outs = jointsOf(model, { lift: 0, turns }).map(({ y }) => y);
  return { lift: -outs.reduce((sum, y) => sum + y, 0) / outs.length, turns };
};

const jointsOf = ({ ds }: Model, { lift, turns }: State): { x: number; y: number }[] => {
  let [x, y] = [0, lift];
  return [
    { x, y },
    ...turns.map((turn) => {
      x += ds * Math.cos(turn);
      y += ds * Math.sin(turn);
      return { x, y };
    }),
  ];
};

/** The joints at the ends belong to the chain and to its image by halves. */
const weight = (joint: number, count: number): number => (joint === 0 || joint === count ? 0.5 : 1);

const energyOf = (model: Model, state: State): number => {
  const { bend, pull, over } = model;
  const { turns } = state;
  const count = turns.length;
  const swung = jointsOf(model, state).map(
    ({ x, y }, joint) => (weight(joint, count) * pull * ((x - over[joint]!) ** 2 + y * y)) / 2,
  );
  const bent = turns.slice(1).map((turn, rod) => (bend * (turn - turns[rod]!) ** 2) / 2);
  // At a mirror a rod meets its image at twice its angle, and half of that joint is the chain's.
  const ends = bend * (turns[0]! ** 2 + turns.at(-1)! ** 2);
  return [...swung, ...bent].reduce((sum, each) => sum + each, ends);
};

/** The second derivatives of the energy with the width held, bordered by the width's own, and what is out of balance. */
const newton = (model: Model, state: State, strain: number): { matrix: number[][]; right: number[] } => {
  const { ds, bend, pull, width, over } = model;
  const { turns } = state;
  const count = turns.length;
  const joints = jointsOf(model, state);
  // Forces and weights of all joints beyond a rod.
  const beyond = turns.map(() => ({ x: 0, y: 0, weight: 0 }));
  let sum = { x: 0, y: 0, weight: 0 };
  for (let rod = count - 1; rod >= 0; rod -= 1) {
    const share = pull * weight(rod + 1, count);
    const { x, y } = joints[rod + 1]!;
    sum = { x: sum.x + share * (x - over[rod + 1]!), y: sum.y + share * y, weight: sum.weight + share };
    beyond[rod] = sum;
  }
  const size = count + 2;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const slope = new Array<number>(size).fill(0);
  const first = pull * weight(0, count);
  slope[0] = sum.y + first * state.lift;
  matrix[0]![0] = sum.weight + first;
  turns.forEach((turn, rod) => {
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    const { x, y, weight: beyondIt } = beyond[rod]!;
    const before = turns[rod - 1] ?? -turn;
    const after = turns[rod + 1] ?? -turn;
    slope[rod + 1] = ds * (cos * y - sin * x) + bend * (2 * turn - before - after) - strain * ds * sin;
    const row = matrix[rod + 1]!;
    for (let other = 0; other < count; other += 1)
      row[other + 1]! += beyond[Math.max(rod, other)]!.weight * ds * ds * Math.cos(turn - turns[other]!);
    row[rod + 1]! += ds * (-cos * x - sin * y) - strain * ds * cos;
    row[rod + 1]! += bend * (2 + (rod === 0 ? 1 : 0) + (rod === count - 1 ? 1 : 0));
    if (rod > 0) row[rod]! -= bend;
    if (rod < count - 1) row[rod + 2]! -= bend;
    row[0] = beyondIt * ds * cos;
    matrix[0]![rod + 1] = row[0]!;
    row[size - 1] = -ds * sin;
    matrix[size - 1]![rod + 1] = -ds * sin;
  });
  slope[size - 1] = joints.at(-1)!.x - width;
  return { matrix, right: slope.map((each) => -each) };
};

/** Gauss's way, the largest of each column first. */
const solved = (matrix: readonly (readonly number[])[], right: readonly number[]): number[] => {
  const rows = matrix.map((row, index) => [...row, right[index]!]);
  const size = rows.length;
  for (let at = 0; at < size; at += 1) {
    let best = at;
    for (let row = at + 1; row < size; row += 1) if (Math.abs(rows[row]![at]!) > Math.abs(rows[best]![at]!)) best = row;
    [rows[at], rows[best]] = [rows[best]!, rows[at]!];
    for (let row = at + 1; row < size; row += 1) {
      const times = rows[row]![at]! / rows[at]![at]!;
      if (times !== 0)
        for (let column = at; column <= size; column += 1) rows[row]![column]! -= times * rows[at]![column]!;
    }
  }
  const way = new Array<number>(size).fill(0);
  for (let at = size - 1; at >= 0; at -= 1) {
    const rest = way.reduce((sum, each, column) => (column > at ? sum + rows[at]![column]! * each : sum), 0);
    way[at] = (rows[at]![size]! - rest) / rows[at]![at]!;
  }
  return way;
};

/** A bordered matrix of one condition belongs to a least energy where just one of its pivots is negative (Sylvester's law). */
const holdsStill = (matrix: readonly (readonly number[])[]): boolean => {
  const rows = matrix.map((row) => [...row]);
  let negative = 0;
  for (let at = 0; at < rows.length; at += 1) {
    const pivot = rows[at]![at]!;
    if (pivot < 0) negative += 1;
    for (let row = at + 1; row < rows.length; row += 1) {
      const times = rows[row]![at]! / pivot;
      for (let column = at; column < rows.length; column += 1) rows[row]![column]! -= times * rows[at]![column]!;
    }
  }
  return negative === 1;
};
