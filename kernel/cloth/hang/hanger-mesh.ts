// The mesh that a hanging piece settles as: fine enough for folds, and coarser only where a piece is larger than any garment.
import { coarse, type Hanger, stationsOf } from "./hanger.ts";
import { type Mesh, meshOf, rowHeight, wayLength } from "./mesh.ts";

/** The mesh of what hangs; its particles are about as many as settle within some seconds, however large the piece is. */
export const hangerMesh = (hanger: Hanger): Mesh => {
  const { outline } = hanger.sheet;
  const stations = stationsOf(hanger, coarse);
  const particles = stations.reduce((sum, { way }) => sum + wayLength(way) / rowHeight, 0);
  const coarser = Math.sqrt(particles / mostParticles);
  return coarser <= 1
    ? meshOf(outline, stations, rowHeight)
    : meshOf(outline, stationsOf(hanger, coarse * coarser), rowHeight * coarser);
};

// A full-circle cloak to the floor has some 2,600 on either half; that many settle in seconds, and ten times as many in minutes.
const mostParticles = 3000;
