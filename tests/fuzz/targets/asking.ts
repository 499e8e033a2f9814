// What an editor asks of a text while it is typed, whole or not: each answer lies in the text, and the tidy form comes of its edits.
import { codeActions, tried } from "../../../editor/assist/code-actions.ts";
import { completion } from "../../../editor/assist/completion.ts";
import { definition } from "../../../editor/assist/definition.ts";
import { dials } from "../../../editor/assist/dials.ts";
import { findings } from "../../../editor/assist/findings.ts";
import { folding } from "../../../editor/assist/folding.ts";
import { formatting } from "../../../editor/assist/formatting.ts";
import { hover } from "../../../editor/assist/hover.ts";
import { inlayValues } from "../../../editor/assist/inlay-values.ts";
import { links } from "../../../editor/assist/links.ts";
import { references } from "../../../editor/assist/references.ts";
import { semanticTokens } from "../../../editor/assist/semantic-tokens.ts";
import { signatureHelp } from "../../../editor/assist/signature-help.ts";
import { symbols } from "../../../editor/assist/symbols.ts";
import { edited, type TextEdit } from "../../../editor/assist/text-edit.ts";
import type { WorkedText } from "../../../editor/assist/worked-text.ts";
import { tidy } from "../../../grammar/print.ts";
import { dice } from "../dice.ts";
import { plainlyTold } from "../figures-told.ts";
import { sources } from "../seed-recipes.ts";
import { holds, type Target } from "../target.ts";
import { chalkline, textWorkedOnce } from "../worked-once.ts";

// Every answer at this many places; each place costs as much as a hover and a completion.
const places = 4;

export const asking: Target = {
  name: "ask",
  isDear: true,
  run({ text }) {
    const worked = textWorkedOnce(text);
    const roll = dice(text);
    ofWhole(worked);
    for (let place = 0; place < places; place += 1) atPlace(worked, roll(text.length + 1), roll(text.length + 1));
  },
};

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Throws where something does not lie in the text. */
const within = (stretches: readonly Stretch[], { length }: string, what: string): void => {
  const isWithin = stretches.every(({ from, to }) => 0 <= from && from <= to && to <= length);
  holds(isWithin, `${what}: it lies outside the text`);
};

const own = <Each extends { readonly file: string }>(all: readonly Each[]): Each[] =>
  all.filter(({ file }) => file === "fuzz.chalk");

const ofWhole = (worked: WorkedText): void => {
  const { text } = worked.source;
  const all = findings(worked);
  within([...own(all), ...own(all).flatMap(({ fix }) => own(fix?.edits ?? []))], text, "findings");
  within(semanticTokens(worked), text, "tokens");
  within(symbols(worked), text, "symbols");
  within(dials(worked), text, "dials");
  within(links(worked), text, "links");
  const lines = text.split("\n").length;
  holds(
    folding(worked).every(({ fromLine, toLine }) => 1 <= fromLine && fromLine < toLine && toLine <= lines),
    "folding: it lies outside the text",
  );
  for (const { at, text: said } of inlayValues(worked, 1, lines)) {
    within([{ from: at, to: at }], text, "values in the text");
    plainlyTold(said, text, "values in the text");
  }
  const tidied = formatting(worked);
  if ("refused" in tidied) return;
  within(tidied.edits, text, "formatting");
  const { tree, forms } = chalkline.parse(worked.source);
  holds(edited(text, tidied.edits) === tidy(tree, forms), "the edits of formatting come to another text");
};

const atPlace = (worked: WorkedText, offset: number, other: number): void => {
  const { text } = worked.source;
  const shown = hover(worked, offset);
  if (shown) {
    within([shown], text, "hover");
    plainlyTold(shown.markdown, text, "hover");
  }
  const offered = completion(worked, offset, ["blocks/raglan.chalk"]);
  within(offered, text, "completion");
  const isHere = offered.every(({ from, to }) => from <= offset && offset <= to);
  holds(isHere, "completion: it writes where the cursor is not");
  const help = signatureHelp(worked, offset);
  holds(!help || help.signatures[help.active] !== undefined, "help on a step that is not listed");
  within(own(definition(worked, offset)), text, "definition");
  within(own(references(worked, offset)), text, "references");
  for (const [from, to] of [
    [offset, offset],
    [Math.min(offset, other), Math.max(offset, other)],
  ] as const)
    for (const action of codeActions(worked, from, to)) within(ownEdits(tried(worked, action).edits), text, "actions");
  // As of the cursor: what a line written here would see.
  chalkline.workUpTo(worked.source, offset, { sources });
};

const ownEdits = (edits: readonly TextEdit[]): TextEdit[] => own(edits);
