// Clicking round the piece: what the next point is, and what the picked point is.
import type { TracedPoint } from "../../paper/traced-edges.ts";
import { chosen, marked, nextKind, remove, say } from "./tracing.ts";

export const OutlinePart = () => {
  const { outline } = marked.value;
  const index = chosen.value;
  const point = index === undefined ? undefined : outline[index];
  return (
    <>
      <p class="quiet">
        Click round the piece, point after point; the last one joins the first by itself. A corner is where two edges
        meet; between two corners lies a straight edge, or a curve through the points set on it, which want to lie
        closer where it bends more. Drag a point to move it; pick one to go on behind it.
      </p>
      <KindChoice
        words="A click sets"
        name="paper-next"
        of={nextKind.value}
        onChoose={(kind) => {
          nextKind.value = kind;
        }}
      />
      <p class="quiet">With Shift held, a click or Enter sets the other.</p>
      {point && index !== undefined && (
        <div class="picked-point">
          <KindChoice
            words={`Point ${index + 1} of ${outline.length} is`}
            name="paper-picked"
            of={point.kind}
            onChoose={(kind) => say(index, { kind })}
          />
          <button type="button" onClick={() => remove(index)}>
            Take point {index + 1} away
          </button>
        </div>
      )}
    </>
  );
};

const KindChoice = (props: {
  readonly words: string;
  readonly name: string;
  readonly of: TracedPoint["kind"];
  readonly onChoose: (kind: TracedPoint["kind"]) => void;
}) => (
  <fieldset class="paper-choice">
    <legend>{props.words}</legend>
    {(["corner", "curve"] as const).map((kind) => (
      <label key={kind} class="choice">
        <input type="radio" name={props.name} checked={props.of === kind} onChange={() => props.onChoose(kind)} />
        <svg class="kind-sign" viewBox="0 0 14 14" aria-hidden="true">
          {kind === "corner" ? <rect x="2" y="2" width="10" height="10" /> : <circle cx="7" cy="7" r="5" />}
        </svg>
        {kind === "corner" ? "a corner" : "a point on a curve"}
      </label>
    ))}
  </fieldset>
);
