// The cloth over the values of a param as a curve: what the lay takes as a line with dots, what is bought for it as steps with
// squares, and a cross where a value cannot be cut. Told apart by form alone, so that a copy in black and white will do.
import type { Drawing, Group, Stroke, Text } from "../../drawing/drawing.ts";
import { wrapped } from "../../drawing/lettering.ts";
import { paperAround } from "../../drawing/paper.ts";
import { arcSpans } from "../../geometry/arc.ts";
import { type Path, straight, through } from "../../geometry/path.ts";
import type { Point } from "../../geometry/point.ts";
import { lengthIn, plainNumber } from "../../units.ts";
import type { Units } from "../../working.ts";
import { boughtInWords } from "./cloth-in-words.ts";
import { type ClothPoint, type OverValues, pointsOf } from "./over-values.ts";
import { roundStep, type Varied, variedInWords } from "./varied.ts";

/** One cloth over all values, on paper that fits a page. */
export const overDrawing = (over: OverValues, fabric: string, title: string, units: Units): Drawing => {
  const points = pointsOf(over, fabric, units);
  const frame = frameOf(over.varied, points, units);
  const words = inWords(over.varied, points, units);
  const groups: Group[] = [
    {
      of: "title-block",
      name: "cloth",
      words,
      strokes: [...axes(frame), ...curves(points, frame)],
      texts: [...headline(over, title, points, units), ...marks(over.varied, frame, units), ...refusals(points, frame)],
    },
  ];
  return { title: `${title}: cloth over ${over.varied.name}`, words, paper: paperAround(groups), groups };
};

// The field of the curve on the paper, and the height of letters, mm.
const wide = 150;
const high = 90;
const letters = 4;

/** Where values and lengths stand on the paper. */
interface Frame {
  readonly place: (value: number, length: number) => Point;
  /** The values and lengths, in the unit of the param and in mm, that have a mark at the axes. */
  readonly values: readonly number[];
  readonly lengths: readonly number[];
}

const frameOf = ({ least, most, ...varied }: Varied, points: readonly ClothPoint[], units: Units): Frame => {
  const longest = Math.max(0, ...points.map(({ cloth }) => cloth?.lengthToBuy ?? 0));
  const step = lengthSteps[units === "in" ? "in" : "cm"].find((each) => each * mostMarks >= longest) ?? longest;
  const top = Math.max(1, Math.ceil(longest / step - 1e-9)) * step;
  const span = most > least ? most - least : 1;
  const by = roundStep({ ...varied, least, most }, units, mostMarks);
  const first = Math.ceil(least / by - 1e-9);
  return {
    place: (value, length) => ({ x: (wide * (value - least)) / span, y: high - (high * length) / top }),
    values: Array.from({ length: Math.floor(most / by + 1e-9) - first + 1 }, (_, i) => (first + i) * by),
    lengths: Array.from({ length: Math.round(top / step) + 1 }, (_, i) => i * step),
  };
};

const mostMarks = 10;

// From one mark of length to the next, mm: as cloth is sold, and round numbers of it.
const lengthSteps = {
  cm: [100, 200, 500, 1000, 2000, 5000, 10_000],
  in: [1, 2, 4, 8, 16, 40, 80].map((eighths) => (eighths * 914.4) / 8),
} as const;

const axes = ({ place, values, lengths }: Frame): Stroke[] => {
  const [left, right] = [0, wide];
  return [
    {
      kind: "frame",
      path: through([
        { x: left, y: 0 },
        { x: left, y: high },
        { x: right, y: high },
      ]),
    },
    ...values.map((value): Stroke => {
      const { x } = place(value, 0);
      return { kind: "frame", path: straight({ x, y: high }, { x, y: high + tick }) };
    }),
    ...lengths.flatMap((length): Stroke[] => {
      const y = high + place(0, length).y - place(0, 0).y;
      const mark: Stroke = { kind: "frame", path: straight({ x: left, y }, { x: left - tick, y }) };
      return length === 0 ? [mark] : [mark, { kind: "before", path: straight({ x: left, y }, { x: right, y }) }];
    }),
  ];
};

// Marks at the axes, mm.
const tick = 1.5;

const isCut = ({ cloth, because }: ClothPoint): boolean => cloth !== undefined && because.length === 0;

/** Neighbouring values that can be cut, so that no line runs over one that cannot. */
const runsOf = (points: readonly ClothPoint[]): ClothPoint[][] => {
  const runs: ClothPoint[][] = [[]];
  for (const point of points) {
    if (isCut(point)) runs.at(-1)!.push(point);
    else if (runs.at(-1)!.length > 0) runs.push([]);
  }
  return runs.filter((run) => run.length > 0);
};

const curves = (points: readonly ClothPoint[], { place }: Frame): Stroke[] => {
  const taken = ({ value, cloth }: ClothPoint): Point => place(value, cloth!.length);
  const bought = ({ value, cloth }: ClothPoint): Point => place(value, cloth!.lengthToBuy);
  const cut = points.filter(isCut);
  return [
    ...runsOf(points).flatMap((run): Stroke[] =>
      run.length < 2
        ? []
        : [
            { kind: "inner-line", path: through(run.map(taken)) },
            { kind: "sewing-line", path: through(run.map(bought)) },
          ],
    ),
    ...cut.map((point): Stroke => ({ kind: "arrowhead", path: dot(taken(point)) })),
    ...cut.map((point): Stroke => ({ kind: "notch", path: square(bought(point)) })),
    ...points
      .filter((point) => !isCut(point))
      .flatMap(({ value }) => crossAt({ x: place(value, 0).x, y: high - 4 * mark }))
      .map((path): Stroke => ({ kind: "notch", path })),
  ];
};

// Half the size of a dot, a square and a cross, mm.
const mark = 1.1;

const dot = (center: Point): Path => arcSpans(center, { x: center.x + mark, y: center.y }, 2 * Math.PI);

const square = ({ x, y }: Point): Path =>
  through([
    { x: x - mark, y: y - mark },
    { x: x + mark, y: y - mark },
    { x: x + mark, y: y + mark },
    { x: x - mark, y: y + mark },
    { x: x - mark, y: y - mark },
  ]);

const crossAt = ({ x, y }: Point): Path[] => [
  straight({ x: x - mark, y: y - mark }, { x: x + mark, y: y + mark }),
  straight({ x: x - mark, y: y + mark }, { x: x + mark, y: y - mark }),
];

const text = (words: string, at: Point, size: number, align: Text["align"], turn = 0): Text => ({
  text: words,
  at,
  size,
  turn,
  align,
  weight: "plain",
});

const headline = (over: OverValues, title: string, points: readonly ClothPoint[], units: Units): Text[] => {
  const { name } = over.varied;
  const width = points.find(({ cloth }) => cloth)?.cloth?.width;
  const wideCloth = width === undefined ? title : `${title}, ${lengthIn(width, units)} wide`;
  const hasCross = points.some((point) => !isCut(point));
  const key = [
    "Squares and dashes: to buy, as shops sell it. Dots: what the lay takes, from the first piece to the last.",
    ...(hasCross ? ["A cross: it cannot be cut; why is written over it."] : []),
    `Each dot is laid by the ${over.effort} look; a longer look may find a little less.`,
  ].flatMap((line) => wrapped(line, 0.8 * letters, "plain", wide + 2 * letters));
  return [
    {
      ...text(`${wideCloth}: cloth over ${name}`, { x: 0, y: -2.5 * letters }, 1.4 * letters, "start"),
      weight: "bold",
    },
    ...key.map((line, i) => text(line, { x: 0, y: high + (5.6 + 1.2 * i) * letters }, 0.8 * letters, "start")),
  ];
};

const marks = (varied: Varied, { place, values, lengths }: Frame, units: Units): Text[] => {
  const level = high + tick + letters;
  const note = varied.note === "" ? "" : ` (${varied.note})`;
  return [
    ...values.map((value) =>
      text(variedInWords(varied, value, units), { x: place(value, 0).x, y: level }, 0.8 * letters, "middle"),
    ),
    ...lengths.map((length) =>
      text(boughtInWords(length, units), { x: -2 * tick, y: place(0, length).y + 0.3 * letters }, 0.8 * letters, "end"),
    ),
    text(`${varied.name}${note}`, { x: wide / 2, y: level + 1.6 * letters }, letters, "middle"),
    text("length of cloth", { x: -4.5 * letters, y: high / 2 }, letters, "middle", -Math.PI / 2),
  ];
};

/** Why a value cannot be cut, in few words over the first cross of each kind. */
const refusals = (points: readonly ClothPoint[], { place }: Frame): Text[] => {
  const said = new Set<string>();
  return points
    .filter((point) => !isCut(point))
    .flatMap(({ value, cloth }) => {
      const [wide_] = cloth?.tooWide ?? [];
      const words = wide_ ? `${wide_.piece} too wide` : cloth ? "not all pieces drawn" : "does not work";
      if (said.has(words)) return [];
      said.add(words);
      const at = { x: place(value, 0).x + 0.3 * letters, y: high - 6 * mark };
      return [text(words, at, 0.8 * letters, "start", -Math.PI / 2)];
    });
};

const inWords = (varied: Varied, points: readonly ClothPoint[], units: Units): string =>
  points
    .map((point) => {
      const at = `${varied.name} ${variedInWords(varied, point.value, units)}`;
      const { cloth } = point;
      if (!cloth || !isCut(point)) return `At ${at} it cannot be cut: ${point.because.join(" ")}`;
      return `At ${at} buy ${boughtInWords(cloth.lengthToBuy, units)}: the lay takes ${lengthIn(cloth.length, units)}, ${plainNumber(100 * cloth.efficiency, 1)} % of the cloth used.`;
    })
    .join(" ");
