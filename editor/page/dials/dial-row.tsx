// One dial: a slider and the number it turns. The text is what changes, and one undo takes back the whole turn.
import { useId } from "preact/hooks";
import type { Dial } from "../../assist/dials.ts";
import { goTo } from "../desk.ts";
import { leave, letGo, takeInHand, turn } from "./turning.ts";

export const DialRow = ({ dial, index }: { readonly dial: Dial; readonly index: number }) => {
  const id = useId();
  const { label, note, piece, value, unit, least, most, stride, line } = dial;

  return (
    <div class="dial">
      <div class="dial-head">
        <label for={id}>{label}</label>
        <button type="button" class="plain-button to-line" onClick={() => goTo(dial)} title={`Show line ${line}`}>
          {piece === undefined ? `line ${line}` : `${piece}, line ${line}`}
        </button>
      </div>
      <div class="dial-turn" onPointerDown={takeInHand} onFocusIn={takeInHand} onFocusOut={leave}>
        <input
          id={id}
          type="range"
          min={Math.min(least, value)}
          max={Math.max(most, value)}
          step={stride}
          value={value}
          aria-valuetext={`${value} ${unit}`}
          aria-describedby={note === undefined ? undefined : `${id}-note`}
          onInput={({ currentTarget }) => turn(index, currentTarget.valueAsNumber)}
          onChange={letGo}
        />
        <input
          type="number"
          class="dial-number"
          aria-label={`${label}, in ${unit === "" ? "plain numbers" : unit}`}
          step={stride}
          value={value}
          onChange={({ currentTarget }) => {
            turn(index, currentTarget.valueAsNumber);
            letGo();
          }}
        />
        <span class="dial-unit">{unit}</span>
      </div>
      {note !== undefined && (
        <p class="quiet" id={`${id}-note`}>
          {note}
        </p>
      )}
    </div>
  );
};
