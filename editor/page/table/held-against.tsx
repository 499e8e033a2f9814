// The pieces of another version under those on the table, each laid on its namesake.
import type { Picture } from "../../picture/picture.ts";

/** Outlines of the version that is held against the drawing. */
export const HeldAgainst = ({ held, shown }: { readonly held: Picture; readonly shown: Picture }) => (
  <g class="held">
    {held.pieces.map((piece) => {
      const now = shown.pieces.find(({ name }) => name === piece.name);
      if (!now) return null;
      return (
        <g key={piece.name} transform={`translate(${now.at.x} ${now.at.y})`}>
          {piece.edges
            .filter(({ inOutline }) => inOutline)
            .map(({ name, d }) => (
              <path key={name} class="stroke held-line" d={d} />
            ))}
        </g>
      );
    })}
  </g>
);
