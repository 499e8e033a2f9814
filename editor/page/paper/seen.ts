// How the picture is seen in its frame: zoomed, moved about, and the cross that the arrow keys move over it.
import { signal } from "@preact/signals";
import type { Point } from "../../../kernel/geometry/point.ts";
import { inWindow, moved, onTable, type View } from "../table/view.ts";
import { photograph } from "./tracing.ts";

/** A pixel (x, y) of the picture is seen at view.x + x * scale, view.y + y * scale of the frame. */
export const seen = signal<View>({ x: 0, y: 0, scale: 1 });
/** The size of the frame, CSS pixels. */
export const frame = signal({ width: 1, height: 1 });
/** The spot of the picture under the cross. */
export const cross = signal<Point>({ x: 0, y: 0 });

// Room left around the whole picture, CSS pixels.
const around = 12;
// From a fifth of the whole picture to a pixel as large as a stamp.
const mostScale = 40;

/** Shows the whole picture, the cross in its middle. */
export const showWhole = (): void => {
  const picture = photograph.peek();
  if (!picture) return;
  const { width, height } = frame.peek();
  const scale = Math.max(Math.min((width - 2 * around) / picture.width, (height - 2 * around) / picture.height), 0.001);
  seen.value = { scale, x: (width - picture.width * scale) / 2, y: (height - picture.height * scale) / 2 };
  cross.value = { x: picture.width / 2, y: picture.height / 2 };
};

/** Nearer or farther about a spot of the frame. */
export const zoomAbout = (times: number, at: Point): void => {
  const picture = photograph.peek();
  if (!picture) return;
  const { width, height } = frame.peek();
  const least = Math.min(width / picture.width, height / picture.height) / 5;
  const scale = Math.min(mostScale, Math.max(least, seen.peek().scale * times));
  const spot = onTable(seen.peek(), at);
  seen.value = { scale, x: at.x - spot.x * scale, y: at.y - spot.y * scale };
};

/** Nearer or farther about the middle of what is seen. */
export const zoomMiddle = (times: number): void =>
  zoomAbout(times, { x: frame.peek().width / 2, y: frame.peek().height / 2 });

export const moveBy = (by: Point): void => {
  seen.value = moved(seen.peek(), by);
};

/** Moves the cross by CSS pixels; it stays on the picture, and the picture follows it into the frame. */
export const moveCross = (by: Point): void => {
  const picture = photograph.peek();
  if (!picture) return;
  const { scale } = seen.peek();
  cross.value = {
    x: Math.min(picture.width, Math.max(0, cross.peek().x + by.x / scale)),
    y: Math.min(picture.height, Math.max(0, cross.peek().y + by.y / scale)),
  };
  keepInFrame(cross.peek());
};

/** Moves the picture until a spot of it is seen. */
export const keepInFrame = (spot: Point): void => {
  const at = inWindow(seen.peek(), spot);
  const { width, height } = frame.peek();
  const missing = (where: number, most: number): number =>
    where < around ? around - where : where > most - around ? most - around - where : 0;
  const by = { x: missing(at.x, width), y: missing(at.y, height) };
  if (by.x !== 0 || by.y !== 0) moveBy(by);
};
