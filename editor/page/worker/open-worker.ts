// Opens the kernel's worker. Its program stands in a script of its own as text, because a page that was opened from a folder
// may not start a worker from a file beside it; from a text it may.

declare const chalklineWorker: string;

export const openWorker = (): Worker => {
  const address = URL.createObjectURL(new Blob([chalklineWorker], { type: "text/javascript" }));
  const worker = new Worker(address);
  URL.revokeObjectURL(address);
  return worker;
};
