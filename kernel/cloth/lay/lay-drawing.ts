// The drawing of a lay: the cloth with its selvedges or its fold, the pieces where they are cut, each with its grain and its
// name, and marks along the edge to measure by. Drawn in any scale; lettering stays readable on the paper.
import { arrowhead } from "../../drawing/arrowhead.ts";
import { inTurned, isInside } from "../../drawing/box.ts";
import type { Drawing, Group, Stroke, StrokeKind, Text } from "../../drawing/drawing.ts";
import { textWidth } from "../../drawing/lettering.ts";
import { paperAround } from "../../drawing/paper.ts";
import { roomiestPlace } from "../../drawing/roomiest-place.ts";
import { type Path, straight, through } from "../../geometry/path.ts";
import { minus, type Point, plus, times } from "../../geometry/point.ts";
import { bearing, toDegrees } from "../../geometry/trig.ts";
import { plainNumber } from "../../units.ts";
import type { Units } from "../../working.ts";
import { clothInWords } from "./cloth-in-words.ts";
import type { LaidCloth, LaidPiece } from "./lay-of.ts";

/** How large a lay is drawn, and how large its letters are on the paper, mm. */
export interface LayScale {
  /** mm on the paper for a mm of cloth. */
  readonly scale: number;
  readonly letters: number;
  /** What the pieces are drawn with: where they are small, a heavy line would hide how near they lie. */
  readonly pen: StrokeKind;
}

/** A tenth of the size, to look at and to cut by; and life size, for a plotter. */
export const tenth: LayScale = { scale: 0.1, letters: 3, pen: "frame" };
export const lifeSize: LayScale = { scale: 1, letters: 14, pen: "cutting-line" };

/** A cloth with its pieces as a drawing; x runs along the cloth. */
export const layDrawing = (cloth: LaidCloth, units: Units, size: LayScale): Drawing => {
  const groups = [clothGroup(cloth, units, size), ...cloth.placements.map((piece) => pieceGroup(piece, cloth, size))];
  return {
    title: `${cloth.title}: how the pieces lie`,
    words: clothInWords(cloth, units),
    paper: paperAround(groups),
    groups,
  };
};

const text = (
  words: string,
  at: Point,
  size: number,
  align: Text["align"],
  weight: Text["weight"] = "plain",
): Text => ({
  text: words,
  at,
  size,
  turn: 0,
  align,
  weight,
});

/** The cloth itself: its edges, what is not used of it, how long it is, and the marks. */
const clothGroup = (cloth: LaidCloth, units: Units, { scale, letters }: LayScale): Group => {
  const breadth = (cloth.spread === "flat" ? cloth.width : cloth.width / 2) * scale;
  const length = Math.max(cloth.length, leastLength) * scale;
  const level = (y: number): Path => straight({ x: 0, y }, { x: length, y });
  const selvedges = [cloth.usable.from, cloth.usable.to].map((y) => y * scale).filter((y) => y > 0 && y < breadth);
  const strokes: Stroke[] = [
    { kind: "frame", path: straight({ x: 0, y: 0 }, { x: 0, y: breadth }) },
    { kind: "frame", path: straight({ x: length, y: 0 }, { x: length, y: breadth }) },
    { kind: cloth.spread === "flat" ? "frame" : "fold", path: level(0) },
    { kind: cloth.spread === "tubular" ? "fold" : "frame", path: level(breadth) },
    ...selvedges.map((y): Stroke => ({ kind: "inner-line", path: level(y) })),
  ];
  const [near, far] = edgeNames[cloth.spread];
  const middle = length / 2;
  const top = -marksRoom * letters;
  const bottom = breadth + marksRoom * letters;
  const texts = [
    text(cloth.title, { x: 0, y: top - 3 * letters }, 1.6 * letters, "start", "bold"),
    text(clothInWords(cloth, units), { x: 0, y: top - 1.2 * letters }, letters, "start"),
    text(near, { x: middle, y: -2.2 * letters }, letters, "middle"),
    text(far, { x: middle, y: breadth + 3.2 * letters }, letters, "middle"),
  ];
  const marks = [
    ruler(length, scale, { step: 100, unit: 10, name: "cm", at: -0.2 * letters, toward: top }, letters),
    ruler(length, scale, { step: 254, unit: 25.4, name: "in", at: breadth + 0.2 * letters, toward: bottom }, letters),
  ];
  return {
    of: "title-block",
    name: "cloth",
    words: clothInWords(cloth, units),
    strokes: [...strokes, ...marks.flatMap((each) => each.strokes)],
    texts: [...texts, ...marks.flatMap((each) => each.texts)],
  };
};

// So that an empty cloth still looks like one, mm.
const leastLength = 300;

// Room for the marks beside the cloth, in heights of a letter.
const marksRoom = 3;

const edgeNames = {
  flat: ["selvedge", "selvedge"],
  folded: ["fold", "selvedges"],
  tubular: ["fold", "fold"],
} as const;

interface Ruler {
  /** Between two marks, and what a number counts, mm of cloth. */
  readonly step: number;
  readonly unit: number;
  readonly name: string;
  /** Where the marks begin and which way they go, mm on the paper. */
  readonly at: number;
  readonly toward: number;
}

/** Marks every so much along the cloth, with numbers where there is room for them. */
const ruler = (
  length: number,
  scale: number,
  { step, unit, name, at, toward }: Ruler,
  letters: number,
): { readonly strokes: Stroke[]; readonly texts: Text[] } => {
  const count = Math.floor(length / (step * scale) + 1e-9);
  const way = Math.sign(toward - at);
  const places = Array.from({ length: count + 1 }, (_, i) => i * step);
  // Every number that is not in the way of the one before it.
  const every = Math.ceil((4 * letters) / (step * scale));
  return {
    strokes: places.map((place) => ({
      kind: "frame",
      path: straight({ x: place * scale, y: at }, { x: place * scale, y: at + way * 0.6 * letters }),
    })),
    texts: places.flatMap((place, i) => {
      if (i % every !== 0) return [];
      const words = `${plainNumber(place / unit, 0)}${i === 0 ? ` ${name}` : ""}`;
      const y = at + way * 0.8 * letters + (way > 0 ? 0.8 * letters : 0);
      return [text(words, { x: place * scale, y }, 0.8 * letters, "start")];
    }),
  };
};

const pieceGroup = (laid: LaidPiece, cloth: LaidCloth, { scale, letters, pen }: LayScale): Group => {
  const points = laid.outline.map((p) => times(p, scale));
  const outline = through([...points, points[0]!]);
  const lines = [nameOf(laid, cloth), ...(laid.mirrored ? ["mirrored"] : []), ...(laid.onFold ? ["on the fold"] : [])];
  const label = labelIn(outline, lines, letters);
  const turned = laid.rotation === 0 ? "" : `, turned by ${plainNumber(toDegrees(laid.rotation), 1)} deg`;
  return {
    of: "piece",
    name: `${laid.piece}-${laid.copy}`,
    words: `${lines.join(", ")}${turned}.`,
    strokes: [{ kind: pen, path: outline }, ...grainStrokes(label, points, laid.rotation, cloth.oneWay)],
    texts: lines.map((words, i) => ({
      text: words,
      at: inTurned(label.center, label.turn, {
        x: 0,
        y: label.grain + (1.2 * i + 0.85) * label.size - label.height / 2,
      }),
      size: label.size,
      turn: label.turn,
      align: "middle",
      weight: i === 0 ? "bold" : "plain",
    })),
  };
};

/** A piece's name, numbered where more than one is laid. */
const nameOf = ({ piece, copy }: LaidPiece, { placements }: LaidCloth): string =>
  placements.filter((other) => other.piece === piece).length > 1 ? `${piece} ${copy}` : piece;

/** Where the grain line stands in a piece with the name under it; mm on the paper. */
interface Label {
  readonly center: Point;
  readonly turn: number;
  /** Of the letters, of all together, and of the room for the grain line. */
  readonly size: number;
  readonly height: number;
  readonly grain: number;
}

/** The label where it has most room, level where that will do and else upright, smaller in a small piece. */
const labelIn = (outline: Path, lines: readonly string[], letters: number): Label => {
  const width = Math.max(...lines.map((line) => textWidth(line, letters, "bold"))) + letters;
  const height = (1.2 * lines.length + grainRoom) * letters;
  const level = {
    ...roomiestPlace(outline, [], { width: Math.max(width, grainLength * letters), height, turn: 0 }),
    turn: 0,
  };
  const upright = { ...roomiestPlace(outline, [], { width, height, turn: upward }), turn: upward };
  const { center, room, turn } = level.room >= 1 || level.room >= upright.room ? level : upright;
  const shrunk = Math.min(1, Math.max(smallest, room));
  return { center, turn, size: letters * shrunk, height: height * shrunk, grain: grainRoom * letters * shrunk };
};

// Read from the right, as the side of a page is.
const upward = -Math.PI / 2;

// The grain line over the name, its length and its room, in heights of a letter.
const grainLength = 8;
const grainRoom = 1.2;

// No letter is smaller than this share of the usual ones.
const smallest = 0.4;

/** The grain line by the name, as long as the piece has room: an arrow toward the hem on cloth with one way, else both ways. */
const grainStrokes = (label: Label, outline: readonly Point[], rotation: number, isOneWay: boolean): Stroke[] => {
  const along = bearing(rotation);
  const middle = inTurned(label.center, label.turn, { x: 0, y: (label.grain - label.height) / 2 });
  const longest = times(along, (grainLength / 2) * label.size);
  const half = times(longest, shareInside(middle, longest, outline));
  const [from, to] = [minus(middle, half), plus(middle, half)];
  const tip = 0.6 * label.size;
  return [
    { kind: "grain", path: straight(from, to) },
    { kind: "arrowhead", path: arrowhead(to, along, tip) },
    ...(isOneWay ? [] : [{ kind: "arrowhead", path: arrowhead(from, times(along, -1), tip) } as const]),
  ];
};

/** The largest share of a line's half, a tenth at a time, at which both its ends keep clear of the outline. */
const shareInside = (middle: Point, half: Point, outline: readonly Point[]): number => {
  for (let tenths = 10; tenths > 2; tenths -= 1) {
    const reach = times(half, (tenths / 10) * 1.2);
    if (isInside(plus(middle, reach), outline) && isInside(minus(middle, reach), outline)) return tenths / 10;
  }
  return 0.2;
};
