// How the table is seen: which spot of it lies at the top left of the window, and how large a millimetre is.
import type { Bounds } from "../../../kernel/geometry/bounds.ts";
import type { Point } from "../../../kernel/geometry/point.ts";

/** A spot p of the table in mm is seen at x + p.x * scale, y + p.y * scale, in CSS pixels. */
export interface View {
  readonly x: number;
  readonly y: number;
  /** Pixels in a millimetre. */
  readonly scale: number;
}

/** A part of the window, CSS pixels. */
export interface Window {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

// From a whole roll of cloth across the window down to a notch that fills it, px per mm.
const [leastScale, mostScale] = [0.02, 40];

// Room around the pieces for the lengths written at their edges, px.
const [besidePieces, abovePieces] = [64, 26];

/** The spot of the table that is seen at a pixel. */
export const onTable = ({ x, y, scale }: View, pixel: Point): Point => ({
  x: (pixel.x - x) / scale,
  y: (pixel.y - y) / scale,
});

/** The pixel at which a spot of the table is seen. */
export const inWindow = ({ x, y, scale }: View, spot: Point): Point => ({
  x: x + spot.x * scale,
  y: y + spot.y * scale,
});

/** The view that many times nearer, with the spot under the pixel where it was. */
export const zoomed = (view: View, times: number, pixel: Point): View => {
  const scale = Math.min(mostScale, Math.max(leastScale, view.scale * times));
  const spot = onTable(view, pixel);
  return { scale, x: pixel.x - spot.x * scale, y: pixel.y - spot.y * scale };
};

/** The view moved by so many pixels. */
export const moved = (view: View, by: Point): View => ({ ...view, x: view.x + by.x, y: view.y + by.y });

/** The view in which a part of the table fills a part of the window, with room for writing around. */
export const fitted = ({ left, top, right, bottom }: Bounds, window: Window): View => {
  const [width, height] = [Math.max(right - left, 1), Math.max(bottom - top, 1)];
  const across = (window.width - 2 * Math.min(besidePieces, window.width / 5)) / width;
  const down = (window.height - 2 * Math.min(abovePieces, window.height / 5)) / height;
  const scale = Math.min(mostScale, Math.max(leastScale, Math.min(across, down)));
  return {
    scale,
    x: window.left + (window.width - width * scale) / 2 - left * scale,
    y: window.top + (window.height - height * scale) / 2 - top * scale,
  };
};
