// A day's work with the page's worker: the recipe on the table is typed in, the page's questions are asked, and now and then the
// shelf gets another file, or one of it another name. The worker's own program runs here without a browser.
import { once } from "node:events";
import { join } from "node:path";
import { build } from "esbuild";
import type { FromWorker, ToWorker } from "../../editor/page/worker/spoken.ts";
import { type Day, type HeapAfter, measuredProgram } from "./measured-program.ts";
import { typing } from "./typing.ts";
import { block, vest } from "./vest.ts";

// What a worker of a browser finds around it: a place to speak into, and one that is spoken to.
const around = `
const self = { postMessage: (message) => process.send(message) };
process.on("message", (data) => { if (data.kind !== undefined) self.onmessage({ data }); });
process.channel.ref();
`;

/** Works the day, and tells what the worker held in the course of it. */
export const pageWorkerDay = async (day: Day): Promise<HeapAfter[]> => {
  const { project, folder, edits, every, filesEvery, told } = day;
  const program = join(folder, "worker.mjs");
  await build({
    entryPoints: [join(project, "editor/page/worker/worker.ts")],
    outfile: program,
    bundle: true,
    format: "esm",
    platform: "node",
    banner: { js: around },
    logLevel: "warning",
  });
  const worker = measuredProgram([program], day);
  const waiting: ((message: FromWorker) => void)[] = [];
  // Who speaks before it is ready is not heard.
  await new Promise<void>((resolve) => {
    worker.child.on("message", (message: FromWorker) => {
      if (!("kind" in message)) return;
      if (message.kind === "ready") resolve();
      else waiting.shift()?.(message);
    });
  });
  const say = (message: ToWorker): Promise<FromWorker> =>
    new Promise((resolve) => {
      if (message.kind !== "shelf") waiting.push(resolve);
      worker.child.send(message);
      if (message.kind === "shelf") resolve({ kind: "ready" });
    });

  await say({ kind: "shelf", files: [vest, block] });
  const held: HeapAfter[] = [];
  let edit = 0;
  for (const text of typing(vest.text, 2)) {
    edit += 1;
    // Another name for what is on the table, from time to time.
    const file = edit % 50 === 0 ? `fitting-${edit}.chalk` : vest.file;
    const worked = await say({ kind: "work", turn: edit, table: { file, text, given: { measures: [] } } });
    if (worked.kind !== "worked") throw new Error(JSON.stringify(worked));
    const offset = Math.floor((text.length * (edit % 97)) / 97);
    const [what, more] = questions(offset)[edit % 6]!;
    const answer = await say({ kind: "ask", id: edit, what, with: more });
    if (answer.kind !== "answer") throw new Error(JSON.stringify(answer));
    if (edit % filesEvery === 0)
      await say({ kind: "shelf", files: [vest, block, { file: `sketch-${edit}.chalk`, text: block.text }] });
    if (edit % every === 0) {
      const after = { edits: edit, mb: await worker.heap() };
      held.push(after);
      told(after);
    }
    if (edit >= edits) break;
  }
  const gone = once(worker.child, "exit");
  worker.child.kill();
  await gone;
  return held;
};

const questions = (offset: number): readonly (readonly [Extract<ToWorker, { kind: "ask" }>["what"], object])[] => [
  ["symbols", {}],
  ["hover", { offset }],
  ["completion", { offset }],
  ["semanticTokens", {}],
  ["inlayValues", { fromLine: 1, toLine: 60 }],
  ["references", { offset }],
];
