// What `measure` prints for people: values, pieces with before and after, seams, the record of steps, and the checks in short.
import type { Outcome } from "../kernel.ts";
import { pieceReport } from "./piece-report.ts";
import { blank, quiet, type SaidLine, strong } from "./said.ts";
import { seamReport } from "./seam-report.ts";
import { stepReport } from "./step-report.ts";
import { valuesReport } from "./values-report.ts";
import { wrapped } from "./wrapped.ts";

/** The whole report, wrapped at `width` columns where it wraps at all. */
export const measuredReport = (outcome: Outcome, width: number): SaidLine[] => {
  const { garment, judgements } = outcome;
  const parts = [
    [titleOf(outcome), ...fieldsOf(outcome, width)],
    valuesReport(outcome).slice(0, -1),
    ...[...garment.pieces.values()].map((piece) => pieceReport(piece, garment, judgements, width)),
    seamReport(outcome),
    stepReport(outcome, width),
  ];
  return parts.filter((part) => part.length > 0).flatMap((part, index) => (index === 0 ? part : [blank, ...part]));
};

const titleOf = ({ garment: { title, file } }: Outcome): SaidLine =>
  title === "" ? [strong(file)] : [strong(title), quiet(`  ${file}`)];

const fieldsOf = ({ fields }: Outcome, width: number): SaidLine[] =>
  [...fields].flatMap(([name, text]) =>
    wrapped(`${name}: ${text}`, width - 4).map((line, index) => [quiet(`${index === 0 ? "  " : "    "}${line}`)]),
  );
