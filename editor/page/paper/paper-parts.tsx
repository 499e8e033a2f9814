// The parts of the work beside the picture, one of them open: what is set on the picture then, and what is the matter there.
import type { ComponentChildren } from "preact";
import { millimetresIn, plainNumber } from "../../../kernel/units.ts";
import type { Part } from "../../paper/fault.ts";
import { lengthWritten } from "../../paper/length-written.ts";
import { tracedEdges } from "../../paper/traced-edges.ts";
import { EdgesPart } from "./edges-part.tsx";
import { Field } from "./field.tsx";
import { OutlinePart } from "./outline-part.tsx";
import { RecipePart } from "./recipe-part.tsx";
import { faults, lying, marked, part, said, takeBack, takeUp } from "./tracing.ts";

export const PaperParts = () => (
  <div class="paper-parts">
    <OnePart of="straighten" number={1} name="Straighten" state={straightenState()}>
      <p class="quiet">
        If the picture was taken aslant: click the four corners of a rectangle that you know and that lies flat beside
        the piece (a square of the cutting mat, a sheet of paper), in turn. Begin at the corner that is to lie top left.
        A large one serves better than a small one. A scan needs none.
      </p>
      <UnitsChoice />
      <Field of={said.across} words="Rectangle across" unit={said.units.value} />
      <Field of={said.down} words="Rectangle down" unit={said.units.value} />
      <TakeBack what="point" />
      <Onward to="size">Next: size</Onward>
    </OnePart>
    <OnePart of="size" number={2} name="Size" state={sizeState()}>
      <p class="quiet">
        {marked.value.rectangle.length === 4
          ? "The rectangle says how large the piece is. Two points far apart whose distance you know correct it."
          : "Click two points whose distance you know, as far apart as there are."}
      </p>
      <UnitsChoice />
      <Field of={said.apart} words="Distance of the two points" unit={said.units.value} />
      <TakeBack what="point" />
      <Onward to="outline">Next: outline</Onward>
    </OnePart>
    <OnePart of="outline" number={3} name="Outline" state={outlineState()}>
      <OutlinePart />
      <TakeBack what="point" />
      <Onward to="edges">Next: edges</Onward>
    </OnePart>
    <OnePart of="edges" number={4} name="Edges" state="">
      <EdgesPart />
      <TakeBack what="change" />
      <Onward to="recipe">Next: recipe</Onward>
    </OnePart>
    <OnePart of="recipe" number={5} name="Recipe" state="">
      <RecipePart />
    </OnePart>
  </div>
);

const OnePart = (props: {
  readonly of: Part;
  readonly number: number;
  readonly name: string;
  readonly state: string;
  readonly children: ComponentChildren;
}) => {
  const isInHand = part.value === props.of;
  const here = faults.value.filter((fault) => fault.part === props.of);
  return (
    <section class={isInHand ? "paper-part in-hand" : "paper-part"}>
      <h3>
        <button type="button" aria-expanded={isInHand} onClick={() => takeUp(props.of)}>
          <span class="part-number">{props.number}</span> {props.name}
          <span class="part-state">{props.state}</span>
        </button>
      </h3>
      {isInHand && (
        <div class="part-body">
          {props.children}
          <div aria-live="polite">
            {here.map(({ words }) => (
              <p key={words} class="paper-fault">
                {words}
              </p>
            ))}
          </div>
        </div>
      )}
    </section>
  );
};

const straightenState = (): string => {
  const count = marked.value.rectangle.length;
  return count === 0 ? "not needed for a scan" : `${count} of 4 corners`;
};

const sizeState = (): string => {
  const { rectangle, known } = marked.value;
  if (known.length > 0) return `${known.length} of 2 points`;
  return rectangle.length === 4 && !("words" in lying.value) ? "from the rectangle" : "";
};

const outlineState = (): string => {
  const { outline } = marked.value;
  return outline.length === 0 ? "" : `${outline.length} points, ${tracedEdges(outline).length} edges`;
};

const TakeBack = ({ what }: { readonly what: string }) => (
  <button type="button" onClick={takeBack}>
    Take back the last {what}
  </button>
);

const Onward = ({ to, children }: { readonly to: Part; readonly children: string }) => (
  <button type="button" class="onward" onClick={() => takeUp(to)}>
    {children}
  </button>
);

const UnitsChoice = () => (
  <fieldset class="paper-choice">
    <legend>Lengths in</legend>
    {(["cm", "in"] as const).map((units) => (
      <label key={units} class="choice">
        <input
          type="radio"
          name="paper-units"
          checked={said.units.value === units}
          onChange={() => changeUnits(units)}
        />
        {units === "cm" ? "centimeters" : "inches"}
      </label>
    ))}
  </fieldset>
);

/** What is written stays as long as it was: only a number alone would mean another length. */
const changeUnits = (units: "cm" | "in"): void => {
  const before = said.units.peek();
  if (before === units) return;
  for (const field of [said.across, said.down, said.apart, said.allowance]) {
    const length = lengthWritten(field.peek(), before);
    if (length !== undefined) field.value = plainNumber(length / millimetresIn.get(units)!, 4);
  }
  said.units.value = units;
};
