// What `compare --json` prints: every change in mm, square mm and degrees at full precision. Fields are only ever added; anything
// else makes a new schema number.
import type { ClothNeed } from "../compare/compare-cloth.ts";
import type {
  BeforeAndAfter,
  Cause,
  ChangedCheck,
  ChangedPiece,
  ChangedSeam,
  Fact,
  SeamFit,
} from "../compare/comparison.ts";
import type { Point } from "../geometry/point.ts";
import type { Review } from "./compare-told.ts";
import type { Json } from "./json.ts";

export const schema = 1;

/** A review as JSON data. */
export const compareJson = ({ title, before, after, comparison, cloth = [], causes, remarks }: Review): Json => ({
  schema,
  title,
  before,
  after,
  values: comparison.values.map(({ name, before: was, after: is }) => ({ name, before: was, after: is })),
  pieces: comparison.pieces.map(pieceOf),
  seams: comparison.seams.map(seamOf),
  cuts: comparison.cuts.map(({ name, before: was, after: is }) => ({ name, before: was, after: is })),
  cloth: cloth.map(({ fabric, before: was, after: is }) => ({
    fabric,
    before: was && needOf(was),
    after: is && needOf(is),
  })),
  checks: { began: comparison.checks.began.map(checkOf), ceased: comparison.checks.ceased.map(checkOf) },
  causes: causes.causes.map(causeOf),
  untried: causes.untried,
  remarks,
});

const needOf = ({ lengthToBuy, length, because }: ClothNeed): Json => ({ lengthToBuy, length, because });

const pieceOf = ({ name, status, from, edges, places, corners, marks, renamed, area }: ChangedPiece): Json => ({
  name,
  status,
  from,
  edges: edges.map((edge) => ({
    name: edge.name,
    before: edge.before,
    after: edge.after,
    difference: edge.difference,
    moved: edge.moved,
    inner: edge.isInner,
  })),
  places: places.map((place) => ({
    name: place.name,
    before: spot(place.before),
    after: spot(place.after),
    moved: place.moved,
  })),
  area: area && { before: area.before, after: area.after, added: area.added, removed: area.removed },
  corners: corners.map((corner) => ({ edges: corner.edges, ...both(corner.angle), moved: corner.moved })),
  marks: marks.map((mark) => ({ kind: mark.kind, on: mark.on, measures: mark.measures, ...both(mark) })),
  renamed: renamed.map(({ kind, before, after }) => ({ kind, before, after })),
});

const both = <T extends Json>({
  before,
  after,
}: BeforeAndAfter<T>): { readonly before: Json; readonly after: Json } => ({
  before,
  after,
});

const spot = (point: Point | null): Json => point && [point.x, point.y];

const seamOf = ({ name, before, after }: ChangedSeam): Json => ({
  name,
  before: before && fitOf(before),
  after: after && fitOf(after),
});

const fitOf = ({ firstLength, secondLength, difference, ease, verdict }: SeamFit): Json => ({
  firstLength,
  secondLength,
  difference,
  ease,
  verdict,
});

const checkOf = ({ check, on, severity, message, file, line }: ChangedCheck): Json => ({
  check,
  on,
  severity,
  message,
  file,
  line,
});

const causeOf = ({ file, line, text, was, undoes, eases, isBound }: Cause): Json => ({
  line,
  text,
  undoes: undoes.map(factOf),
  file,
  was,
  eases: eases.map(factOf),
  bound: isBound,
});

const factOf = ({ kind, name }: Fact): Json => ({ kind, name });
