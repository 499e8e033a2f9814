// A slip for the thing that was last chosen on the table: what it is, how long, and every line behind it, to go to.
import type { InsideLine } from "../../picture/picture.ts";
import { chosen, goTo, type Pointed, picture } from "../desk.ts";
import { linesBehind, nameOf } from "./lit.ts";
import { openPart } from "./looks.ts";

/** The slip; nothing while nothing is chosen. */
export const ChosenSlip = () => {
  const [thing, shown] = [chosen.value, picture.value];
  if (!thing || thing.kind === "line" || !shown) return null;
  const { lines, inside } = linesBehind(shown, thing);
  const [first, ...later] = lines;
  if (first === undefined) return null;
  const { left, width } = openPart.value;
  return (
    <section
      class="chosen-slip"
      aria-label="Chosen on the table"
      style={{ left: `${left + width / 2}px`, maxWidth: `${width - 40}px` }}
    >
      <p>
        <strong>{nameOf(shown, thing)}</strong>, {wasDrawn(thing)} by <ToLine line={first} inside={inside} />
        {later.length > 0 && ", changed by "}
        {later.flatMap((line, index) => [index > 0 && ", ", <ToLine key={line} line={line} inside={inside} />])}
      </p>
      <button
        type="button"
        class="plain-button"
        onClick={() => {
          chosen.value = undefined;
        }}
      >
        Put away
      </button>
    </section>
  );
};

const wasDrawn = ({ kind }: Pointed): string => (kind === "piece" ? "begun" : "drawn");

/** A line to go to, and the way down into the step of the recipe's own that it calls. */
const ToLine = ({ line, inside }: { readonly line: number; readonly inside: readonly InsideLine[] }) => {
  const below = inside.filter(({ under }) => under === line);
  return (
    <>
      <GoTo line={line} />
      {below.length > 0 && " (inside it: "}
      {below.flatMap((each, index) => [index > 0 && ", ", <GoTo key={each.line} line={each.line} />])}
      {below.length > 0 && ")"}
    </>
  );
};

const GoTo = ({ line }: { readonly line: number }) => (
  <button type="button" class="plain-button to-line" onClick={() => goTo({ line })}>
    line {line}
  </button>
);
