// The working: every step of the recipe in its order, to go back and forth in and watch the pieces grow.
import { goTo, stepsShown, worked } from "../desk.ts";

/** The strip along the bottom of the table. */
export const WorkingStrip = () => {
  const steps = worked.value?.steps ?? [];
  const count = steps.length;
  const at = Math.min(stepsShown.value ?? count, count);
  const step = steps[at - 1];
  const show = (to: number): void => {
    const next = Math.max(0, Math.min(count, to));
    stepsShown.value = next === count ? undefined : next;
    const line = steps[next - 1]?.line;
    if (line !== undefined && line > 0 && next !== count) goTo({ line });
  };
  return (
    <section class="working-strip" aria-label="Working">
      <button type="button" onClick={() => show(at - 1)} disabled={at <= 0}>
        Back
      </button>
      <input
        type="range"
        min={0}
        max={count}
        value={at}
        aria-label="Steps of the working shown"
        aria-valuetext={step ? `step ${at} of ${count}, line ${step.line}: ${step.words}` : `step ${at} of ${count}`}
        onInput={({ currentTarget }) => show(currentTarget.valueAsNumber)}
      />
      <button type="button" onClick={() => show(at + 1)} disabled={at >= count}>
        Forward
      </button>
      <output class="step-words">
        {stepsShown.value === undefined ? `Finished: ${count} steps` : `${at} of ${count}`}
        {step && stepsShown.value !== undefined && (
          <>
            , line {step.line}: <em>{step.piece}</em> {step.words}
          </>
        )}
      </output>
    </section>
  );
};
