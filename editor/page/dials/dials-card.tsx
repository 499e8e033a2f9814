// The dials: size and body to work the recipe with, every param within its range, and every other number of the text.
import { areDialsFolded, dialsReach, dialsSide, foldedReach } from "../card/places.ts";
import { Fold } from "../card/recipe-card.tsx";
import { ClothToBuy } from "../cloth/cloth-to-buy.tsx";
import { dialsAtHand } from "../desk.ts";
import { FoldedPart } from "../folded-part.tsx";
import { Facts } from "../table/facts.tsx";
import { BodyChoice } from "./body-choice.tsx";
import { DialRow } from "./dial-row.tsx";
import { SizeChoice } from "./size-choice.tsx";

/** The card with all dials. */
export const DialsCard = () => {
  const isFolded = areDialsFolded.value;
  const all = dialsAtHand.value.dials.map((dial, index) => ({ dial, index }));
  const params = all.filter(({ dial }) => dial.isParam);
  const others = all.filter(({ dial }) => !dial.isParam);
  return (
    <section
      class={`card dials-card on-${dialsSide.value}${isFolded ? " folded" : ""}`}
      aria-label="Dials"
      style={{ "--reach": `${areDialsFolded.value ? foldedReach : dialsReach.value}px` }}
    >
      <header class="card-head">
        <h2>Dials</h2>
        <Fold isFolded={isFolded} onFold={() => (areDialsFolded.value = !isFolded)} what="the dials" />
      </header>
      {!isFolded && (
        <div class="card-body">
          <SizeChoice />
          {params.length === 0 && <p class="quiet">This recipe has no param to turn.</p>}
          {params.map(({ dial, index }) => (
            <DialRow key={dial.label} dial={dial} index={index} />
          ))}
          {others.length > 0 && (
            <FoldedPart title={`All numbers (${others.length})`}>
              {() =>
                // A number has no name of its own; its place among the others keeps it apart while it is turned.
                others.map(({ dial, index }) => <DialRow key={index} dial={dial} index={index} />)
              }
            </FoldedPart>
          )}
          <BodyChoice />
          <Facts />
        </div>
      )}
      {!isFolded && <ClothToBuy />}
    </section>
  );
};
