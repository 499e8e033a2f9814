// The manual, made from the declarations: what a step's hover text says and what its page says is the same.
import { type Part, type Slot, signature } from "../grammar/phrase.ts";
import { statements } from "../grammar/statements.ts";
import type { Check } from "./check.ts";
import { functions } from "./functions.ts";
import type { Vocabulary } from "./kernel.ts";
import { languageChapter } from "./manual/language-chapter.ts";
import type { Step } from "./step.ts";

/** The whole manual as Markdown. */
export const manual = ({ steps, checks }: Vocabulary): string =>
  [
    "# The Chalkline manual",
    "",
    "Made from the program's own declarations by `npm run manual`; a test fails when it is stale.",
    "",
    contents(steps, checks),
    languageChapter,
    "## Statements",
    "",
    "| statement | meaning |",
    "| --- | --- |",
    ...statements.map(
      ({ parts, summary, block }) =>
        `| \`${inTable(signature(parts) + (block ? " { … }" : ""))}\` | ${inTable(summary)} |`,
    ),
    "",
    "## Functions",
    "",
    "| function | gives |",
    "| --- | --- |",
    ...[...functions.values()].map(({ form, summary }) => `| \`${inTable(form)}\` | ${inTable(summary)} |`),
    "",
    "## Steps",
    "",
    ...steps.flatMap((step) => [
      describeStep(step),
      "",
      picture(step.name, `What ${step.name} does in the example`),
      "",
    ]),
    "## Checks",
    "",
    "Each of these looks at every finished garment. A finding of one can be waived where it is meant to be so:",
    '`accept NAME on THING because "…"`; the reason is printed with the report.',
    "",
    ...checks.flatMap((check) => [
      describeCheck(check),
      "",
      picture(check.name, `The recipe that fails ${check.name}`),
      "",
    ]),
  ]
    .join("\n")
    .replace(/\n{3,}/g, "\n\n")
    .trimEnd()
    .concat("\n");

const picture = (name: string, words: string): string => `<img src="manual/${name}.svg" alt="${words}" width="420">`;

/** A step's entry: its forms, what it does, its slots and its example. */
export const describeStep = (step: Step): string =>
  [
    `### ${step.name}`,
    "",
    ...step.phrases.map(({ parts }) => `    ${signature(parts)}`),
    "",
    `${step.summary}${step.details ? ` ${step.details}` : ""}`,
    "",
    ...slotsOf(step).map(([written, note]) => `- ${written}: ${note}`),
    "",
    `Stands in ${step.on === "piece" ? "a piece" : "the garment, outside of pieces"}. Since ${step.since}.`,
    "",
    "```",
    step.example.trim(),
    "```",
  ].join("\n");

/** A check's entry: what holds of a good garment, why, and a recipe on either side. */
export const describeCheck = (check: Check): string =>
  [
    `### ${check.name}`,
    "",
    `${check.title} ${check.why} Since ${check.since}.`,
    "",
    "Passes:",
    "",
    "```",
    check.passes.trim(),
    "```",
    "",
    "Fails:",
    "",
    "```",
    check.fails.trim(),
    "```",
  ].join("\n");

/** Every slot once, with its clause word, and what stands in it. */
const slotsOf = (step: Step): (readonly [string, string])[] => {
  const rows = new Map<string, string>();
  const add = (word: string, slot: Slot): void => {
    const kind = slot.choices ? slot.choices.map((choice) => `\`${choice}\``).join(" or ") : slot.wanted;
    rows.set(word === "" ? kind : `\`${word}\` ${kind}${slot.many ? ", one or more" : ""}`, slot.note);
  };
  const walk = (parts: readonly Part[]): void => {
    let word = "";
    for (const part of parts) {
      if (part.kind === "words") word = part.words.at(-1) === "=" ? "" : (part.words.at(-1) ?? "");
      else if (part.kind === "optional") walk(part.parts);
      else {
        add(word === step.name ? "" : word, part.slot);
        word = "";
      }
    }
  };
  for (const { parts } of step.phrases) walk(parts);
  return [...rows];
};

const contents = (steps: readonly Step[], checks: readonly Check[]): string =>
  [
    `Steps: ${steps.map(({ name }) => `[${name}](#${name})`).join(" · ")}`,
    "",
    `Checks: ${checks.map(({ name }) => `[${name}](#${name})`).join(" · ")}`,
    "",
  ].join("\n");

const inTable = (text: string): string => text.replace(/\|/g, "\\|").replace(/\n/g, " ");
