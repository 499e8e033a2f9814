// The recipe card: the text, its findings under it, and the card's own edge to pull it wider by.

import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";
import { file, isChanged } from "../desk.ts";
import { FileTools } from "../files/file-tools.tsx";
import { FindingsList } from "../findings/findings-list.tsx";
import {
  type CardEdge,
  cardEdge,
  edges,
  isRecipeFolded,
  looseAt,
  reachNow,
  recipeEdge,
  recipeReach,
} from "./places.ts";
import { RecipeText } from "./recipe-text.tsx";

/** The card that the recipe is written on. */
export const RecipeCard = () => {
  const edge = cardEdge.value;
  const isFolded = isRecipeFolded.value;
  return (
    <section
      class={`card recipe-card on-${edge}${isFolded ? " folded" : ""}`}
      aria-label="Recipe"
      style={{
        "--reach": `${reachNow.value}px`,
        "--loose-x": `${looseAt.value.x}px`,
        "--loose-y": `${looseAt.value.y}px`,
      }}
    >
      <header class="card-head" {...(edge === "loose" ? carrying : {})}>
        <h2 class="file-name" title={file.value}>
          {file.value === "" ? "Recipe" : nameOf(file.value)}
          {isChanged.value && <span class="changed"> (changed)</span>}
        </h2>
        <Fold
          isFolded={isFolded}
          onFold={() => {
            isRecipeFolded.value = !isFolded;
          }}
          what="the recipe"
        />
      </header>
      {!isFolded && (
        <div class="card-tools">
          <FileTools />
          <EdgeChoice edge={edge} />
        </div>
      )}
      {/* A folded card keeps its text, so that nothing typed and no undo is lost. */}
      <div class="card-body" hidden={isFolded}>
        <RecipeText />
        <FindingsList />
      </div>
      {!isFolded && <Widen edge={edge} />}
    </section>
  );
};

const nameOf = (path: string): string => path.slice(path.lastIndexOf("/") + 1);

const EdgeChoice = ({ edge }: { readonly edge: CardEdge }) => (
  <label class="edge-choice">
    <span class="unseen">Where the recipe lies</span>
    <select value={edge} onChange={(event) => (recipeEdge.value = event.currentTarget.value)}>
      {edges.map((each) => (
        <option key={each} value={each}>
          {each === "loose" ? "loose on the table" : `on the ${each}`}
        </option>
      ))}
    </select>
  </label>
);

/** Folds a card away, or opens it again. */
export const Fold = (props: {
  readonly isFolded: boolean;
  readonly onFold: () => void;
  readonly what: string;
}): ComponentChildren => (
  <button type="button" class="plain-button fold" aria-expanded={!props.isFolded} onClick={props.onFold}>
    {props.isFolded ? "Open" : "Fold"}
    <span class="unseen"> {props.what}</span>
  </button>
);

// Pixels that one press of an arrow key moves the card's edge.
const keyStride = 24;

/** The card's free edge: pulled with the hand or the arrow keys it makes the card wider or narrower. */
const Widen = ({ edge }: { readonly edge: CardEdge }) => {
  const from = useRef<{ readonly at: number; readonly reach: number } | undefined>(undefined);
  const isAcross = edge === "top" || edge === "bottom";
  const sense = edge === "right" || edge === "bottom" ? -1 : 1;
  const place = (event: PointerEvent): number => (isAcross ? event.clientY : event.clientX);
  return (
    <div
      class="widen"
      role="separator"
      tabIndex={0}
      aria-orientation={isAcross ? "horizontal" : "vertical"}
      aria-label="Width of the recipe card"
      aria-valuenow={reachNow.value}
      aria-valuemin={240}
      aria-valuemax={1600}
      onPointerDown={(event) => {
        from.current = { at: place(event), reach: reachNow.value };
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={(event) => {
        if (from.current) recipeReach.value = from.current.reach + sense * (place(event) - from.current.at);
      }}
      onPointerUp={() => {
        from.current = undefined;
      }}
      onKeyDown={({ key }) => {
        const by = key === "ArrowRight" || key === "ArrowDown" ? 1 : key === "ArrowLeft" || key === "ArrowUp" ? -1 : 0;
        if (by !== 0) recipeReach.value = reachNow.value + by * sense * keyStride;
      }}
    />
  );
};

/** A loose card is carried about by its head. */
const carrying = {
  onPointerDown: (event: PointerEvent): void => {
    if (event.target !== event.currentTarget) return;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
  },
  onPointerMove: (event: PointerEvent): void => {
    if (!(event.currentTarget as Element).hasPointerCapture(event.pointerId)) return;
    looseAt.value = { x: looseAt.value.x + event.movementX, y: Math.max(0, looseAt.value.y + event.movementY) };
  },
};
