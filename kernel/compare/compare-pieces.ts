// One piece against what it was: edges, places, corners, marks and cloth, each where it differs by more than can be told.
import { renamed as withOtherNames } from "../alter/renamed.ts";
import { signedArea } from "../geometry/area.ts";
import { mapped } from "../geometry/path.ts";
import { distance, type Point } from "../geometry/point.ts";
import { samePath } from "../geometry/same-path.ts";
import { toDegrees } from "../geometry/trig.ts";
import { isHidden } from "../hidden-names.ts";
import { boundary, cornersOf, gaps } from "../outline.ts";
import { sewnLengthOf } from "../sewn.ts";
import type { Piece } from "../working.ts";
import { clothBetween } from "./cloth-between.ts";
import type { ChangedArea, ChangedCorner, ChangedEdge, ChangedPiece, ChangedPlace, Renamed } from "./comparison.ts";
import { type Laying, laid, laidOver } from "./laid-over.ts";
import { changedMarks } from "./marks.ts";
import { apart, renamedWithin } from "./renames.ts";
import { differs, tellableAngle, tellableArea, tellableLength } from "./rounding.ts";

/** What changed from one piece to another; undefined where nothing did. `from` is how the earlier one is called. */
export const comparePieces = (before: Piece, after: Piece, from = before.name): ChangedPiece | undefined => {
  if (before === after && from === after.name) return undefined;
  const laying = laidOver(before, after);
  const renamed = renamedWithin(before, after, laying);
  const was = renamed.length === 0 ? before : underNewNames(before, renamed);
  const area = changedArea(was, after, laying);
  const changed: ChangedPiece = {
    name: after.name,
    status: from === after.name ? "changed" : "renamed",
    from,
    edges: changedEdges(was, after, laying),
    places: changedPlaces(was, after, laying),
    corners: changedCorners(was, after, laying),
    marks: changedMarks(was, after, laying),
    renamed,
    area,
  };
  return isAlike(changed) ? undefined : changed;
};

/** A piece that only one of the garments has. */
export const lonePiece = (piece: Piece, status: "added" | "removed"): ChangedPiece => {
  const own = areaOf(piece);
  const isNew = status === "added";
  return {
    name: piece.name,
    status,
    from: isNew ? null : piece.name,
    edges: [],
    places: [],
    corners: [],
    marks: [],
    renamed: [],
    area:
      own === null
        ? null
        : isNew
          ? { before: null, after: own, added: own, removed: 0 }
          : { before: own, after: null, added: 0, removed: own },
  };
};

const isAlike = ({ status, edges, places, corners, marks, renamed, area }: ChangedPiece): boolean =>
  status === "changed" && area === null && [edges, places, corners, marks, renamed].every((list) => list.length === 0);

const underNewNames = (piece: Piece, renamed: readonly Renamed[]): Piece => {
  const names = (kind: Renamed["kind"]): ReadonlyMap<string, string> =>
    new Map(renamed.flatMap((each) => (each.kind === kind ? [[each.before, each.after] as const] : [])));
  const [edges, places] = [names("edge"), names("place")];
  return withOtherNames(
    piece,
    (name) => edges.get(name) ?? name,
    (name) => places.get(name) ?? name,
  );
};

const changedEdges = (before: Piece, after: Piece, laying: Laying): ChangedEdge[] => {
  const [wasOutside, isOutside] = [before, after].map(({ outline }) => new Set(outline.map(({ edge }) => edge))) as [
    Set<string>,
    Set<string>,
  ];
  return shown(before.edges, after.edges)
    .flatMap((name): ChangedEdge[] => {
      const [was, is] = [before.edges.get(name), after.edges.get(name)];
      const isInner = !wasOutside.has(name) && !isOutside.has(name);
      const [from, to] = [was ? sewnLengthOf(before, name) : null, is ? sewnLengthOf(after, name) : null];
      const isSame = was && is && laying.angle === 0 && samePath(was.path, is.path, 0) && sameSpots(laying);
      const moved = was && is ? (isSame ? 0 : apart(was.path, is.path, laying)) : null;
      if (!differs(from, to, tellableLength) && !differs(0, moved, tellableLength)) return [];
      const difference = from === null || to === null ? null : to - from;
      return [{ name, before: from, after: to, difference, moved, isInner }];
    })
    .sort(
      (a, b) =>
        Number(a.isInner) - Number(b.isInner) ||
        weightOf(b.difference, b.before ?? b.after) - weightOf(a.difference, a.before ?? a.after) ||
        (b.moved ?? 0) - (a.moved ?? 0) ||
        byName(a, b),
    );
};

const sameSpots = ({ from, to, over }: Laying): boolean => !over && from.x === to.x && from.y === to.y;

const weightOf = (difference: number | null, whole: number | null): number => Math.abs(difference ?? whole ?? 0);

const changedPlaces = (before: Piece, after: Piece, laying: Laying): ChangedPlace[] =>
  shown(before.places, after.places)
    .flatMap((name): ChangedPlace[] => {
      const [was, is] = [before.places.get(name)?.point ?? null, after.places.get(name)?.point ?? null];
      const moved = was && is ? distance(was, laid(is, laying)) : null;
      return was && is && moved! < tellableLength ? [] : [{ name, before: was, after: is, moved }];
    })
    .sort((a, b) => (b.moved ?? 0) - (a.moved ?? 0) || byName(a, b));

interface NamedCorner {
  readonly edges: readonly [string, string];
  readonly point: Point;
  readonly degrees: number;
}

const changedCorners = (before: Piece, after: Piece, laying: Laying): ChangedCorner[] => {
  const [was, is] = [namedCorners(before), namedCorners(after)];
  const changed = [...was].flatMap(([key, from]): ChangedCorner[] => {
    const to = is.get(key);
    if (!to) return [];
    const moved = distance(from.point, laid(to.point, laying));
    if (moved < tellableLength && !differs(from.degrees, to.degrees, tellableAngle)) return [];
    return [{ edges: from.edges, angle: { before: from.degrees, after: to.degrees }, moved }];
  });
  // A corner that came or went does so with one of its edges, which is told already.
  return changed.sort((a, b) => (b.moved ?? 0) - (a.moved ?? 0) || (a.edges.join() < b.edges.join() ? -1 : 1));
};

const namedCorners = (piece: Piece): ReadonlyMap<string, NamedCorner> => {
  if (piece.outline.length === 0 || gaps(piece).length > 0) return new Map();
  const found = new Map<string, NamedCorner>();
  for (const { before, after, point, interior } of cornersOf(piece)) {
    const edges = [before.edge.name, after.edge.name].sort() as [string, string];
    let key = edges.join(" ");
    // Two edges that make a whole outline meet twice.
    while (found.has(key)) key += " again";
    found.set(key, { edges, point, degrees: toDegrees(interior) });
  }
  return found;
};

const changedArea = (before: Piece, after: Piece, laying: Laying): ChangedArea | null => {
  const [was, is] = [boundary(before), boundary(after)];
  if (!was || !is) return areaOf(before) === areaOf(after) ? null : loneArea(before, after);
  if (was === is) return null;
  const { addedArea, removedArea } = clothBetween(
    was,
    mapped(is, (p) => laid(p, laying)),
  );
  if (addedArea < tellableArea && removedArea < tellableArea) return null;
  return {
    before: Math.abs(signedArea(was)),
    after: Math.abs(signedArea(is)),
    added: addedArea,
    removed: removedArea,
  };
};

const loneArea = (before: Piece, after: Piece): ChangedArea => {
  const [was, is] = [areaOf(before), areaOf(after)];
  return { before: was, after: is, added: is ?? 0, removed: was ?? 0 };
};

const areaOf = (piece: Piece): number | null => {
  const loop = boundary(piece);
  return loop ? Math.abs(signedArea(loop)) : null;
};

/** The names that either piece shows, in alphabetical order. */
const shown = (before: ReadonlyMap<string, unknown>, after: ReadonlyMap<string, unknown>): string[] =>
  [...new Set([...before.keys(), ...after.keys()])].filter((name) => !isHidden(name)).sort();

const byName = (a: { readonly name: string }, b: { readonly name: string }): number => (a.name < b.name ? -1 : 1);
