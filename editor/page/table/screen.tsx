// True size: once the screen has been measured, a millimetre on the table is a millimetre of glass.
import { useId } from "preact/hooks";
import { openPart, pixelsPerMillimetre, view } from "./looks.ts";
import { zoomed } from "./view.ts";

// A bank card is as long as this everywhere (ISO/IEC 7810, ID-1), mm.
const cardLength = 85.6;

/** Shows the table at true size. */
export const TrueSize = () => {
  const showTrue = (): void => {
    const { left, top, width, height } = openPart.value;
    const middle = { x: left + width / 2, y: top + height / 2 };
    view.value = zoomed(view.value, pixelsPerMillimetre.value / view.value.scale, middle);
  };
  return (
    <button type="button" onClick={showTrue}>
      True size
    </button>
  );
};

/** Measures the screen by something whose length everybody knows. */
export const MeasureScreen = () => {
  const id = useId();
  return (
    <div class="menu-row">
      <label for={id}>
        For true size, lay a bank card on the screen and pull until the bar is as long as the card ({cardLength} mm).
      </label>
      <div class="card-bar" style={{ width: `${cardLength * pixelsPerMillimetre.value}px` }} />
      <input
        id={id}
        type="range"
        min={1.5}
        max={14}
        step={0.01}
        value={pixelsPerMillimetre.value}
        aria-valuetext={`${pixelsPerMillimetre.value.toFixed(2)} pixels in a millimetre`}
        onInput={({ currentTarget }) => {
          pixelsPerMillimetre.value = currentTarget.valueAsNumber;
        }}
      />
    </div>
  );
};
