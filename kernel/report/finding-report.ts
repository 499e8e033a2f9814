// One finding for people: what and where, the line with carets, what is the matter, what to try, and the other parties.
import type { Diagnostic, Where } from "../../grammar/diagnostic.ts";
import type { SourceTexts } from "../../grammar/source.ts";
import { excerpt } from "./excerpt.ts";
import { bad, plain, quiet, type SaidLine, strong, type Tone, warning } from "./said.ts";
import { wrapped } from "./wrapped.ts";

/** The finding's lines, its sentences broken at `width` columns. */
export const findingReport = (finding: Diagnostic, texts: SourceTexts, width: number): SaidLine[] => {
  const { code, severity, where, message, hint, related = [], times = 1 } = finding;
  const others = [...callsOf(where), ...related];
  const gutter = Math.max(...[where, ...others.map((other) => other.where)].map(({ line }) => String(line).length));
  const tone: Tone = severity === "error" ? "bad" : "warning";
  return [
    [
      severity === "error" ? bad("error") : warning("warning"),
      plain(" "),
      strong(code),
      quiet(`   ${where.file}:${where.line}`),
    ],
    ...excerpt(where, texts, gutter, tone),
    ...sentence(times === 1 ? message : `${message} This comes up ${times} times.`, width),
    ...(hint === undefined ? [] : sentence(tryThis(hint), width)),
    ...others.flatMap((other) => [
      ...sentence(pointer(other.message, other.where, where), width),
      ...excerpt(other.where, texts, gutter, "quiet"),
    ]),
  ];
};

const sentence = (text: string, width: number): SaidLine[] =>
  wrapped(text, width - 2).map((line) => [plain(`  ${line}`)]);

// "Did you mean hem?" is a question; everything else is something to do.
const tryThis = (hint: string): string =>
  hint.startsWith("Did you mean") ? hint : `Try: ${hint.charAt(0).toLowerCase()}${hint.slice(1)}`;

const pointer = (message: string, where: Where, from: Where): string => {
  const file = where.file === from.file ? "" : ` (${where.file}:${where.line})`;
  return `${message.replace(/\.$/, "")}${file}:`;
};

/** The calls that led into a step of the recipe's own, innermost first. */
const callsOf = ({ calledBy }: Where): { where: Where; message: string }[] =>
  calledBy === undefined ? [] : [{ where: calledBy, message: "It came to this from here" }, ...callsOf(calledBy)];
