// What can be done about the text under the cursor or the selection, besides typing.
import type { Source } from "../../kernel/sources.ts";
import { acceptFinding } from "./actions/accept-finding.ts";
import { addUnit } from "./actions/add-unit.ts";
import type { CodeAction } from "./actions/code-action.ts";
import { extractParam } from "./actions/extract-param.ts";
import { extractStep } from "./actions/extract-step.ts";
import { mendFinding } from "./actions/mend-finding.ts";
import { orderClauses } from "./actions/order-clauses.ts";
import { whatChanged } from "./same-garment.ts";
import { edited } from "./text-edit.ts";
import type { WorkedText } from "./worked-text.ts";

/** Everything that is offered for a selection, or for the cursor where both offsets are one; mending comes first. */
export const codeActions = (
  worked: WorkedText,
  from: number,
  to: number,
  others: readonly Source[] = [],
): CodeAction[] => [
  ...addUnit(worked, from, to),
  ...mendFinding(worked, from, to),
  ...acceptFinding(worked, from, to),
  ...orderClauses(worked, from, to),
  ...extractParam(worked, from, to),
  ...extractStep(worked, from, to, others),
];

/** An untried action as it may be done, or with the reason why it cannot: the recipe is worked with its edits. */
export const tried = (worked: WorkedText, action: CodeAction): CodeAction => {
  const { isUntried, ...tryable } = action;
  if (!isUntried) return action;
  const { source, kernel, circumstances, outcome } = worked;
  const text = edited(source.text, action.edits);
  const wrong = whatChanged(outcome, kernel.work({ ...source, text }, circumstances));
  return wrong === undefined
    ? tryable
    : { title: action.title, kind: action.kind, edits: [], refused: `It would change the garment: ${wrong}` };
};
