// The manual, made from the declarations: what a step's hover text says and what its page says is the same.
import { statements } from "../grammar/statements.ts";
import type { Check } from "./check.ts";
import { functions } from "./functions.ts";
import type { Vocabulary } from "./kernel.ts";
import { checkEntry, type Entry, functionEntry, statementEntry, stepEntry } from "./manual/entry.ts";
import { inMarkdown } from "./manual/in-markdown.ts";
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
    ...table(["statement", "meaning"], statements.map(statementEntry)),
    "",
    "## Functions",
    "",
    ...table(["function", "gives"], [...functions.values()].map(functionEntry)),
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
export const describeStep = (step: Step): string => inMarkdown(stepEntry(step));

/** A check's entry: what holds of a good garment, why, and a recipe on either side. */
export const describeCheck = (check: Check): string => inMarkdown(checkEntry(check));

const contents = (steps: readonly Step[], checks: readonly Check[]): string =>
  [
    `Steps: ${steps.map(({ name }) => `[${name}](#${name})`).join(" · ")}`,
    "",
    `Checks: ${checks.map(({ name }) => `[${name}](#${name})`).join(" · ")}`,
    "",
  ].join("\n");

const table = ([entry, meaning]: readonly [string, string], entries: readonly Entry[]): string[] => [
  `| ${entry} | ${meaning} |`,
  "| --- | --- |",
  ...entries.map(({ forms, summary }) => `| \`${inTable(forms.join(" "))}\` | ${inTable(summary)} |`),
];

const inTable = (text: string): string => text.replace(/\|/g, "\\|").replace(/\n/g, " ");
