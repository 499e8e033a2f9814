// The cloth in columns: from what holds it straight down to the hem, as the formula hangs it or as a mesh has settled.
import { distance } from "../../geometry/point.ts";
import type { Hanging } from "./exact.ts";
import type { Mesh } from "./mesh.ts";
import type { HungPlace } from "./slack.ts";

/** Every hanging point of a hem with the way that leads to it. */
export const columnsByFormula = (hem: readonly Hanging[]): HungPlace[][] =>
  hem.map(({ hung, way }) => {
    const fromEnd = way.map((_, index) => lengthOf(way.slice(index)));
    return way.map((flat, index) => ({ flat, hung: { x: hung.x, y: hung.y - fromEnd[index]! } }));
  });

/** The columns of a mesh whose particles are now at these positions: x, y, x, y … in mm. */
export const columnsOfMesh = ({ columns, flat }: Mesh, positions: ArrayLike<number>): HungPlace[][] =>
  columns.map((column) =>
    column.map((particle) => ({
      flat: flat[particle]!,
      hung: { x: positions[2 * particle]!, y: positions[2 * particle + 1]! },
    })),
  );

const lengthOf = (way: Hanging["way"]): number =>
  way.slice(1).reduce((sum, point, index) => sum + distance(way[index]!, point), 0);
