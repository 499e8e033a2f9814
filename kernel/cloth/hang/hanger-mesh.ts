// The mesh that a hanging piece settles as: fine enough for folds, and coarser only where a piece is larger than any garment.
import { coarse, type Hanger, stationsOf } from "./hanger.ts";
import { type Mesh, meshOf, rowHeight, wayLength } from "./mesh.ts";

/** The mesh of what hangs; that of a piece no garment has is as coarse as settles within some seconds. */
export const hangerMesh = (hanger: Hanger): Mesh => {
  const { outline } = hanger.sheet;
  const stations = stationsOf(hanger, coarse);
  const particles = stations.reduce((sum, { way }) => sum + wayLength(way) / rowHeight, 0);
  if (particles <= garmentParticles) return meshOf(outline, stations, rowHeight);
  const coarser = Math.sqrt(particles / fewParticles);
  return meshOf(outline, stationsOf(hanger, coarse * coarser), rowHeight * coarser);
};

// A full-circle cloak to the floor has some 2,600 on either half, and comes to rest in seconds.
const garmentParticles = 3000;
// Cloth as long as a street sways until the settling is given up, and each particle then costs hundredths of a second.
const fewParticles = 600;
