// What is said of the edges: their names, which is the fold, and which line of the paper was traced.
import { pathLength } from "../../../kernel/geometry/arc-length.ts";
import { lengthIn } from "../../../kernel/units.ts";
import { type Stretch, stretchesOf, tracedEdges } from "../../paper/traced-edges.ts";
import { Field } from "./field.tsx";
import { edgeInHand, marked, said, say, traced } from "./tracing.ts";

export const EdgesPart = () => {
  const piece = traced.value;
  if (!piece || piece.outline.length < 3)
    return <p class="quiet">The edges stand here once the size is known and the outline has 3 points.</p>;
  const edges = tracedEdges(piece.outline);
  const hasFold = edges.some(({ isFold }) => isFold);
  return (
    <>
      <p class="quiet">Neighbors that are given one name become one edge.</p>
      <ul class="paper-edges">
        {stretchesOf(piece.outline).map((stretch) => (
          <li key={stretch.index}>
            <EdgeRow
              stretch={stretch}
              canBeFold={
                stretch.isStraight && edges.some(({ name, isStraight }) => isStraight && name === stretch.edge)
              }
            />
          </li>
        ))}
      </ul>
      <fieldset class="paper-choice">
        <legend>The outline is</legend>
        {(["cutting", "sewing"] as const).map((line) => (
          <label key={line} class="choice">
            <input
              type="radio"
              name="paper-line"
              checked={said.line.value === line}
              onChange={() => {
                said.line.value = line;
              }}
            />
            the {line} line
          </label>
        ))}
      </fieldset>
      <Field
        of={said.allowance}
        words={said.line.value === "cutting" ? "Allowance drawn in" : "Allowance to add"}
        unit={piece.units}
      />
      <label class="paper-field">
        <span>The grain runs</span>
        <select
          value={said.grainAlong.value}
          onChange={({ currentTarget }) => {
            said.grainAlong.value = currentTarget.value;
          }}
        >
          <option value="">{hasFold ? "along the fold" : "down the picture"}</option>
          {edges
            .filter(({ isStraight }) => isStraight && !hasFold)
            .map(({ name }) => (
              <option key={name} value={name}>
                along {name}
              </option>
            ))}
        </select>
      </label>
    </>
  );
};

const EdgeRow = ({ stretch, canBeFold }: { readonly stretch: Stretch; readonly canBeFold: boolean }) => {
  const { index, edge, isStraight, path } = stretch;
  const point = marked.value.outline[index]!;
  const length = lengthIn(pathLength(path), said.units.value);
  const takeInHand = (): void => {
    edgeInHand.value = edge;
  };
  return (
    <div class="paper-edge" onPointerEnter={takeInHand} onFocusIn={takeInHand}>
      <input
        class="edge-name"
        type="text"
        aria-label={`Name of the ${isStraight ? "straight" : "curved"} edge ${edge}, ${length}`}
        autocomplete="off"
        spellcheck={false}
        value={edge}
        onChange={({ currentTarget }) => {
          const name = currentTarget.value.trim();
          if (said.grainAlong.peek() === edge) said.grainAlong.value = name;
          say(index, { edge: name });
          edgeInHand.value = name;
        }}
      />
      <span class="edge-facts">
        {isStraight ? "straight" : "curve"}, {length}
      </span>
      {canBeFold && (
        <label class="choice">
          <input
            type="checkbox"
            checked={point.isFold}
            onChange={({ currentTarget }) => say(index, { isFold: currentTarget.checked })}
          />
          fold
        </label>
      )}
      {!(canBeFold && point.isFold) && (
        <label class="choice own-allowance">
          own allowance
          <input
            type="text"
            autocomplete="off"
            placeholder={said.allowance.value}
            value={point.allowance}
            onChange={({ currentTarget }) => say(index, { allowance: currentTarget.value.trim() })}
          />
          {said.units.value}
        </label>
      )}
    </div>
  );
};
