// Opens the worker in which cloth settles, once; its program is loaded when it is first wanted.
import type { FromSettler, ToSettler } from "./spoken.ts";

declare const chalklineSettler: string;

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
  await loaded("settler.js");
  const address = URL.createObjectURL(new Blob([chalklineSettler], { type: "text/javascript" }));
  const worker = new Worker(address);
  URL.revokeObjectURL(address);
  worker.onmessage = ({ data }: MessageEvent<FromSettler>) => seen(data);
  return worker;
};

const loaded = (src: string): Promise<void> =>
  new Promise((resolve, reject) => {
    const script = Object.assign(document.createElement("script"), { src });
    script.onload = () => resolve();
    script.onerror = () => reject(new Error("a part of the page could not be loaded"));
    document.head.append(script);
  });
