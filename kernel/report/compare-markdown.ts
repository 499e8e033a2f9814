// A comparison as Markdown that fits a pull request: headings, tables and lists, and nothing of the recipe's that could be markup.
import type { Section, Told } from "./compare-told.ts";
import { readable } from "./readable.ts";

/** All that is told as GitHub Flavored Markdown. */
export const compareMarkdown = (told: Told): string =>
  [
    `## ${escaped(told.title)}`,
    `${code(told.before)} → ${code(told.after)}`,
    `**${escaped(told.summary)}**`,
    ...told.remarks.map((remark) => `> ${escaped(remark)}`),
    ...told.sections.flatMap(sectionParts),
  ]
    .map((part) => `${part}\n`)
    .join("\n");

const sectionParts = ({ heading, remark, rows, sentences }: Section): string[] => [
  `### ${escaped(heading)}`,
  ...(remark === "" ? [] : [escaped(remark)]),
  ...(rows.length === 0 ? [] : [tableOf(rows)]),
  ...(sentences.length === 0 ? [] : [sentences.map(({ text }) => `- ${escaped(text)}`).join("\n")]),
];

const tableOf = ([head, ...rows]: Section["rows"]): string => {
  const columns = Math.max(head?.length ?? 0, ...rows.map((row) => row.length));
  const written = (row: Section["rows"][number] = []): string =>
    `| ${Array.from({ length: columns }, (_, i) => escaped(row[i]?.text.trim() ?? "")).join(" | ")} |`;
  const isAmount = (column: number): boolean => rows.some((row) => row[column]?.amount === true);
  const rule = `| ${Array.from({ length: columns }, (_, i) => (isAmount(i) ? "---:" : "---")).join(" | ")} |`;
  return [written(head), rule, ...rows.map(written)].join("\n");
};

/** Signs that Markdown or HTML would take for their own are written so that they stand for themselves (CommonMark 0.31, 2.4). */
const escaped = (text: string): string =>
  readable(text)
    .replace(/[\\`*_{}[\]#!|~>@]/g, (sign) => `\\${sign}`)
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;");

// In a code span nothing but the backtick itself means anything.
const code = (text: string): string => `\`${readable(text).replaceAll("`", "'")}\``;
