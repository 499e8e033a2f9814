// What is written on the table, in letters that stay readable at every distance: names of pieces, names and lengths of edges,
// names of places.
import type { PictureOfPiece } from "../../picture/picture.ts";
import { picture } from "../desk.ts";
import { lit } from "./lit.ts";
import { showsLengths, showsNames, view } from "./looks.ts";
import { pulled } from "./pulling.ts";
import { inWindow } from "./view.ts";

// An edge shorter than this many pixels has no room for words, and a place has when the piece is this large.
const roomForWords = 60;
const fromEdge = 13;

/** The words on all pieces. */
export const Writing = () => (
  <g class="writing" aria-hidden="true">
    {picture.value?.pieces.map((piece) => (
      <WordsOnPiece key={piece.name} piece={piece} />
    ))}
    <PulledWords />
  </g>
);

const WordsOnPiece = ({ piece }: { readonly piece: PictureOfPiece }) => {
  const now = view.value;
  const seen = (p: { readonly x: number; readonly y: number }) =>
    inWindow(now, { x: p.x + piece.at.x, y: p.y + piece.at.y });
  const middle = seen(piece.middle);
  return (
    <g>
      <text class="piece-name" x={middle.x} y={middle.y}>
        {piece.name}
      </text>
      {piece.kept && (
        <text class="kept-note" x={middle.x} y={middle.y + 16}>
          as it last was
        </text>
      )}
      {piece.edges.map((edge) => {
        const isLit = lit.value.edges.has(`${piece.name}/${edge.name}`);
        const hasRoom = edge.length * now.scale > roomForWords && edge.inOutline;
        const words = [
          showsNames.value || isLit ? edge.name : "",
          showsLengths.value || isLit ? edge.lengthInWords : "",
        ]
          .filter((word) => word !== "")
          .join(" ");
        if (words === "" || !(isLit || hasRoom)) return null;
        const at = seen(edge.middle);
        const anchor = edge.outward.x > 0.4 ? "start" : edge.outward.x < -0.4 ? "end" : "middle";
        return (
          <text
            key={edge.name}
            class={`edge-words${isLit ? " lit" : ""}`}
            x={at.x + edge.outward.x * fromEdge}
            y={at.y + edge.outward.y * fromEdge + 4}
            text-anchor={anchor}
          >
            {words}
          </text>
        );
      })}
      {piece.places.map((place) => {
        if (!showsNames.value && !lit.value.places.has(`${piece.name}/${place.name}`)) return null;
        const at = seen(place.at);
        return (
          <text key={place.name} class="place-words" x={at.x + 6} y={at.y - 6}>
            {place.name}
          </text>
        );
      })}
    </g>
  );
};

/** The number that a pull is turning, beside the hand. */
const PulledWords = () => {
  const shown = pulled.value;
  if (!shown) return null;
  const { x, y } = inWindow(view.value, shown.at);
  return (
    <text class="pulled-words" x={x + 14} y={y - 12}>
      {shown.words}
    </text>
  );
};
