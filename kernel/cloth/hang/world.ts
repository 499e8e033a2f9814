// The mesh hung in rapier: the only file that knows the package. Nothing that is cut or exported depends on what it says.
import rapier from "@dimforge/rapier2d-compat";
import { distance, type Point } from "../../geometry/point.ts";
import type { Mesh } from "./mesh.ts";

/** The cloth at one moment of settling. */
export interface Frame {
  /** Where each particle is, mm: x, y, x, y … */
  readonly positions: Float32Array;
  readonly steps: number;
  /** Energy of place and motion, J for a gram a particle; it only falls. */
  readonly energy: number;
}

/** The cloth at rest, or given up on. */
export interface Settled extends Frame {
  readonly converged: boolean;
  /** By how much the most stretched link is longer than flat, as a ratio. */
  readonly stretch: number;
}

/** Makes the package ready; it has to be awaited once before anything is hung. */
export const openWorld = (): Promise<void> => rapier.init();

/**
 * Hangs a mesh: a frame every few steps, and what it came to in the end. Leaving it early, by `return()`, frees its memory.
 */
export function* settling(mesh: Mesh, most = mostSteps): Generator<Frame, Settled> {
  const world = new rapier.World({ x: 0, y: gravity });
  try {
    world.timestep = 1 / 60;
    world.numSolverIterations = iterations;
    const description = new rapier.SoftBodyDesc(
      Float32Array.from(mesh.flat.flatMap(({ x, y }) => [x / 1000, y / 1000])),
    )
      .setEdges(Uint32Array.from(mesh.links.flat()))
      .setTensionOnly()
      .setSoftness(1000, 1)
      .setParticleMass(particleMass)
      .setLinearDamping(2)
      .setCanSleep(false)
      .setPinnedParticles(Uint32Array.from(mesh.pins.map(({ particle }) => particle)))
      .setNoSurfaceCollider();
    const cloth = world.createSoftBody(description);
    // Rest lengths come from the flat pose, so the supports go to the body only now.
    for (const { particle, body } of mesh.pins)
      cloth.setParticlePosition(particle, { x: body.x / 1000, y: body.y / 1000 });
    let steps = 0;
    let converged = false;
    while (steps < most && !converged) {
      for (let step = 0; step < stepsPerFrame; step += 1) world.step();
      steps += stepsPerFrame;
      const velocities = cloth.particleVelocities();
      converged = steps >= firstSteps && fastest(velocities) < restSpeed;
      yield frameOf(cloth.particlePositions(), velocities, steps);
    }
    const last = frameOf(cloth.particlePositions(), cloth.particleVelocities(), steps);
    return { ...last, converged, stretch: stretchOf(mesh, last.positions) };
  } finally {
    world.free();
  }
}

/** Where one particle of a frame is, mm. */
export const placeIn = (positions: Float32Array, particle: number): Point => ({
  x: positions[2 * particle]!,
  y: positions[2 * particle + 1]!,
});

const frameOf = (places: Float32Array, velocities: Float32Array, steps: number): Frame => {
  let energy = 0;
  for (let index = 0; index < places.length; index += 2) {
    const [vx, vy] = [velocities[index]!, velocities[index + 1]!];
    energy += particleMass * ((vx * vx + vy * vy) / 2 - gravity * places[index + 1]!);
  }
  return { positions: places.map((metres) => metres * 1000), steps, energy };
};

const fastest = (velocities: Float32Array): number => {
  let most = 0;
  for (let index = 0; index < velocities.length; index += 2) {
    const [vx, vy] = [velocities[index]!, velocities[index + 1]!];
    most = Math.max(most, vx * vx + vy * vy);
  }
  return Math.sqrt(most);
};

const stretchOf = ({ flat, links }: Mesh, positions: Float32Array): number =>
  links.reduce((most, [a, b]) => {
    const rest = distance(flat[a]!, flat[b]!);
    return Math.max(most, distance(placeIn(positions, a), placeIn(positions, b)) / rest - 1);
  }, 0);

// What the prototype settled on (trade handbook, the hang preview). The shape of a sheet that does not stretch depends on
// no gravity, and a tenth of it, in m/s2, keeps the stretch small.
const gravity = 0.981;
const iterations = 10;
const stepsPerFrame = 5;
const firstSteps = 20;
const mostSteps = 1500;

// At rest nothing moves faster than this, m/s.
const restSpeed = 0.001;

// All alike, kg: where a sheet hangs that does not stretch depends on no weight, and light particles under heavy ones stretch.
const particleMass = 0.001;
