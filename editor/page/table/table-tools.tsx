// What can be done with the view of the table, in a row at its top.
import type { Signal } from "@preact/signals";
import { isHanging } from "../hang/hanging.ts";
import { Menu } from "../menu.tsx";
import { theme } from "../theme.ts";
import { HoldAgainst } from "./hold-against.tsx";
import {
  fitAll,
  openPart,
  showsBefore,
  showsCutting,
  showsGrid,
  showsLengths,
  showsNames,
  tellsValues,
  view,
} from "./looks.ts";
import { MeasureScreen, TrueSize } from "./screen.tsx";
import { zoomed } from "./view.ts";

export const TableTools = () => {
  const { left, top, width, height } = openPart.value;
  const middle = { x: left + width / 2, y: top + height / 2 };
  const zoom = (times: number): void => {
    view.value = zoomed(view.value, times, middle);
  };
  return (
    <div
      class="table-tools"
      role="toolbar"
      aria-label="View of the table"
      style={{ left: `${left + 24}px`, top: `${top + 24}px`, maxWidth: `${width - 48}px` }}
    >
      <button type="button" onClick={fitAll}>
        Show all
      </button>
      <button type="button" onClick={() => zoom(1.25)} aria-label="Nearer">
        +
      </button>
      <button type="button" onClick={() => zoom(0.8)} aria-label="Farther">
        −
      </button>
      <TrueSize />
      <button type="button" aria-pressed={isHanging.value} onClick={() => (isHanging.value = !isHanging.value)}>
        Hang it
      </button>
      <Menu name="Look">
        <div class="looks">
          <Choice of={showsLengths}>lengths of edges</Choice>
          <Choice of={showsNames}>names of edges and places</Choice>
          <Choice of={showsCutting}>cutting lines</Choice>
          <Choice of={showsBefore}>each piece as it was before</Choice>
          <Choice of={showsGrid}>grid on the table</Choice>
          <Choice of={tellsValues}>values at the lines' ends</Choice>
          <label class="choice">
            <input
              type="checkbox"
              checked={theme.value === "dark"}
              onChange={({ currentTarget }) => {
                theme.value = currentTarget.checked ? "dark" : "light";
              }}
            />
            dark
          </label>
        </div>
        <HoldAgainst />
        <MeasureScreen />
      </Menu>
    </div>
  );
};

const Choice = ({ of, children }: { readonly of: Signal<boolean>; readonly children: string }) => (
  <label class="choice">
    <input
      type="checkbox"
      checked={of.value}
      onChange={({ currentTarget }) => {
        of.value = currentTarget.checked;
      }}
    />
    {children}
  </label>
);
