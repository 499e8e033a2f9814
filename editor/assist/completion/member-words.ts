// What may stand behind a dot: the edges, places and darts of a piece, the ends of an edge, what a used recipe brings in.
import { dartPlaces } from "../../../kernel/dart-halves.ts";
import { partOf } from "../../../kernel/expression.ts";
import { isHidden, shownNames } from "../../../kernel/hidden-names.ts";
import type { Value } from "../../../kernel/value.ts";
import type { Units } from "../../../kernel/working.ts";
import { nameInWords } from "../in-words.ts";
import type { KnownName, NameKind } from "../known-names.ts";
import type { WantedKind } from "../wanted-kinds.ts";
import type { Suggested } from "./suggested.ts";

/** The parts of a value, those that are wanted here first. */
export const memberWords = (value: Value | undefined, wanted: readonly WantedKind[], units: Units): Suggested[] =>
  membersOf(value).map((member, index) => {
    const at = wanted.indexOf((member.value?.kind ?? member.kind) as WantedKind);
    return {
      label: member.name,
      kind: member.kind,
      detail: nameInWords(member, units),
      rank: (at < 0 ? 50 : at * 10) + index / 1000,
    };
  });

/** The parts of a value by name, edges of an outline first and in its order. */
export const membersOf = (value: Value | undefined): KnownName[] => {
  if (value?.kind === "piece") {
    const { piece, called } = value;
    const names = new Set(
      [...piece.outline.map(({ edge }) => edge), ...shownNames(piece)].filter((name) => !isHidden(name)),
    );
    return [...names].map((name) => named(name, partOf(piece, called, name)));
  }
  if (value?.kind === "recipe") return value.names.map((name) => named(name, value.find(name)));
  if (value?.kind === "dart")
    return [...dartPlaces(value.dart)].map(([name, point]) => named(name, { kind: "place", point }));
  return ["start", "end"].map((name) => ({ name, kind: "place" }));
};

const named = (name: string, value: Value | undefined): KnownName => ({
  name,
  kind: kindOf(value),
  ...(value && { value }),
});

const kindOf = (value: Value | undefined): NameKind => {
  if (value === undefined) return "value";
  const { kind } = value;
  return kind === "edge" ||
    kind === "place" ||
    kind === "dart" ||
    kind === "piece" ||
    kind === "recipe" ||
    kind === "fabric"
    ? kind
    : "value";
};
