// An entry of the reference as Markdown: a step's hover text and its place in the manual are the same.
import type { Entry, WordedSlot } from "./entry.ts";

/** The entry under a heading of its own. */
export const inMarkdown = ({ kind, name, belongs, since, forms, sentences, slots, recipes }: Entry): string => {
  const age = since === undefined ? [] : [`Since ${since}.`];
  const isStep = kind === "step";
  const parts = [
    `### ${name}`,
    forms.map((form) => `    ${form}`).join("\n"),
    [...sentences, ...(isStep ? [] : age)].join(" "),
    slots.map(slotLine).join("\n"),
    isStep ? [`Stands ${stands.get(belongs) ?? belongs}.`, ...age].join(" ") : "",
    ...recipes.flatMap(({ title, text }) => [title === "For example" ? "" : `${title}:`, `\`\`\`\n${text}\n\`\`\``]),
  ];
  return parts.filter((part) => part !== "").join("\n\n");
};

const stands: ReadonlyMap<string, string> = new Map([["of the garment", "in the garment, outside of pieces"]]);

/** "- `by` a length or an angle: how far it opens" */
const slotLine = ({ word, slot }: WordedSlot): string => {
  const kind = slot.choices ? slot.choices.map((choice) => `\`${choice}\``).join(" or ") : slot.wanted;
  return `- ${word === "" ? kind : `\`${word}\` ${kind}${slot.many ? ", one or more" : ""}`}: ${slot.note}`;
};
