// The line between page and worker: the latest text wins, at most one waits, no answer of an overtaken text is shown, and a
// worker that hangs is stopped.
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { kernelLine, type Speaker } from "../../../editor/page/worker/kernel-line.ts";
import type { FromWorker, OnTheTable, ToWorker, Worked } from "../../../editor/page/worker/spoken.ts";

const table = (text: string): OnTheTable => ({ file: "a.chalk", text, given: { measures: [] } });
const workedFrom = (text: string): Worked => ({
  text,
  picture: { title: "", units: "cm", complete: true, pieces: [] },
  findings: [],
  dials: [],
  steps: [],
  sizes: [],
  measures: [],
  took: 0,
});

interface Played extends Speaker {
  readonly heard: ToWorker[];
  stopped: boolean;
  /** Answers the last text that was sent, or an earlier one. */
  done(turn: number): void;
}

const opened: Played[] = [];
const open = (): Played => {
  const speaker: Played = {
    heard: [],
    stopped: false,
    onmessage: null,
    postMessage(message) {
      this.heard.push(message);
    },
    terminate() {
      this.stopped = true;
    },
    done(turn) {
      const sent = this.heard.find((message) => message.kind === "work" && message.turn === turn);
      if (sent?.kind === "work") say(this, { kind: "worked", turn, worked: workedFrom(sent.table.text) });
    },
  };
  opened.push(speaker);
  return speaker;
};
const say = (speaker: Speaker, data: FromWorker): void => speaker.onmessage?.({ data });
const textsSent = (speaker: Played): string[] =>
  speaker.heard.flatMap((message) => (message.kind === "work" ? [message.table.text] : []));

let shown: string[];
let failures: string[];
const line = () =>
  kernelLine(open, { worked: ({ text }) => shown.push(text), failed: (words) => failures.push(words) });

beforeEach(() => {
  opened.length = 0;
  shown = [];
  failures = [];
  vi.useFakeTimers();
});
afterEach(() => vi.useRealTimers());

test("of many texts only the first and the last are worked, and the last is shown", () => {
  const kernel = line();
  for (const text of ["a", "ab", "abc", "abcd"]) kernel.work(table(text));
  const [worker] = opened;
  expect(textsSent(worker!)).toEqual(["a"]);
  worker!.done(1);
  expect(textsSent(worker!)).toEqual(["a", "abcd"]);
  worker!.done(2);
  expect(shown).toEqual(["a", "abcd"]);
});

test("a question goes out behind the text it is asked about, and is answered", async () => {
  const kernel = line();
  kernel.work(table("a"));
  kernel.work(table("ab"));
  const answer = kernel.ask("formats", {});
  const [worker] = opened;
  expect(worker!.heard.map(({ kind }) => kind)).toEqual(["work", "work", "ask"]);
  worker!.done(1);
  // Overtaken by the text that the question sent on.
  expect(shown).toEqual([]);
  worker!.done(2);
  say(worker!, { kind: "answer", id: 1, answer: [{ name: "svg", title: "SVG" }] });
  expect(shown).toEqual(["ab"]);
  expect(await answer).toEqual([{ name: "svg", title: "SVG" }]);
});

test("a worker that hangs is stopped, what waited is worked by a new one, and its questions end", async () => {
  const kernel = line();
  kernel.shelve([{ file: "block.chalk", text: "chalkline 1" }]);
  kernel.work(table("hangs"));
  kernel.work(table("waits"));
  const answer = kernel.ask("formats", {});
  kernel.work(table("newest"));
  vi.advanceTimersByTime(11_000);
  const [first, second] = opened;
  expect(first!.stopped).toBe(true);
  expect(failures).toHaveLength(1);
  expect(await answer).toBeUndefined();
  expect(second!.heard[0]).toMatchObject({ kind: "shelf" });
  expect(textsSent(second!)).toEqual(["newest"]);
  second!.done(3);
  expect(shown).toEqual(["newest"]);
});

test("another shelf has what lies on the table worked again", () => {
  const kernel = line();
  kernel.work(table("a"));
  opened[0]!.done(1);
  kernel.shelve([{ file: "block.chalk", text: "chalkline 1" }]);
  expect(textsSent(opened[0]!)).toEqual(["a", "a"]);
});
