// The change that a finding itself proposes.
import { findingsIn } from "../findings.ts";
import type { WorkedText } from "../worked-text.ts";
import { unitFor } from "./add-unit.ts";
import type { CodeAction } from "./code-action.ts";

/** One action for every finding here that says what to write. */
export const mendFinding = (worked: WorkedText, from: number, to: number): CodeAction[] =>
  findingsIn(worked, worked.source.file)
    .filter((finding) => finding.from <= to && from <= finding.to && unitFor(worked, finding) === undefined)
    .flatMap(({ code, fix }): CodeAction[] =>
      fix ? [{ title: fix.title, kind: "quickfix", edits: fix.edits, code }] : [],
    );
