// A worker of its own that lays a garment on its cloths, with as little effort as still tells how much to buy: the drawing of the
// pieces never waits for it. It is asked about one garment at a time.
import { layDrawing, tenth } from "../../../kernel/cloth/lay/lay-drawing.ts";
import { type Asked, type Lay, layOf } from "../../../kernel/cloth/lay/lay-of.ts";
import { svg } from "../../../kernel/export/svg.ts";
import type { Garment } from "../../../kernel/working.ts";
import type { FromLayer, ToLayer } from "./spoken.ts";

// What `chalkline lay` takes where nothing else is said, and the quickest effort.
const asked: Asked = { spread: "flat", selvedge: 10, tilt: 0, effort: "quick", seed: 1 };

const speak = (message: FromLayer): void => (self as unknown as Worker).postMessage(message);

self.onmessage = ({ data: garment }: MessageEvent<ToLayer>) => {
  try {
    const lay = layToItsEnd(garment);
    speak({ lay, drawings: lay.cloths.map((cloth) => svg(layDrawing(cloth, garment.units, tenth))) });
  } catch (error) {
    speak({ failed: error instanceof Error ? error.message : String(error) });
  }
};

/** Never a shorter search than the whole one: the same garment always comes to the same length. */
const layToItsEnd = (garment: Garment): Lay => {
  const search = layOf(garment, asked);
  for (;;) {
    const { done, value } = search.next();
    if (done) return value;
  }
};
