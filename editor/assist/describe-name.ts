// A name as it stands in a line: what it is, what it measures once the line is worked, and what was noted of it.
import { bodyMeasures } from "../../kernel/body-measures.ts";
import type { Value } from "../../kernel/value.ts";
import type { Piece, Units } from "../../kernel/working.ts";
import { foundInWords } from "./found-values.ts";
import { edgeLength, nameInWords } from "./in-words.ts";
import { type Known, type KnownName, knownAt } from "./known-names.ts";
import { asCode, asText } from "./markdown.ts";
import { pathTo, valueOfPath } from "./path-at.ts";
import type { WorkedText } from "./worked-text.ts";
import type { WrittenLine } from "./written.ts";
import type { WrittenWord } from "./written-word.ts";

/** Paragraphs about a name; none where nothing is known of it. */
export const describeName = (worked: WorkedText, line: WrittenLine, word: WrittenWord): string[] => {
  const { units } = worked.outcome.garment;
  if (line.isEntry && word === line.words[0]) return describeEntry(worked, line.around, word.text);
  const { around } = line;
  const before =
    line.isEntry && around ? knownAt(worked, around.from, around.around) : knownAt(worked, line.from, around);
  const after = line.isEntry ? before : knownAt(worked, endOf(line), line.verb === "solve" ? line : around);
  const path = pathTo(line.words.slice(0, line.words.indexOf(word) + 1));
  // What the line took up, as a join does its parts, is told as it was before.
  const name =
    [after, before].map(({ names }) => names.get(word.text)).find((each) => each?.value) ?? after.names.get(word.text);
  if (path.length === 1 || word.means === "NewName") {
    if (!name) return describeMeasure(word.text);
    return [heading(name, before, after, worked), ...notes(name)];
  }
  const value = valueOfPath(path, after) ?? valueOfPath(path, before);
  return value ? [`${asCode(path.map(({ text }) => text).join(""))}: ${partInWords(value, units)}`] : [];
};

/** The param of a used recipe that an entry gives, or the measure that a size does. */
const describeEntry = ({ outcome }: WorkedText, around: WrittenLine | undefined, name: string): string[] => {
  const called = around?.words.find(({ means }) => means === "NewName")?.text ?? "";
  const named = (outcome.uses.get(called) ?? outcome).values.get(name);
  if (!named) return describeMeasure(name);
  const known: KnownName = { name, kind: named.kind, value: named.value, named };
  return [`${asCode(name)}: ${asText(nameInWords(known, outcome.garment.units))}`, ...notes(known)];
};

/** Behind the line, its block included. */
const endOf = (line: WrittenLine): number => Math.max(line.to, line.block?.to ?? 0) + 1;

const heading = (name: KnownName, before: Known, after: Known, worked: WorkedText): string => {
  const { units } = worked.outcome.garment;
  const said = asCode(name.name);
  const from = name.line === undefined ? "" : `, from line ${name.line}`;
  const piece = after.piece?.edges.has(name.name) ? after.piece : before.piece;
  if (piece && name.value?.kind === "edge" && piece.edges.has(name.name))
    return `${said}: ${edgeInWords(piece, name.name, units)}${change(before.piece, piece, name.name, units)}${from}`;
  const isFound = name.value === undefined && name.from !== undefined && (name.kind === "value" || name.kind === "let");
  const found = isFound ? foundInWords(worked).get(name.from) : undefined;
  return `${said}: ${asText(nameInWords(name, units))}${found === undefined ? "" : `, ${asText(found)}`}${from}`;
};

const edgeInWords = (piece: Piece, edge: string, units: Units): string => {
  const role = piece.edges.get(edge)!.role;
  return `edge of ${asCode(piece.name)}, ${role === "seam" ? "" : `${role}, `}${edgeLength(piece, edge, units)}`;
};

/** What it measured before this line, where that was something else. */
const change = (before: Piece | undefined, piece: Piece, edge: string, units: Units): string => {
  if (!before?.edges.has(edge)) return "";
  const was = edgeLength(before, edge, units);
  return was === edgeLength(piece, edge, units) ? "" : ` (${was} before this line)`;
};

const partInWords = (value: Value, units: Units): string => {
  const kind = value.kind === "recipe" ? "used recipe" : value.kind;
  const known: KnownName = { name: "", kind: kind as KnownName["kind"], value };
  return asText(nameInWords(known, units));
};

const notes = ({ name, named, kind }: KnownName): string[] => [
  ...(named?.note ? [asText(named.note)] : []),
  ...(kind === "measure" ? describeMeasure(name) : []),
];

const describeMeasure = (name: string): string[] => {
  const body = bodyMeasures.get(name);
  return body ? [`Body measure: ${body.term}. ${body.taken}.`] : [];
};
