// One piece of tissue on the table: its paper, its lines, and what can be pointed at.
import type { PictureOfEdge, PictureOfPiece } from "../../picture/picture.ts";
import type { Lit } from "./lit.ts";

interface PieceShown {
  readonly piece: PictureOfPiece;
  readonly lit: Lit;
  readonly showsBefore: boolean;
  readonly showsCutting: boolean;
}

/** A piece with its lines; every edge, place and notch under a wider unseen line that the hand can find. */
export const Piece = ({ piece, lit, showsBefore, showsCutting }: PieceShown) => {
  const { name, at, shape, strokes, words, edges, places, notches, things } = piece;
  const shown = strokes.filter(
    ({ kind }) => (showsBefore || kind !== "before") && (showsCutting || kind !== "cutting-line"),
  );
  return (
    <g
      class={`piece${piece.kept ? " kept" : ""}${lit.pieces.has(name) ? " lit" : ""}`}
      transform={`translate(${at.x} ${at.y})`}
      data-piece={name}
    >
      <title>{words}</title>
      {shape !== "" && <path class="tissue" d={shape} />}
      {shown.map(({ kind, d }) => (
        <path key={kind} class={`stroke ${kind}`} d={d} />
      ))}
      {edges
        .filter((edge) => lit.edges.has(`${name}/${edge.name}`))
        .map((edge) => (
          <path key={edge.name} class="stroke chalked" d={edge.d} />
        ))}
      {edges.map((edge) => (
        <EdgeToFind key={edge.name} edge={edge} />
      ))}
      {things.map(({ kind, name: thing, d }, index) => (
        <path
          key={`${kind} ${thing}`}
          class={`thing-to-find${lit.things.has(`${name}/${index}`) ? " chalked" : ""}`}
          d={d}
          data-thing={index}
        />
      ))}
      {places.map((place) => (
        <circle
          key={place.name}
          class={`place${lit.places.has(`${name}/${place.name}`) ? " chalked" : ""}`}
          cx={place.at.x}
          cy={place.at.y}
          data-place={place.name}
        />
      ))}
      {notches.map((notch, index) => (
        <circle key={index} class="notch-to-find" cx={notch.at.x} cy={notch.at.y} data-notch={index} />
      ))}
    </g>
  );
};

const EdgeToFind = ({ edge }: { readonly edge: PictureOfEdge }) => (
  <path class="edge-to-find" d={edge.d} data-edge={edge.name} />
);
