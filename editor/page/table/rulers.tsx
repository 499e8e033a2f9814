// Rulers along the edges of the table, in the recipe's units.
import { picture } from "../desk.ts";
import { openPart, view } from "./looks.ts";
import { type ScaleMark, scaleMarks } from "./scale-marks.ts";

const depth = 18;

/** A ruler along the top and one along the left of the part of the table that is open. */
export const Rulers = () => {
  const { x, y, scale } = view.value;
  const { left, top, width, height } = openPart.value;
  const units = picture.value?.units ?? "cm";
  const across = scaleMarks((left + depth - x) / scale, (left + width - x) / scale, scale, units);
  const down = scaleMarks((top + depth - y) / scale, (top + height - y) / scale, scale, units);
  return (
    <g class="rulers" aria-hidden="true">
      <rect x={left} y={top} width={width} height={depth} />
      <rect x={left} y={top} width={depth} height={height} />
      <path d={across.map((mark) => tick(x + mark.at * scale, top + depth, mark, true)).join("")} />
      <path d={down.map((mark) => tick(left + depth, y + mark.at * scale, mark, false)).join("")} />
      {across.map(({ at, words }) =>
        words === undefined ? null : (
          <text key={at} x={x + at * scale + 3} y={top + 9}>
            {words}
          </text>
        ),
      )}
      {down.map(({ at, words }) =>
        words === undefined ? null : (
          <text key={at} transform={`translate(${left + 9} ${y + at * scale - 3}) rotate(-90)`}>
            {words}
          </text>
        ),
      )}
      <text class="ruler-units" x={left + 3} y={top + 12}>
        {units}
      </text>
    </g>
  );
};

const tick = (px: number, py: number, { words }: ScaleMark, isAcross: boolean): string => {
  const long = words === undefined ? 5 : depth;
  return isAcross ? `M${px.toFixed(1)} ${py}v${-long}` : `M${px} ${py.toFixed(1)}h${-long}`;
};
