// What each word of a line is there, as the grammar tags it: on a line that is broken, as far as the tagging came.

import type { Form } from "../../grammar/phrase.ts";
import { tagLine, tagParameters } from "../../grammar/tagging.ts";
import type { Token } from "../../grammar/tokens.ts";
import type { Stretch } from "../../grammar/tree.ts";

/** What a word is on its line; the names are those of the grammar's tokens. */
export type Meaning =
  | "Verb"
  | "ClauseWord"
  | "SuffixWord"
  | "ChoiceWord"
  | "DirectionWord"
  | "NewName"
  | "NamingEquals"
  | "Name"
  | "Number"
  | "Count"
  | "Unit"
  | "Text"
  | "UnclosedText"
  | "place word"
  | "logic word"
  | "sign";

/** A word or sign of a line. */
export interface WrittenWord extends Stretch {
  readonly text: string;
  readonly means: Meaning;
}

/** Tags the words of a statement, and of a step of the recipe's own the parameters between its brackets. */
export const tagStatement = (tokens: Token[], forms: readonly Form[]): void => {
  const heading = forms[0]?.parameters ? tokens.findIndex(({ image }) => image === "(") : -1;
  if (heading > 0) tagParameters(tokens.slice(heading));
  tagLine(heading > 0 ? tokens.slice(0, heading) : tokens, forms);
};

const meanings: ReadonlyMap<string, Meaning> = new Map<string, Meaning>([
  ...(["Verb", "ClauseWord", "SuffixWord", "ChoiceWord", "DirectionWord", "NewName"] as const).map(
    (name) => [name, name] as const,
  ),
  ...(["NamingEquals", "Name", "Number", "Count", "Unit", "Text", "UnclosedText"] as const).map(
    (name) => [name, name] as const,
  ),
  ["ClosingText", "Text"],
  ...["At", "Toward", "SideWord", "Bearing", "For", "End"].map((name) => [name, "place word"] as const),
  ...["And", "Or", "Not"].map((name) => [name, "logic word"] as const),
]);

/** A tagged token as plain data; an `else` before an `if` starts the line as a verb does. */
export const wordOf = ({ image, startOffset, tokenType }: Token, isElse: boolean): WrittenWord => ({
  text: image,
  means: isElse ? "Verb" : (meanings.get(tokenType.name) ?? "sign"),
  from: startOffset,
  to: startOffset + image.length,
});
