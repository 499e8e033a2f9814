// A unit for a bare number where a length, an angle or a weight is wanted: which one, only the pattern maker knows.
import { type Finding, findingsIn } from "../findings.ts";
import type { WorkedText } from "../worked-text.ts";
import type { CodeAction } from "./code-action.ts";

/** The number with each unit that it may have been meant in, the recipe's own first. */
export const addUnit = (worked: WorkedText, from: number, to: number): CodeAction[] =>
  findingsIn(worked, worked.source.file)
    .filter((finding) => finding.from <= to && from <= finding.to)
    .flatMap((finding) => {
      const unit = unitFor(worked, finding);
      if (unit === undefined) return [];
      const { file, code } = finding;
      const number = worked.source.text.slice(finding.from, finding.to);
      return alternatives(unit).map((each): CodeAction => {
        const text = each === "%" ? `${number}%` : `${number} ${each}`;
        return {
          title: `Write ${text}`,
          kind: "quickfix",
          edits: [{ file, from: finding.from, to: finding.to, text }],
          code,
        };
      });
    });

/** The unit that a finding proposes for a bare number; undefined where it is about something else. */
export const unitFor = ({ source, outcome }: WorkedText, finding: Finding): string | undefined => {
  const written = source.text.slice(finding.from, finding.to);
  if (finding.file !== source.file || !/^(?:\d+ )?\d+(?:\.\d+|\/\d+)?$/.test(written)) return undefined;
  const [edit, more] = finding.fix?.edits ?? [];
  if (edit && !more && edit.from === finding.from && edit.to === finding.to) {
    const unit = edit.text.startsWith(`${written} `) ? edit.text.slice(written.length + 1) : "";
    return units.has(unit) ? unit : undefined;
  }
  // Along an edge 50 may have been 50% or 50 cm, and the finding leaves it open.
  return finding.code === "ratio-range" && !edit ? `% ${outcome.garment.units}` : undefined;
};

const lengths = ["cm", "mm", "in"];
const units = new Set([...lengths, "deg", "gsm"]);

const alternatives = (unit: string): string[] => {
  if (unit.startsWith("% ")) return ["%", ...alternatives(unit.slice(2))];
  return lengths.includes(unit) ? [unit, ...lengths.filter((each) => each !== unit)] : [unit];
};
