// The mesh as rapier settles it, against closed forms and against the formula; tolerances are those that were measured
// (trade handbook, the hang preview).
import { beforeAll, expect, test } from "vitest";
import { hungExactly } from "../../kernel/cloth/hang/hung.ts";
import type { Mesh } from "../../kernel/cloth/hang/mesh.ts";
import { meshesOf } from "../../kernel/cloth/hang/rigged.ts";
import { settledGarment } from "../../kernel/cloth/hang/settled.ts";
import { type Frame, openWorld, placeIn, type Settled, settling } from "../../kernel/cloth/hang/world.ts";
import type { Garment } from "../../kernel/working.ts";
import { armholeCoat, centerCoat, middleCoat, sideCoat, straightCoat } from "./coats.ts";

beforeAll(openWorld);

const run = (mesh: Mesh): { frames: Frame[]; last: Settled } => {
  const frames: Frame[] = [];
  const each = settling(mesh);
  let next = each.next();
  while (!next.done) {
    frames.push(next.value);
    next = each.next();
  }
  return { frames, last: next.value };
};

/** A chain of 40 links as long as said in all, mm; held where said. */
const chain = (length: number, ends: readonly (readonly [number, number, number])[]): Mesh => ({
  flat: Array.from({ length: 41 }, (_, index) => ({ x: (length * index) / 40, y: 0 })),
  pins: ends.map(([particle, x, y]) => ({ particle, body: { x, y } })),
  links: Array.from({ length: 40 }, (_, index) => [index, index + 1] as const),
  columns: [],
});

test("a chain between two nails hangs in a catenary", () => {
  const { last } = run(
    chain(1300, [
      [0, 0, 0],
      [40, 1000, 0],
    ]),
  );
  // Length 2 a sinh(span / 2a) of the catenary y = a cosh(x / a), any book of mechanics; a by halving.
  let [low, high] = [100, 2000];
  for (let step = 0; step < 80; step += 1) {
    const middle = (low + high) / 2;
    if (2 * middle * Math.sinh(500 / middle) > 1300) low = middle;
    else high = middle;
  }
  const ends = low * Math.cosh(500 / low);
  for (let particle = 0; particle <= 40; particle += 1) {
    const along = 32.5 * particle - 650;
    const x = low * Math.asinh(along / low);
    const place = placeIn(last.positions, particle);
    expect(Math.hypot(place.x - 500 - x, place.y - (ends - low * Math.cosh(x / low)))).toBeLessThan(1.5);
  }
});

test("a hanging rope hardly stretches", () => {
  const { last } = run(chain(1000, [[0, 0, 0]]));
  const end = placeIn(last.positions, 40);
  expect(Math.abs(end.x)).toBeLessThan(2);
  expect(Math.abs(end.y / 1000 - 1)).toBeLessThan(0.002);
});

test("the energy of a falling rope never rises", () => {
  const { frames } = run(chain(1000, [[0, 0, 0]]));
  const drop = frames[0]!.energy - frames.at(-1)!.energy;
  expect(drop).toBeGreaterThan(0);
  frames.slice(1).forEach((frame, index) => {
    expect(frame.energy - frames[index]!.energy).toBeLessThan(1e-6 * drop);
  });
});

test("the energy of a sheet that settles never rises", () => {
  const { frames } = run(meshIn(middleCoat));
  const drop = frames[0]!.energy - frames.at(-1)!.energy;
  expect(frames.length).toBeGreaterThan(10);
  expect(drop).toBeGreaterThan(0);
  frames.slice(1).forEach((frame, index) => {
    expect(frame.energy - frames[index]!.energy).toBeLessThan(1e-6 * drop);
  });
});

/** The mesh of the last piece of a garment. */
const meshIn = (garment: Garment): Mesh => [...meshesOf(garment).values()].at(-1)!;

test("mirrored cloth hangs mirrored", () => {
  const mesh = meshIn(middleCoat);
  const mirrored: Mesh = {
    ...mesh,
    flat: mesh.flat.map(({ x, y }) => ({ x: -x, y })),
    pins: mesh.pins.map(({ particle, body }) => ({ particle, body: { x: -body.x, y: body.y } })),
  };
  const [one, other] = [run(mesh).last, run(mirrored).last];
  mesh.flat.forEach((_, particle) => {
    const [a, b] = [placeIn(one.positions, particle), placeIn(other.positions, particle)];
    expect(Math.abs(a.x + b.x)).toBeLessThan(1e-6);
    expect(Math.abs(a.y - b.y)).toBeLessThan(1e-6);
  });
});

test("straight coats show no slack, and lie still", async () => {
  for (const garment of [straightCoat, armholeCoat]) {
    const [piece] = (await settledGarment(garment)).pieces;
    expect(piece!.hem.slack).toBeLessThan(4);
    expect(piece!.warnings).toEqual([]);
  }
});

test.each([
  ["the center", centerCoat],
  ["mid-shoulder", middleCoat],
  ["the side", sideCoat],
])("with fullness at %s the mesh hangs as the formula says", async (_, garment) => {
  const exact = hungExactly(garment).pieces.find(({ name }) => name === "coat")!;
  const piece = (await settledGarment(garment)).pieces.find(({ name }) => name === "coat")!;
  expect(piece.warnings).toEqual([]);
  expect(piece.settled!.converged).toBe(true);
  expect(piece.settled!.stretch).toBeLessThan(0.01);
  expect(Math.abs(piece.hem.slack - exact.hem.slack)).toBeLessThan(3);
  expect(Math.abs(piece.hem.center.x - exact.hem.center.x)).toBeLessThan(4);
  for (const { flat, hung } of piece.hem.places) {
    const near = exact.hem.places.reduce((a, b) =>
      Math.hypot(b.flat.x - flat.x, b.flat.y - flat.y) < Math.hypot(a.flat.x - flat.x, a.flat.y - flat.y) ? b : a,
    );
    const apart = Math.hypot(near.flat.x - flat.x, near.flat.y - flat.y);
    expect(Math.abs(hung.x - near.hung.x)).toBeLessThan(4 + apart);
  }
});

test("a garment that is given up frees its memory, however often", async () => {
  const mesh = meshIn(middleCoat);
  const begun = (): void => {
    const settle = settling(mesh);
    settle.next();
    settle.return(undefined as never);
  };
  const held = (): number => process.memoryUsage().external;
  for (let time = 0; time < 100; time += 1) begun();
  const before = held();
  for (let time = 0; time < 400; time += 1) begun();
  // Each garment that was kept would hold some 0.2 MB, so 80 MB in all.
  expect(held() - before).toBeLessThan(8e6);
});
