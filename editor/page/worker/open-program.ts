// Opens the programs of the page that run in workers of their own and that nobody loads before they are wanted. Each stands in a
// script of its own as text, because a page that was opened from a folder may start a worker from a text only.

/** The scripts beside the page, by their names without the ending; build.mjs writes them. */
export type Program = "settler" | "layer" | "printer" | "tracer";

declare global {
  /** The texts of the programs whose scripts have been loaded. */
  var chalklinePrograms: Map<string, string> | undefined;
}

/** A worker that runs one of them; rejects where its script cannot be loaded, and may be tried again. */
export const openProgram = async (name: Program): Promise<Worker> => {
  if (!globalThis.chalklinePrograms?.has(name)) await loaded(`${name}.js`);
  const address = URL.createObjectURL(
    new Blob([globalThis.chalklinePrograms?.get(name) ?? ""], { type: "text/javascript" }),
  );
  const worker = new Worker(address);
  URL.revokeObjectURL(address);
  return worker;
};

const loaded = (src: string): Promise<void> =>
  new Promise((resolve, reject) => {
    const script = Object.assign(document.createElement("script"), { src });
    script.onload = () => resolve();
    script.onerror = () => reject(new Error("A part of the page could not be loaded."));
    document.head.append(script);
  });
