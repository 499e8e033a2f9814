// One changed piece as a section: its cloth, its edges as a table, and all else in sentences.
import type { Blamed } from "../compare/blame.ts";
import type { ChangedArea, ChangedPiece } from "../compare/comparison.ts";
import { differs, tellableAngle, tellableArea, tellableLength } from "../compare/rounding.ts";
import type { Units } from "../working.ts";
import { headOf, listed, plainly, type Review, type Section } from "./compare-told.ts";
import { change, degrees, far, marksInWords, shortArea, shortLength } from "./compare-words.ts";
import { amount, type Cell, empty, words } from "./table.ts";

/** The section of a piece. */
export const pieceSection = (piece: ChangedPiece, review: Review): Section => {
  const { units } = review;
  return {
    heading: piece.name,
    remark: remarkOn(piece, units),
    rows: edgeRows(piece, review),
    sentences: pieceSentences(piece, units).map(plainly),
    piece: piece.name,
  };
};

const remarkOn = ({ name: own, status, from, area }: ChangedPiece, units: Units): string => {
  const [added, removed] = [area?.added ?? 0, area?.removed ?? 0].map((each) => shortArea(each, units));
  if (status === "added") return area ? `a new piece, ${added} of cloth` : "a new piece, its outline not closed";
  if (status === "removed") return area ? `gone, ${removed} of cloth less` : "gone";
  const name = status === "renamed" ? `was called ${from}` : from === own ? "" : `made of ${from}`;
  const cloth =
    area === null
      ? "its outline as it was"
      : area.before === null || area.after === null
        ? `its outline is ${area.after === null ? "no longer" : "now"} closed`
        : `${clothInWords(area, units)} (${shortArea(area.before, units)} to ${shortArea(area.after, units)})`;
  return [name, cloth].filter((part) => part !== "").join("; ");
};

/** "171 cm2 of cloth added, 2 cm2 taken off", and of these only what can be told. */
const clothInWords = ({ added, removed }: ChangedArea, units: Units): string => {
  const has = (area: number): boolean => area >= tellableArea;
  if (!has(removed)) return `${shortArea(added, units)} of cloth added`;
  if (!has(added)) return `${shortArea(removed, units)} of cloth taken off`;
  return `${shortArea(added, units)} of cloth added, ${shortArea(removed, units)} taken off`;
};

const edgeRows = (piece: ChangedPiece, { units, blame }: Review): Cell[][] => {
  const told = piece.edges.filter(({ difference, moved }) => difference === null || isTold(difference, moved));
  if (told.length === 0) return [];
  const areCaused = told.some(({ name }) => blame.has(`${piece.name}.${name}`));
  const rows = told.map(({ name, before, after, difference, isInner }): Cell[] => [
    words(isInner ? `${name} (inside)` : name),
    before === null ? words("none", "quiet") : amount(shortLength(before, units)),
    after === null ? words("none", "quiet") : amount(shortLength(after, units)),
    difference === null
      ? words(before === null ? "new" : "gone", "strong")
      : amount(change(difference, units), "strong"),
    ...(areCaused ? [blamedCell(blame.get(`${piece.name}.${name}`))] : []),
  ]);
  return [headOf("edge", "before", "after", "change", ...(areCaused ? ["by"] : [])), ...rows];
};

/** Longer or shorter by what can be told; else the edge has only moved. */
const isTold = (difference: number, moved: number | null): boolean =>
  Math.abs(difference) >= tellableLength || moved === null;

const blamedCell = (blamed: Blamed | undefined): Cell => (blamed ? words(`line ${blamed.line}`, "quiet") : empty);

const pieceSentences = ({ edges, corners, places, marks, renamed }: ChangedPiece, units: Units): string[] => {
  const moved = edges.filter((edge) => edge.difference !== null && !isTold(edge.difference, edge.moved));
  const turned = corners.filter(({ angle }) => differs(angle.before, angle.after, tellableAngle));
  const [come, gone] = [places.filter(({ before }) => before === null), places.filter(({ after }) => after === null)];
  const shifted = places.filter((place) => place.moved !== null);
  const sentence = (head: string, names: readonly string[]): string[] =>
    names.length === 0 ? [] : [`${head}: ${listed(names)}`];
  return [
    ...renamed.map(({ kind, before, after }) => `${kind} ${before} is now called ${after}`),
    ...marksInWords(marks, units),
    ...sentence(
      "as long as before, but elsewhere",
      moved.map(({ name, moved: by }) => `${name} (${far(by ?? 0, units)})`),
    ),
    ...sentence(
      "corners opened or closed",
      turned.map(
        ({ edges: [one, other], angle }) => `${one}/${other} ${degrees(angle.before!)} to ${degrees(angle.after!)}`,
      ),
    ),
    ...sentence(
      "corners moved",
      corners
        .filter((corner) => (corner.moved ?? 0) >= tellableLength)
        .map(({ edges: [one, other], moved: by }) => `${one}/${other} ${far(by!, units)}`),
    ),
    ...sentence(
      "places moved",
      shifted.map(({ name, moved: by }) => `${name} ${far(by!, units)}`),
    ),
    ...sentence(
      "new places",
      come.map(({ name }) => name),
    ),
    ...sentence(
      "places gone",
      gone.map(({ name }) => name),
    ),
  ];
};
