// Words as Markdown. What people wrote in a recipe is shown as it stands: nothing of it can become a link, a picture,
// HTML or a heading.
import { readable } from "../../kernel/report/readable.ts";

/** A text of the recipe's inside running words, all on one line. */
export const asText = (text: string): string =>
  readable(text.replace(/\s+/g, " ").trim())
    // As numbers: no reader of Markdown makes an address, a mail address or a tag of these.
    .replace(/[<>&@]|:(?=\S)/g, (sign) => `&#${sign.charCodeAt(0)};`)
    .replace(/[\\`*_[\]|~]|\.(?=\p{L})/gu, "\\$&")
    // At the beginning of a paragraph these would make a heading, a list or a rule of it.
    .replace(/^\s*(?=[#+=-])/, "\\")
    .replace(/^(\s*\d+)([.)])/, "$1\\$2");

/** A name or a line of the recipe's set as code, whatever it holds. */
export const asCode = (text: string): string => {
  const shown = readable(text);
  const longest = Math.max(0, ...[...shown.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = "`".repeat(longest + 1);
  const room = longest > 0 || shown === "" ? " " : "";
  return `${fence}${room}${shown}${room}${fence}`;
};
