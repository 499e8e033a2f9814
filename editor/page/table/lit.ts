// What is lit on the table: the thing the hand is on, or all that the line under the cursor drew or changed.
import { computed } from "@preact/signals";
import type { Lines, Picture } from "../../picture/picture.ts";
import { cursorLine, type Pointed, picture, pointed } from "../desk.ts";

/** Names of lit things: pieces as they are called, edges and places as "piece/name", other things by their number. */
export interface Lit {
  readonly pieces: ReadonlySet<string>;
  readonly edges: ReadonlySet<string>;
  readonly places: ReadonlySet<string>;
  readonly things: ReadonlySet<string>;
}

export const litOn = (shown: Picture, at: Pointed | undefined, line: number): Lit => {
  const [pieces, edges, places, things] = [new Set<string>(), new Set<string>(), new Set<string>(), new Set<string>()];
  if (at?.kind === "piece") pieces.add(at.piece);
  else if (at?.kind === "edge") edges.add(`${at.piece}/${at.name}`);
  else if (at?.kind === "place") places.add(`${at.piece}/${at.name}`);
  else if (at?.kind === "thing") things.add(`${at.piece}/${at.index}`);
  else {
    const lit = at?.kind === "line" ? at.line : line;
    for (const piece of shown.pieces) {
      for (const { name, ...behind } of piece.edges) if (isBehind(behind, lit)) edges.add(`${piece.name}/${name}`);
      for (const { name, ...behind } of piece.places) if (isBehind(behind, lit)) places.add(`${piece.name}/${name}`);
      piece.things.forEach((behind, index) => {
        if (isBehind(behind, lit)) things.add(`${piece.name}/${index}`);
      });
    }
  }
  return { pieces, edges, places, things };
};

export const lit = computed<Lit>(() =>
  picture.value
    ? litOn(picture.value, pointed.value, cursorLine.value)
    : { pieces: new Set(), edges: new Set(), places: new Set(), things: new Set() },
);

const isBehind = ({ lines, inside }: Lines, line: number): boolean =>
  lines.includes(line) || inside.some((each) => each.line === line);

/** The lines of the recipe behind what the hand is on. */
export const linesBehind = (shown: Picture, at: Pointed): Lines => {
  const none = { lines: [], inside: [] };
  if (at.kind === "line") return { lines: [at.line], inside: [] };
  const piece = shown.pieces.find(({ name }) => name === at.piece);
  if (!piece) return none;
  if (at.kind === "notch") return piece.notches[at.index] ?? none;
  if (at.kind === "thing") return piece.things[at.index] ?? none;
  if (at.kind === "piece") return piece;
  const { kind, name: wanted } = at;
  return (kind === "edge" ? piece.edges : piece.places).find(({ name }) => name === wanted) ?? none;
};

/** What a thing on the table is called, with its length where it has one. */
export const nameOf = (shown: Picture, at: Pointed): string => {
  const piece = shown.pieces.find(({ name }) => at.kind !== "line" && name === at.piece);
  if (!piece) return "";
  if (at.kind === "edge") {
    const { name: wanted } = at;
    const edge = piece.edges.find(({ name }) => name === wanted);
    return `${piece.name}.${wanted}${edge ? `, ${edge.lengthInWords}` : ""}`;
  }
  if (at.kind === "place") return `${piece.name}.${at.name}`;
  if (at.kind === "notch") return `notch on ${piece.name}.${piece.notches[at.index]?.edge ?? ""}`;
  if (at.kind === "thing") {
    const thing = piece.things[at.index];
    return thing ? [thing.kind, thing.name, "of", piece.name].filter((word) => word !== "").join(" ") : piece.name;
  }
  return piece.name;
};
