// The slip on which a drawing becomes a recipe: what was read, how else it could be read, and the user's word.
import { useEffect, useId, useRef } from "preact/hooks";
import type { Units } from "../../../kernel/working.ts";
import { openPart } from "../table/looks.ts";
import { drawing, layTraced, putAway, read, reading, traced } from "./bringing-in.ts";
import "./bring-in.css";

export const DrawingSlip = () => (drawing.value ? <OpenSlip key={drawing.value.called} /> : null);

const OpenSlip = () => {
  const own = useRef<HTMLElement>(null);
  // Whoever works with the keyboard goes on here, and back on the table when it is gone.
  useEffect(() => {
    own.current?.focus();
    return () => document.querySelector<SVGSVGElement>(".table")?.focus();
  }, []);
  const found = traced.value;
  const { left, top, width, height } = openPart.value;
  return (
    <section
      ref={own}
      tabIndex={-1}
      class="card drawing-slip"
      aria-label="A drawing to bring in"
      style={{
        left: `${left + width / 2}px`,
        top: `${top + 80}px`,
        width: `${Math.min(width - 40, 520)}px`,
        maxHeight: `${height - 100}px`,
      }}
      onKeyDown={({ key }) => {
        if (key === "Escape") putAway();
      }}
    >
      <header class="card-head">
        <h2 title={drawing.value?.called}>Bring in: {drawing.value?.called}</h2>
      </header>
      <div class="card-body">
        <p role="status" class={found && found.recipe === undefined ? "failure" : ""}>
          {found ? found.words : "Tracing …"}
        </p>
        {found && found.notes.length > 0 && (
          <ul>
            {found.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        )}
        <HowToRead />
        <div class="drawing-choice">
          <button type="button" disabled={found?.recipe === undefined} onClick={layTraced}>
            Lay it on the table as a new recipe
          </button>
          <button type="button" onClick={putAway}>
            Leave it
          </button>
        </div>
      </div>
    </section>
  );
};

const HowToRead = () => {
  const id = useId();
  const now = reading.value;
  return (
    <div class="drawing-reading">
      <label for={`${id}-units`}>Units</label>
      <select
        id={`${id}-units`}
        value={now.units ?? ""}
        onChange={({ currentTarget: { value } }) =>
          void read({ ...now, units: value === "" ? undefined : (value as Units) })
        }
      >
        <option value="">as the drawing says</option>
        <option value="mm">mm</option>
        <option value="cm">cm</option>
        <option value="in">in</option>
      </select>
      <label for={`${id}-scale`}>Scale</label>
      <input
        id={`${id}-scale`}
        value={now.scale}
        onChange={({ currentTarget }) => void read({ ...now, scale: currentTarget.value })}
      />
      <label for={`${id}-line`}>Outline</label>
      <select
        id={`${id}-line`}
        value={now.line}
        onChange={({ currentTarget: { value } }) =>
          void read({ ...now, line: value === "cutting" ? "cutting" : "sewing" })
        }
      >
        <option value="sewing">sewing lines</option>
        <option value="cutting">cutting lines</option>
      </select>
    </div>
  );
};
