// One line to write into, its words before it and the unit behind it.
import type { Signal } from "@preact/signals";

export const Field = (props: { readonly of: Signal<string>; readonly words: string; readonly unit?: string }) => (
  <label class="paper-field">
    <span>{props.words}</span>
    <input
      type="text"
      autocomplete="off"
      spellcheck={false}
      value={props.of.value}
      onInput={({ currentTarget }) => {
        props.of.value = currentTarget.value;
      }}
    />
    {props.unit !== undefined && <span class="dial-unit">{props.unit}</span>}
  </label>
);
