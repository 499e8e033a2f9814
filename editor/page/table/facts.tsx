// What the table shows, as a text: every piece with its edges and their lengths, each a button that shows the line behind it.
import type { PictureOfPiece } from "../../picture/picture.ts";
import { chosen, goTo, type Pointed, picture, pointed } from "../desk.ts";
import { FoldedPart } from "../folded-part.tsx";
import { linesBehind } from "./lit.ts";

export const Facts = () => {
  const pieces = picture.value?.pieces ?? [];
  return (
    <FoldedPart title={`Pieces in words (${pieces.length})`}>
      {() => pieces.map((piece) => <FactsOfPiece key={piece.name} piece={piece} />)}
    </FoldedPart>
  );
};

const FactsOfPiece = ({ piece }: { readonly piece: PictureOfPiece }) => (
  <section class="facts">
    <h3>{piece.name}</h3>
    <p class="quiet">{piece.words}</p>
    <ul>
      {piece.edges
        .filter(({ inOutline }) => inOutline)
        .map(({ name, lengthInWords }) => (
          <li key={name}>
            <FactButton thing={{ kind: "edge", piece: piece.name, name }}>{`${name}, ${lengthInWords}`}</FactButton>
          </li>
        ))}
      {piece.places.map(({ name }) => (
        <li key={name}>
          <FactButton thing={{ kind: "place", piece: piece.name, name }}>{name}</FactButton>
        </li>
      ))}
    </ul>
  </section>
);

const FactButton = ({ thing, children }: { readonly thing: Pointed; readonly children: string }) => {
  const point = (): void => {
    pointed.value = thing;
  };
  const away = (): void => {
    pointed.value = undefined;
  };
  return (
    <button
      type="button"
      class="plain-button"
      onFocus={point}
      onBlur={away}
      onMouseEnter={point}
      onMouseLeave={away}
      onClick={() => {
        chosen.value = thing;
        const shown = picture.value;
        const line = shown && linesBehind(shown, thing).lines[0];
        if (line !== undefined) goTo({ line });
      }}
    >
      {children}
    </button>
  );
};
