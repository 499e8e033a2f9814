// A name that nothing in a recipe has, so that it takes nothing's place.
import { statementWords } from "../../../grammar/statements.ts";
import { placeWords } from "../../../grammar/tokens.ts";
import type { Written } from "../written.ts";

/** The name itself where it is free, else with the first number that makes it so. */
export const freeName = ({ lines, forms }: Written, wanted: string): string => {
  const words = new Set([...placeWords, ...statementWords, ...forms.keys()]);
  for (const line of lines) for (const { text } of line.words) words.add(text);
  let name = wanted;
  for (let count = 2; words.has(name); count += 1) name = `${wanted}-${count}`;
  return name;
};
