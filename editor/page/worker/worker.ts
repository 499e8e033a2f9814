// The kernel, off the typing thread: it is told what lies on the table, works it, and says what came of it.

import { kernel } from "../../../kernel/kernel.ts";
import { measuresAsked } from "../../../kernel/measures-asked.ts";
import { tellStep } from "../../../kernel/record.ts";
import { valueInWords } from "../../../kernel/report/amounts.ts";
import { isScalar } from "../../../kernel/value.ts";
import { vocabulary } from "../../../kernel/vocabulary.ts";
import { dials } from "../../assist/dials.ts";
import { findings } from "../../assist/findings.ts";
import { type WorkedText, workedText } from "../../assist/worked-text.ts";
import { lineIn } from "../../picture/lines-of.ts";
import { pictured } from "../../picture/pictured.ts";
import { answers } from "./answers.ts";
import { shelf, shelved } from "./shelf.ts";
import type { FromWorker, OnTheTable, ToWorker, Worked } from "./spoken.ts";

let chalk = kernel(vocabulary);
/** The names of all files that this kernel may have read. */
const known = new Set<string>();
let onTable: WorkedText | undefined;

// The library of the DOM types this as a window; a worker speaks through the same two names.
const speak = (message: FromWorker): void => (self as unknown as Worker).postMessage(message);

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  try {
    hear(data);
  } catch (error) {
    // A mistake in a recipe never comes here, so this one is ours; the page says so and goes on.
    const words = error instanceof Error ? error.message : String(error);
    speak({
      kind: "failed",
      words,
      ...(data.kind === "work" && { turn: data.turn }),
      ...(data.kind === "ask" && { id: data.id }),
    });
  }
};

const hear = (message: ToWorker): void => {
  if (message.kind === "shelf") {
    shelved.clear();
    for (const { file, text } of message.files) shelved.set(file, text);
    forgetGone(onTable?.source.file);
  } else if (message.kind === "work") {
    speak({ kind: "worked", turn: message.turn, worked: work(message.table) });
  } else {
    const answer = answers[message.what] as (worked: WorkedText, asked: unknown) => unknown;
    speak({ kind: "answer", id: message.id, answer: onTable && answer(onTable, message.with) });
  }
};

/**
 * A kernel remembers every file that it has read by its name, and is given up when one of them lies neither on the table nor on
 * the shelf any more: names that come and go all day would fill the memory.
 */
const forgetGone = (laid: string | undefined): void => {
  const here = new Set([...shelved.keys(), ...(laid === undefined ? [] : [laid])]);
  if ([...known].some((name) => !here.has(name))) {
    chalk = kernel(vocabulary);
    known.clear();
  }
  for (const name of here) known.add(name);
};

const work = ({ file, text, given }: OnTheTable): Worked => {
  const began = performance.now();
  if (file !== onTable?.source.file) forgetGone(file);
  onTable = workedText(
    chalk,
    { file, text },
    {
      sources: shelf(shelved),
      measures: new Map(given.measures),
      ...(given.size !== undefined && { size: given.size }),
    },
  );
  const { outcome } = onTable;
  return {
    text,
    picture: pictured(outcome),
    findings: findings(onTable),
    dials: dials(onTable),
    steps: outcome.records.map((record) => ({
      line: lineIn(file, record.where) ?? 0,
      piece: record.piece,
      words: tellStep(record, outcome.garment),
    })),
    sizes: [...outcome.sizes.keys()],
    measures: [...measuresAsked(outcome)].flatMap(([name, { value }]) =>
      isScalar(value) ? [{ name, words: valueInWords(value, outcome.garment.units) ?? "" }] : [],
    ),
    took: performance.now() - began,
  };
};

speak({ kind: "ready" });
