// The slip on which the garment hangs: its sides and its hem from below, and what the cloth came to.

import { boxOf, figureInWords } from "../../../kernel/cloth/hang/hang-svg.ts";
import { mostStretch } from "../../../kernel/cloth/hang/most-stretch.ts";
import { FoldedPart } from "../folded-part.tsx";
import { openPart } from "../table/looks.ts";
import { FigureView } from "./figure-view.tsx";
import "./hang.css";
import { hung, isHanging, settling } from "./hanging.ts";

export const HangingSlip = () => {
  const shown = hung.value;
  if (!isHanging.value || !shown) return null;
  const { left, top, width, height } = openPart.value;
  const own = Math.min(width - 24, Math.max(380, width * 0.5));
  return (
    <section
      class="card hanging-slip"
      aria-label="As it hangs"
      style={{
        right: `${innerWidth - left - width + 12}px`,
        bottom: `${innerHeight - top - height + 12}px`,
        width: `${own}px`,
        maxHeight: `${height - 90}px`,
      }}
    >
      <header class="card-head">
        <h2>As it hangs</h2>
        <span class="quiet" role="status">
          {state()}
        </span>
        <button type="button" class="plain-button" onClick={() => (isHanging.value = false)}>
          Put aside
        </button>
      </header>
      <div class="card-body">
        {shown.figures.length === 0 && <p class="quiet">No piece of this garment has a hem to hang.</p>}
        {rowsOf(shown.figures).map((row, index) => {
          const wide = row.reduce((sum, figure) => sum + boxOf(figure).right - boxOf(figure).left, 0);
          const scale = Math.min(0.3, (own - 40 - row.length * 14) / wide);
          return (
            <div class="hung-row" key={index}>
              {row.map((figure) => (
                <FigureView key={figure.from} figure={figure} units={shown.units} scale={scale} />
              ))}
              <p class="hung-words">{figureInWords(row.at(-1)!, shown.units)}</p>
            </div>
          );
        })}
        <FoldedPart title="What the pictures say, and take for granted">
          {() =>
            shown.notes.map((note) => (
              <p key={note} class="quiet">
                {note}
              </p>
            ))
          }
        </FoldedPart>
      </div>
    </section>
  );
};

const state = (): string => {
  const { value } = settling;
  if (value === "by formula") return "by the formula";
  if (value === "settling") return "settling …";
  if (!value.converged) return `not at rest after ${value.steps} steps`;
  return value.stretch > mostStretch ? `at rest, but stretched ${(value.stretch * 100).toFixed(1)} %` : "at rest";
};

type Shown = NonNullable<typeof hung.value>["figures"];

/** A round's pictures are those up to the one from below. */
const rowsOf = (figures: Shown): Shown[] => {
  const ends = figures.flatMap(({ from }, index) => (from === "below" ? [index + 1] : []));
  return ends.map((end, index) => figures.slice(ends[index - 1] ?? 0, end));
};
