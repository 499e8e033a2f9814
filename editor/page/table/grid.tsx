// Squares on the table to judge sizes by: 10 cm, or 5 in where the recipe counts in inches.
import { picture } from "../desk.ts";
import { showsGrid, view } from "./looks.ts";

/** The grid, when it is wanted. */
export const Grid = () => {
  if (!showsGrid.value) return null;
  const { x, y, scale } = view.value;
  const size = (picture.value?.units === "in" ? 5 * 25.4 : 100) * scale;
  return (
    <>
      <defs>
        <pattern id="grid" x={x} y={y} width={size} height={size} patternUnits="userSpaceOnUse">
          <path class="grid-line" d={`M${size} 0H0V${size}`} />
        </pattern>
      </defs>
      <rect class="grid" width="100%" height="100%" fill="url(#grid)" />
    </>
  );
};
