// One piece as a table: its edges with their lengths, before and after where it was copied, and how much room it takes.
import { cuttingLine } from "../cloth/allowances/cutting-line.ts";
import { isHidden } from "../hidden-names.ts";
import { boundary, walked } from "../outline.ts";
import { areaIn, lengthIn } from "../units.ts";
import type { Garment, Judged, Piece, Units } from "../working.ts";
import { differenceIn, unchanged } from "./amounts.ts";
import { type ComparedEdge, compared } from "./comparison.ts";
import { dartLines } from "./dart-lines.ts";
import { type Extent, extentOf } from "./extent.ts";
import { plain, quiet, type SaidLine, strong, warning } from "./said.ts";
import { aligned, amount, type Cell, empty, words } from "./table.ts";
import { wrapped } from "./wrapped.ts";

/** A piece's heading, edges and extent. */
export const pieceReport = (
  piece: Piece,
  garment: Garment,
  judgements: readonly Judged[],
  width: number,
): SaidLine[] => [
  headingOf(piece, garment),
  ...(piece.outline.length === 0 ? [] : edgeTable(piece, garment.units, judgements)),
  ...dartLines(piece, garment.units),
  ...extentLines(piece, garment.units),
  ...placeLines(piece, width),
];

/** The names that a recipe can use; hidden ones belong to blocks that have ended. */
const placeLines = ({ places }: Piece, width: number): SaidLine[] => {
  const names = [...places.keys()].filter((name) => !isHidden(name));
  if (names.length === 0) return [];
  return wrapped(`places: ${names.join(", ")}`, width - 4).map((line, index) => [
    quiet(`${index === 0 ? "  " : "    "}${line}`),
  ]);
};

const headingOf = (piece: Piece, garment: Garment): SaidLine => {
  const copied = piece.from === undefined ? [] : [quiet(`  from ${piece.from}`)];
  const cuts = garment.cuts.filter((cut) => cut.piece === piece.name);
  const onFold = walked(piece).some(({ edge }) => edge.role === "fold");
  const cut = cuts.map(({ count, fabric }) => quiet(`  cut ${count}${onFold ? " on the fold" : ""} from ${fabric}`));
  return [strong(piece.name), ...copied, ...cut];
};

const edgeTable = (piece: Piece, units: Units, judgements: readonly Judged[]): SaidLine[] => {
  const edges = compared(piece);
  const isCopy = piece.source !== undefined;
  const areCutLonger = edges.some(({ cut }) => cut !== undefined);
  const lengths = areCutLonger ? ["sewn", "cut"] : ["length"];
  const heads = ["edge", "part", ...lengths, ...(isCopy ? ["before", "change"] : [])];
  const head = heads.map((text) => words(text, "quiet"));
  const allowances = edges.some(({ edge }) => piece.allowances.has(edge));
  const rows = edges.map((edge) => rowOf(edge, piece, units, judgements, { isCopy, areCutLonger }));
  return aligned([allowances ? [...head, words("allowance", "quiet")] : head, ...rows]);
};

const rowOf = (
  edge: ComparedEdge,
  piece: Piece,
  units: Units,
  judgements: readonly Judged[],
  { isCopy, areCutLonger }: { readonly isCopy: boolean; readonly areCutLonger: boolean },
): Cell[] => {
  const allowance = piece.allowances.get(edge.edge);
  const allowed = allowance && edge.role !== "fold" ? amount(lengthIn(allowance.width, units)) : empty;
  const kept = keptNote(edge, piece, units, judgements);
  const before = isCopy ? [beforeOf(edge, units), changeOf(edge, units)] : [];
  return [
    words(edge.edge),
    words(edge.role, "quiet"),
    edge.now === undefined ? words("gone", "quiet") : amount(lengthIn(edge.now, units)),
    ...(areCutLonger ? [edge.cut === undefined ? empty : amount(lengthIn(edge.cut, units), "quiet")] : []),
    ...before,
    allowed,
    ...(kept ? [kept] : []),
  ];
};

const beforeOf = ({ before }: ComparedEdge, units: Units): Cell =>
  before === undefined ? words("new", "quiet") : amount(lengthIn(before, units), "quiet");

const changeOf = ({ difference }: ComparedEdge, units: Units): Cell => {
  if (difference === undefined) return empty;
  const text = differenceIn(difference, units);
  return Math.abs(difference) < unchanged ? words(text, "quiet") : amount(text, "strong");
};

// A promise kept is said where the comparison alone would look like one broken: after a strip, say.
const keptNote = (
  { edge, keep, before }: ComparedEdge,
  { name }: Piece,
  units: Units,
  judgements: readonly Judged[],
): Cell | undefined => {
  if (!keep) return undefined;
  const judged = judgements.find(
    ({ check, on, where }) => check === "kept-length" && on === `${name}.${edge}` && where === keep.drawnBy,
  );
  if (!judged) return undefined;
  const isOther = before === undefined || Math.abs(keep.wanted - before) >= unchanged;
  const wanted = isOther
    ? ` at ${lengthIn(keep.wanted, units)}, ${keep.as ? `as ${keep.of} has it` : "once stripped"}`
    : "";
  if (judged.verdict === "pass") return words(`kept${wanted}`, "good");
  return judged.verdict === "accepted"
    ? words(`not kept${wanted}, accepted`, "warning")
    : words(`not kept${wanted}`, "bad");
};

const extentLines = (piece: Piece, units: Units): SaidLine[] => {
  const sewing = boundary(piece);
  if (!sewing) return [[plain("  "), warning("Its outline is not closed, so it has no size yet.")]];
  const cutting = cuttingLine(piece);
  const sewn = extentOf(sewing);
  const isCut = cutting !== undefined && piece.allowances.size > 0;
  const rows = [
    extentRow("sewing line", sewn, units),
    ...(isCut ? [extentRow("cutting line", extentOf(cutting.path), units)] : []),
  ];
  return aligned(rows);
};

const extentRow = (line: string, { width, height, perimeter, area }: Extent, units: Units): Cell[] => [
  words(line, "quiet"),
  amount(`${lengthIn(width, units)} wide`),
  amount(`${lengthIn(height, units)} high`),
  amount(`${lengthIn(perimeter, units)} around`),
  amount(areaIn(area, units)),
];
