// The zeros of a polynomial between 0 and 1. Everything that asks a cubic "where?" comes down to this.

// Below this share of the largest coefficient a value is rounding noise.
const noiseShare = 1e-15;
const deepest = 52;

/** All zeros in [0, 1], ascending, of the polynomial with these Bernstein coefficients; a double zero comes once. */
export const rootsOf = (coefficients: readonly number[]): number[] => {
  let largest = 0;
  for (const c of coefficients) largest = Math.max(largest, Math.abs(c));
  if (largest === 0) return [];
  const found: number[] = [];
  if (coefficients[0] === 0) found.push(0);
  gather(coefficients, 0, 1, largest * noiseShare, 0, found);
  if (coefficients[coefficients.length - 1] === 0) found.push(1);
  return found.filter((t, i) => i === 0 || t - found[i - 1]! > 1e-13);
};

// Descartes' rule: without a change of sign among the coefficients there is no zero inside, with one there is just one;
// with more the stretch is halved.
const gather = (
  c: readonly number[],
  from: number,
  to: number,
  noise: number,
  depth: number,
  found: number[],
): void => {
  const changes = signChanges(c);
  if (changes === 0) return;
  if (changes === 1) {
    found.push(from + (to - from) * onlyRoot(c));
    return;
  }
  const middle = (from + to) / 2;
  if (depth === deepest || c.every((value) => Math.abs(value) <= noise)) {
    found.push(middle);
    return;
  }
  const [left, right] = halves(c);
  gather(left, from, middle, noise, depth + 1, found);
  if (right[0] === 0) found.push(middle);
  gather(right, middle, to, noise, depth + 1, found);
};

const signChanges = (c: readonly number[]): number => {
  let changes = 0;
  let last = 0;
  for (const value of c) {
    if (value === 0) continue;
    if (last !== 0 && value > 0 !== last > 0) changes += 1;
    last = value;
  }
  return changes;
};

const halves = (c: readonly number[]): [number[], number[]] => {
  const row = [...c];
  const left: number[] = [row[0]!];
  for (let last = row.length - 1; last > 0; last -= 1) {
    for (let i = 0; i < last; i += 1) row[i] = (row[i]! + row[i + 1]!) / 2;
    left.push(row[0]!);
  }
  return [left, row];
};

// Newton's steps, kept inside a bracket that shrinks with every step.
const onlyRoot = (c: readonly number[]): number => {
  const startsPositive = c.find((value) => value !== 0)! > 0;
  let low = 0;
  let high = 1;
  let u = 0.5;
  for (let step = 0; step < 120; step += 1) {
    const { value, slope } = valueAndSlope(c, u);
    if (value === 0) return u;
    if (value > 0 === startsPositive) low = u;
    else high = u;
    let next = u - value / slope;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (next === u || high - low < 1e-17) return next;
    if (Math.abs(next - u) < 1e-16) return next;
    u = next;
  }
  return u;
};

const valueAndSlope = (c: readonly number[], u: number): { value: number; slope: number } => {
  const row = [...c];
  for (let last = row.length - 1; last > 1; last -= 1) {
    for (let i = 0; i < last; i += 1) row[i] = row[i]! * (1 - u) + row[i + 1]! * u;
  }
  const slope = (c.length - 1) * (row[1]! - row[0]!);
  return { value: row[0]! * (1 - u) + row[1]! * u, slope };
};
