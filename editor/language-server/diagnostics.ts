// Findings as an editor lists them. What is wrong in a used recipe is told on the line that uses it, for that document may not
// be open.
import { type Diagnostic, DiagnosticSeverity, type Range } from "vscode-languageserver/node";
import { type Finding, findings } from "../assist/findings.ts";
import { recipesAround, usedBy } from "../assist/naming/recipes.ts";
import { documentAt, rangeIn } from "./stretches.ts";
import type { WorkedDocument } from "./worked-documents.ts";
import type { Workroom } from "./workroom.ts";

/** All that is to be shown in a document. */
export const diagnostics = (open: WorkedDocument, room: Workroom): Diagnostic[] => {
  const { document, worked } = open;
  const all = findings(worked);
  const own = all.filter(({ file }) => file === worked.source.file);
  return [
    ...own.map((finding) => diagnosticOf(finding, rangeIn(document, finding.from, finding.to), open, room)),
    ...inUsed(all, open, room),
  ];
};

const diagnosticOf = (finding: Finding, range: Range, open: WorkedDocument, room: Workroom): Diagnostic => {
  const { code, severity, message, hint, related } = finding;
  return {
    range,
    severity: severity === "error" ? DiagnosticSeverity.Error : DiagnosticSeverity.Warning,
    code,
    source: "chalkline",
    message: hint === undefined ? message : `${message}\n${hint}`,
    ...(related.length > 0 && {
      relatedInformation: related.map(({ file, from, to, message: said }) => {
        const there = documentAt(room, open, file);
        return { location: { uri: there.uri, range: rangeIn(there, from, to) }, message: said };
      }),
    }),
  };
};

/** For each used file with mistakes the first of them, on the `use` line that leads there. */
const inUsed = (all: readonly Finding[], open: WorkedDocument, room: Workroom): Diagnostic[] => {
  const { document, worked } = open;
  const others = all.filter(({ file, severity }) => file !== worked.source.file && severity === "error");
  if (others.length === 0) return [];
  const recipes = recipesAround(worked);
  return [...new Set(others.map(({ file }) => file))].flatMap((file): Diagnostic[] => {
    const [first, ...more] = others.filter((finding) => finding.file === file);
    const line = [...recipes.opened.uses].find(
      ([, used]) => used !== undefined && usedBy(recipes, used).some(({ source }) => source.file === file),
    )?.[0];
    if (!first || !line) return [];
    const there = documentAt(room, open, file);
    const count = more.length === 0 ? "" : ` (1 of ${more.length + 1} mistakes there)`;
    return [
      {
        range: rangeIn(document, line.from, line.to),
        severity: DiagnosticSeverity.Error,
        code: first.code,
        source: "chalkline",
        message: `In line ${first.line} of ${file}: ${first.message}${count}`,
        relatedInformation: [
          { location: { uri: there.uri, range: rangeIn(there, first.from, first.to) }, message: first.message },
        ],
      },
    ];
  });
};
