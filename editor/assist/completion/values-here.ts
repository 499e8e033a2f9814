// The values that could stand in a slot: names that are known here, functions, directions and the words of a choice.
import type { Slot } from "../../../grammar/phrase.ts";
import { bodyMeasures } from "../../../kernel/body-measures.ts";
import type { Check } from "../../../kernel/check.ts";
import { functions } from "../../../kernel/functions.ts";
import type { Piece, Units } from "../../../kernel/working.ts";
import { nameInWords } from "../in-words.ts";
import type { Known, KnownName } from "../known-names.ts";
import { asText } from "../markdown.ts";
import type { WantedKind } from "../wanted-kinds.ts";
import { functionGives } from "./function-gives.ts";
import { hole, type Suggested } from "./suggested.ts";
import { wordsHere } from "./words-here.ts";

/** Everything that could begin a value of the wanted kinds; what is of another kind but leads to one comes later. */
export const valuesHere = (
  known: Known,
  wanted: readonly WantedKind[],
  slot: Slot | undefined,
  units: Units,
): Suggested[] =>
  slot?.choices
    ? slot.choices.map((label, index) => ({ label, kind: "choice", detail: slot.note, rank: index / 100 }))
    : [...namesHere(known, wanted, units), ...functionsHere(wanted), ...wordsHere(wanted)];

/** The built-in checks, where `accept` names one. */
export const checksHere = (checks: readonly Check[], describe: (check: Check) => string): Suggested[] =>
  checks.map((check, index) => ({
    label: check.name,
    kind: "check",
    detail: check.title,
    documentation: describe(check),
    rank: index / 100,
  }));

const namesHere = ({ names, piece }: Known, wanted: readonly WantedKind[], units: Units): Suggested[] => {
  const rankInPiece = orderIn(piece);
  return [...names.values()].flatMap((name, index, all): Suggested[] => {
    const rank = rankOf(name, wanted);
    if (rank === undefined) return [];
    return [
      {
        label: name.name,
        kind: name.kind,
        detail: nameInWords(name, units),
        ...documented(name),
        rank: rank * 10 + (rankInPiece.get(name.name) ?? (all.length - index) / all.length),
      },
    ];
  });
};

const documented = ({ name, named }: KnownName): { documentation?: string } => {
  const lines = [named?.note && asText(named.note), named?.kind === "measure" && bodyMeasures.get(name)?.taken];
  const said = lines.filter((line): line is string => typeof line === "string" && line !== "");
  return said.length > 0 ? { documentation: said.join("\n\n") } : {};
};

/** Edges of the outline in its order, then what was drawn last. */
const orderIn = (piece: Piece | undefined): ReadonlyMap<string, number> => {
  const outline = piece?.outline.map(({ edge }) => edge) ?? [];
  return new Map(outline.map((edge, index) => [edge, index / 1000]));
};

// What leads to a value of another kind: a place lies along an edge, a piece has edges, a length is measured.
const leadsTo: ReadonlyMap<string, readonly WantedKind[]> = new Map<string, readonly WantedKind[]>([
  ["edge", ["place"]],
  ["place", ["edge"]],
  ["dart", ["place"]],
  ["piece", ["edge", "place", "dart"]],
  ["recipe", ["piece", "edge", "place", "length", "number", "angle"]],
]);

const amounts: readonly WantedKind[] = ["length", "number", "angle", "weight", "area"];

/** 0 for the kind that is wanted first, up to 5 for one that leads to it; undefined for what cannot stand here. */
const rankOf = ({ kind, value }: KnownName, wanted: readonly WantedKind[]): number | undefined => {
  const is = value?.kind === "truth" ? "condition" : (value?.kind ?? kind);
  const at = wanted.indexOf(is as WantedKind);
  if (at >= 0) return Math.min(at, 3);
  if (wanted.length === 0) return 4;
  // A value whose line failed, or which is found anew each time, may be of any kind.
  const isOpen = value === undefined && ["measure", "param", "let", "value", "parameter"].includes(kind);
  if (isOpen && (kind === "parameter" || amounts.some((each) => wanted.includes(each)))) return 2;
  return leadsTo.get(is)?.some((each) => wanted.includes(each)) ? 5 : undefined;
};

const functionsHere = (wanted: readonly WantedKind[]): Suggested[] =>
  [...functions.values()].flatMap(({ name, form, summary }, index): Suggested[] => {
    const fits = (functionGives.get(name) ?? []).map((kind) => wanted.indexOf(kind)).filter((at) => at >= 0);
    if (fits.length === 0 && wanted.length > 0) return [];
    const list = form.slice(form.indexOf("(") + 1, -1).split(", ");
    const holes = list.filter((each) => each !== "…").map((each, at) => hole(at + 1, each));
    return [
      {
        label: name,
        kind: "function",
        detail: form,
        insert: `${name}(${holes.join(", ")})`,
        isSnippet: true,
        documentation: summary,
        rank: 40 + Math.min(...fits, 9) + index / 100,
      },
    ];
  });
