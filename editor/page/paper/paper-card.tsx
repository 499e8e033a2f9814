// The card on the table on which a piece is traced from a picture of paper: the picture, and beside it the parts of the work.
import { useEffect } from "preact/hooks";
import { cardEdge, reachNow, stripHeight } from "../card/places.ts";
import "./paper.css";
import { ChoosePicture } from "./choose-picture.tsx";
import { PaperParts } from "./paper-parts.tsx";
import { PictureView } from "./picture-view.tsx";
import { showWhole, zoomMiddle } from "./seen.ts";
import { beginAnew, forgetWaiting, isOpen, photograph, putAside, refused, told, waiting } from "./tracing.ts";

// Room between this card and what lies around it, px.
const around = 12;

export const PaperCard = () => (isOpen.value ? <OpenCard /> : null);

const OpenCard = () => {
  useEffect(() => () => void setTimeout(backToTable), []);
  const beside = (edge: string): number => around + (cardEdge.value === edge ? reachNow.value : 0);
  const picture = photograph.value;
  return (
    <section
      class={picture ? "card paper-card" : "card paper-card bare"}
      aria-label="From paper"
      style={{
        left: `${beside("left")}px`,
        top: `${beside("top")}px`,
        right: `${beside("right")}px`,
        // Without a picture the card is only as large as its words.
        bottom: picture ? `${beside("bottom") + stripHeight}px` : "auto",
      }}
    >
      <header class="card-head">
        <h2 title={picture?.name}>From paper{picture ? `: ${picture.name}` : ""}</h2>
        {picture && (
          <div class="paper-zoom" role="toolbar" aria-label="View of the picture">
            <button type="button" onClick={showWhole}>
              Whole picture
            </button>
            <button type="button" aria-label="Picture nearer" onClick={() => zoomMiddle(1.25)}>
              +
            </button>
            <button type="button" aria-label="Picture farther" onClick={() => zoomMiddle(0.8)}>
              −
            </button>
          </div>
        )}
        <button type="button" class="plain-button" onClick={putAside}>
          Put aside
        </button>
      </header>
      {refused.value !== "" && (
        <p class="paper-fault" role="alert">
          {refused.value}
        </p>
      )}
      {waiting.value && <Waiting name={waiting.value.name} />}
      {picture ? (
        <div class="paper-work">
          <PictureView />
          <PaperParts />
        </div>
      ) : (
        <div class="paper-none">
          <ChoosePicture words="Choose a photograph or scan of the pattern piece" />
        </div>
      )}
      <p class="unseen" role="status">
        {told.value}
      </p>
    </section>
  );
};

/** Whoever was on the card when it went finds himself on the table. */
const backToTable = (): void => {
  if (document.activeElement === document.body) document.querySelector<SVGSVGElement>(".table")?.focus();
};

const Waiting = ({ name }: { readonly name: string }) => (
  <div class="paper-waiting" role="alertdialog" aria-label="Another picture">
    <p>Begin anew with {name}? The points on this picture go with it.</p>
    <button type="button" onClick={beginAnew}>
      Begin anew
    </button>
    <button type="button" onClick={forgetWaiting}>
      Stay with this picture
    </button>
  </div>
);
