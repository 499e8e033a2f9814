// The page's end of the line to the worker. The latest text wins: while one is worked, at most one waits, and a newer one
// takes its place. A question is answered about the text that was on the table when it was asked, or a newer one.
import type { Answers } from "./answers.ts";
import type { FileText, FromWorker, OnTheTable, ToWorker, Worked } from "./spoken.ts";

/** A worker, or whatever else speaks like one. */
export interface Speaker {
  postMessage(message: ToWorker): void;
  onmessage: ((event: { readonly data: FromWorker }) => void) | null;
  terminate(): void;
}

type Asked<What extends keyof Answers> = Parameters<Answers[What]>[1];
type Answered<What extends keyof Answers> = Awaited<ReturnType<Answers[What]>>;

export interface KernelLine {
  /** Puts the recipes that a `use` line may name within reach, and has what is on the table worked with them. */
  shelve(files: readonly FileText[]): void;
  /** Has this worked as soon as the worker is free, unless something newer comes first. */
  work(table: OnTheTable): void;
  /** Asks about what is on the table; undefined when nothing has been worked, or the worker had to be stopped. */
  ask<What extends keyof Answers>(what: What, asked: Asked<What>): Promise<Answered<What> | undefined>;
  /** Stops the worker for good. */
  close(): void;
}

interface Heard {
  /** What came of the latest text that was worked. */
  worked(worked: Worked): void;
  /** The worker failed, or had to be stopped. */
  failed(words: string): void;
}

// A recipe of ordinary size takes less than a tenth of a second, and the kernel's own limits end every other; this is for the
// case that they do not.
const longestWork = 10_000;

/** A line to workers that `open` makes; a worker that hangs is stopped and a new one opened. */
export const kernelLine = (open: () => Speaker, heard: Heard): KernelLine => {
  let speaker: Speaker;
  let files: readonly FileText[] = [];
  let turn = 0;
  /** The text that the worker is at; should a question have sent a newer one after it, that one. */
  let working: { readonly turn: number; readonly timer: ReturnType<typeof setTimeout> } | undefined;
  let waiting: OnTheTable | undefined;
  let latest: OnTheTable | undefined;
  let asked = 0;
  const questions = new Map<number, (answer: never) => void>();

  const start = (): void => {
    speaker = open();
    speaker.onmessage = ({ data }) => hear(data);
    if (files.length > 0) speaker.postMessage({ kind: "shelf", files });
  };

  const send = (table: OnTheTable): void => {
    turn += 1;
    if (working) clearTimeout(working.timer);
    working = { turn, timer: setTimeout(hung, longestWork) };
    speaker.postMessage({ kind: "work", turn, table });
  };

  const freed = (): void => {
    if (working) clearTimeout(working.timer);
    working = undefined;
    const next = waiting;
    waiting = undefined;
    if (next) send(next);
  };

  const hear = (message: FromWorker): void => {
    // What came of a text that a newer one has overtaken is old already.
    const isLatest = "turn" in message && message.turn === working?.turn;
    if (message.kind === "worked") {
      if (!isLatest) return;
      freed();
      heard.worked(message.worked);
    } else if (message.kind === "answer") {
      settle(message.id, message.answer);
    } else if (message.kind === "failed") {
      if (message.id !== undefined) settle(message.id, undefined);
      if (isLatest) freed();
      heard.failed(message.words);
    }
  };

  const settle = (id: number, answer: unknown): void => {
    questions.get(id)?.(answer as never);
    questions.delete(id);
  };

  const hung = (): void => {
    speaker.terminate();
    for (const id of [...questions.keys()]) settle(id, undefined);
    working = undefined;
    start();
    heard.failed(
      "This recipe took too long to work and was stopped; the drawing is that of the last text that could be worked.",
    );
    freed();
  };

  start();
  return {
    shelve(shelved) {
      files = shelved;
      speaker.postMessage({ kind: "shelf", files });
      // What lies on the table may use a recipe that is another now.
      if (latest) this.work(latest);
    },
    work(table) {
      latest = table;
      if (working) waiting = table;
      else send(table);
    },
    ask(what, about) {
      // What waits is sent ahead of the question: the worker hears its messages in order.
      if (waiting) {
        const next = waiting;
        waiting = undefined;
        send(next);
      }
      asked += 1;
      const id = asked;
      return new Promise((resolve) => {
        questions.set(id, resolve as (answer: never) => void);
        speaker.postMessage({ kind: "ask", id, what, with: about });
      });
    },
    close() {
      if (working) clearTimeout(working.timer);
      speaker.terminate();
    },
  };
};
