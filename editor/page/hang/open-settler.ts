// Opens the worker in which cloth settles, once; its program is loaded when it is first wanted.
import { openProgram } from "../worker/open-program.ts";
import type { FromSettler, ToSettler } from "./spoken.ts";

/** A line to the settler: what is said last counts. */
export interface SettlerLine {
  settle(wanted: ToSettler): void;
}

let opening: Promise<Worker> | undefined;

/** A line whose frames go to `seen`. Where the program cannot be loaded nothing ever settles, and the formula's picture stays. */
export const settlerLine = (seen: (frame: FromSettler) => void): SettlerLine => {
  let latest: ToSettler | undefined;
  return {
    settle: (wanted) => {
      latest = wanted;
      if (!opening && !wanted.hanging) return;
      opening ??= open(seen);
      void opening.then(
        (worker) => {
          if (latest === wanted) worker.postMessage(wanted);
        },
        () => undefined,
      );
    },
  };
};

const open = async (seen: (frame: FromSettler) => void): Promise<Worker> => {
  const worker = await openProgram("settler");
  worker.onmessage = ({ data }: MessageEvent<FromSettler>) => seen(data);
  return worker;
};
