// The findings under the recipe: what is the matter, what to try, and a button that repairs it where one edit does.

import type { Finding } from "../../assist/findings.ts";
import { failure, file, goTo, mend, worked } from "../desk.ts";

/** Every finding of the recipe; those of recipes it uses name their file. */
export const FindingsList = () => {
  const found = worked.value?.findings ?? [];
  const errors = found.filter(({ severity }) => severity === "error").length;
  return (
    <section class="findings" aria-label="Findings">
      <h3>{headline(errors, found.length - errors, worked.value !== undefined)}</h3>
      {failure.value !== "" && <p class="failure">{failure.value}</p>}
      <ol aria-live="polite">
        {found.map((finding) => (
          <li key={`${finding.file}:${finding.from}:${finding.code}:${finding.message}`}>
            <FindingSlip finding={finding} />
          </li>
        ))}
      </ol>
    </section>
  );
};

const headline = (errors: number, warnings: number, isWorked: boolean): string => {
  if (!isWorked) return "Working the recipe …";
  if (errors + warnings === 0) return "No findings";
  const count = (n: number, what: string): string => (n === 0 ? "" : `${n} ${what}${n === 1 ? "" : "s"}`);
  return [count(errors, "error"), count(warnings, "warning")].filter((part) => part !== "").join(", ");
};

const FindingSlip = ({ finding }: { readonly finding: Finding }) => {
  const { severity, line, message, hint, fix, from, to } = finding;
  const isHere = finding.file === file.value;
  return (
    <article class={`finding ${severity}`}>
      <button type="button" class="finding-place" disabled={!isHere} onClick={() => goTo({ from, to })}>
        {severity === "error" ? "Error" : "Warning"}, {isHere ? "" : `${finding.file}, `}line {line}
      </button>
      <p>{message}</p>
      {hint !== undefined && <p class="hint">{hint}</p>}
      {fix && isHere && (
        <button type="button" class="fix" onClick={() => mend(fix.edits)}>
          {fix.title}
        </button>
      )}
    </article>
  );
};
