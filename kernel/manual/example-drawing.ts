// The drawing beside a manual entry: what the example's step did, over the piece as it was before.
import type { Check } from "../check.ts";
import { draw, drawPiece } from "../drawing/draw.ts";
import type { Drawing } from "../drawing/drawing.ts";
import type { Kernel, Outcome } from "../kernel.ts";
import { changedIn } from "../record.ts";
import type { Step } from "../step.ts";

/** The last piece that the step worked on in its example, its "before" being the piece as the step found it. */
export const stepDrawing = (kernel: Kernel, step: Step): Drawing => {
  const outcome = kernel.work({ file: `${step.name}.chalk`, text: step.example });
  const record = outcome.records.findLast(({ step: name, piece }) => name === step.name && piece !== "");
  const piece = record && outcome.garment.pieces.get(record.piece);
  const before = record && changedIn(record, record.piece)?.before;
  if (!piece || !before) return sheet(outcome);
  return drawPiece(outcome.garment, { ...piece, ...(before.outline.length > 0 && { source: before }) });
};

/** The pieces of the recipe that fails the check. */
export const checkDrawing = (kernel: Kernel, check: Check): Drawing =>
  sheet(kernel.work({ file: `${check.name}.chalk`, text: check.fails }));

const sheet = ({ garment }: Outcome): Drawing => {
  const [first, ...others] = garment.pieces.values();
  return first && others.length === 0 ? drawPiece(garment, first) : draw(garment).sheet;
};
