// A program in a process of its own, whose memory can be measured while it works.
import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";

/** What is worked on for how long. */
export interface Day {
  /** The folder of this project, with the program built. */
  readonly project: string;
  /** An empty folder to work in. */
  readonly folder: string;
  readonly edits: number;
  /** So many edits lie between two files that come and go. */
  readonly filesEvery: number;
  /** The heap is measured after every so many. */
  readonly every: number;
  /** Hears of every measure at once. */
  readonly told: (after: HeapAfter) => void;
  /** Plants a leak, so that one sees that a leak is seen. */
  readonly leaks: boolean;
}

export interface MeasuredProgram {
  readonly child: ChildProcess;
  /** MiB that it holds once all that nobody needs any more has been thrown away. */
  heap(): Promise<number>;
}

/** Starts `node ARGS` for a day. */
export const measuredProgram = (args: readonly string[], { project, folder, leaks }: Day): MeasuredProgram => {
  const probe = join(project, "tests/memory/heap-probe.mjs");
  const child = spawn(process.execPath, ["--expose-gc", "--import", probe, ...args], {
    cwd: folder,
    env: { PATH: process.env.PATH, ...(leaks && { CHALKLINE_LEAK: "1" }) },
    stdio: ["pipe", "pipe", "inherit", "ipc"],
  });
  return {
    child,
    heap: () =>
      new Promise((resolve, reject) => {
        const hear = (message: unknown): void => {
          if (typeof message !== "object" || message === null || !("heap" in message)) return;
          child.off("message", hear);
          resolve(Number(message.heap) / 1024 / 1024);
        };
        child.on("message", hear);
        child.send("heap", (error) => {
          if (error) reject(error);
        });
      }),
  };
};

/** What a program held after so many edits. */
export interface HeapAfter {
  readonly edits: number;
  readonly mb: number;
}
