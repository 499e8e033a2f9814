// The long run: recipes and drawings of one seed after another until the time is over; the text of every fault is written to a
// folder. A worker does the work, because only a thread beside it can stop what does not end.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import { type Fault, faultInWords, type Tally } from "./faults.ts";
import type { Kind } from "./target.ts";
import type { Rounds, Word } from "./watched-rounds.ts";

// A run that takes longer on the clock, in ms, is said not to end: a thousand times what most take on a busy machine.
const longest = 60_000;

/** Runs for so many minutes, tells what it finds, and answers how many kinds of fault there were. */
export const campaign = async (minutes: number, seed: number, folder: string, bundled: string): Promise<number> => {
  mkdirSync(folder, { recursive: true });
  const began = Date.now();
  const until = began + minutes * 60_000;
  const tallies = new Map<string, Tally>();
  const known = new Set<string>();
  let recipes = 0;
  let round = 0;

  const keep = (fault: Fault, from: number): void => {
    if (known.has(fault.key)) return;
    known.add(fault.key);
    const file = join(folder, `fault-${seed}-${known.size}.${fault.kind === "recipe" ? "chalk" : fault.kind}`);
    // A recipe may begin with a line of comment; a drawing is kept as it is.
    const said = `# ${fault.target}: ${fault.message.replace(/\s+/g, " ").slice(0, 200)}\n`;
    writeFileSync(file, `${fault.kind === "recipe" ? said : ""}${fault.text}`);
    const minute = Math.round((Date.now() - began) / 60_000);
    console.log(`${faultInWords(fault)}\n(seed ${from}, in minute ${minute}, written to ${file})\n`);
  };

  while (Date.now() < until) {
    const worker = new Worker(bundled, {
      execArgv: ["--enable-source-maps"],
      workerData: { seed, round, known: [...known] } satisfies Rounds,
    });
    let last:
      | { readonly target: string; readonly text: string; readonly kind: Kind; readonly since: number }
      | undefined;
    const ended = await new Promise<Error | "stuck" | "over">((resolve) => {
      const watch = setInterval(() => {
        if (Date.now() >= until) resolve("over");
        else if (last && Date.now() - last.since > longest) resolve("stuck");
      }, 500);
      worker.on("message", (word: Word) => {
        if (word.kind === "begins") {
          last = { target: word.target, text: word.text, kind: word.of, since: Date.now() };
          round = word.round;
        } else if (word.kind === "fault") keep(word.fault, word.seed);
        else {
          recipes += 1;
          add(word.tallies, tallies);
        }
      });
      worker.on("error", resolve);
      worker.on("exit", () => clearInterval(watch));
    });
    await worker.terminate();
    if (ended !== "over") {
      const message = ended === "stuck" ? "it does not end" : `it brings the program down: ${ended.message}`;
      const { target = "start", text = "", kind = "recipe" } = last ?? {};
      keep({ target, key: `${target}: ${message}`, message, stack: [], text, kind }, seed + round);
      const tally = tallies.get(target);
      if (tally) tally.faults += 1;
      if (!last) break;
      round += 1;
    }
  }
  for (const [name, { runs, faults, spent }] of tallies)
    console.log(`${name.padEnd(24)} ${runs} runs, ${faults} faults, ${(spent / runs).toFixed(1)} ms each`);
  console.log(`${recipes} recipes and drawings, ${known.size} kinds of fault, seed ${seed}`);
  return known.size;
};

const add = (from: ReadonlyMap<string, Tally>, to: Map<string, Tally>): void => {
  for (const [name, { runs, faults, spent }] of from) {
    const sum = to.get(name) ?? { runs: 0, faults: 0, spent: 0 };
    to.set(name, { runs: sum.runs + runs, faults: sum.faults + faults, spent: sum.spent + spent });
  }
};
