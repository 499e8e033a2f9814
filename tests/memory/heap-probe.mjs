// Loaded before a program (node --expose-gc --import): tells over the channel between the processes, when it is asked, how many
// bytes the program holds once all that nobody needs any more has been thrown away.

// A leak as it is made most easily: what was to be forgotten with its key is kept. Whoever measures has to see it.
if (process.env.CHALKLINE_LEAK === "1") globalThis.WeakMap = Map;

process.on("message", (message) => {
  if (message !== "heap") return;
  // What one round finds free may free more in the next; what waits for its end in a later turn gets it in between.
  globalThis.gc();
  setImmediate(() => {
    globalThis.gc();
    const { heapUsed, external } = process.memoryUsage();
    process.send({ heap: heapUsed + external });
  });
});
process.channel.unref();
