// A garment to be chalked off, in words: how the tape lies, a row for each point and each mark; for terminal and paper alike.
import type { Taped } from "../chalk/chalk-frame.ts";
import { type ChalkedEdge, type ChalkedPiece, chalkedWithin, chalkOff, tapeStep } from "../chalk/chalk-off.ts";
import { chalkOffPicture } from "../chalk/chalk-off-picture.ts";
import type { Garment, Units } from "../working.ts";
import { amountsUnder, caution, type Entry, heading, sentence, table, title, wordsUnder } from "../written/entry.ts";
import { cutWays } from "./cut-ways.ts";
import { onTape, strayInWords } from "./tape-words.ts";
import { counted } from "./verdict.ts";

/** The tables of all pieces. */
export const chalkOffEntries = (garment: Garment, unfit?: string): Entry[] => {
  const { units } = garment;
  const { pieces, open } = chalkOff(garment);
  return [
    title(`${garment.title === "" ? garment.file : garment.title}, chalked off`),
    ...(unfit === undefined ? [] : [caution(unfit)]),
    sentence(
      `Lengths to the nearest ${onTape(tapeStep(units), units)}. As few points as keep the ruled line within ${onTape(chalkedWithin(units), units)} of the true sewing line. Allowances are added outside it with the tape.`,
    ),
    ...pieces.flatMap((piece) => pieceEntries(piece, garment)),
    ...open.map((name) => caution(`${name}: its outline is not closed, so it cannot be chalked off yet.`)),
  ];
};

const pieceEntries = (piece: ChalkedPiece, garment: Garment): Entry[] => {
  const { units } = garment;
  const cuts = cutWays(garment, piece.name);
  return [
    heading(cuts.length === 0 ? piece.name : `${piece.name}: cut ${cuts.join("; ")}`),
    ...notesOn(piece, units),
    chalkOffPicture(piece),
    ...table(
      [
        wordsUnder("edge"),
        amountsUnder("point"),
        ...tapeColumns,
        wordsUnder("from there"),
        amountsUnder("off by"),
        amountsUnder("cut outside"),
      ],
      piece.edges.flatMap((edge) =>
        edge.points.map((point, index) => [
          index === 0 ? edge.name : "",
          String(point.number),
          ...tapedInWords(point, piece, units),
          ...(index === 0 ? onward(edge, units) : ["", "", ""]),
        ]),
      ),
    ),
    ...table(
      [wordsUnder("mark"), wordsUnder("on"), ...tapeColumns],
      piece.marks.map((mark) => [mark.kind, mark.name, ...tapedInWords(mark, piece, units)]),
    ),
  ];
};

const tapeColumns = [wordsUnder(""), amountsUnder("down"), wordsUnder(""), amountsUnder("out")];

const notesOn = ({ frame, edges, off, within }: ChalkedPiece, units: Units): Entry[] => {
  const count = edges.reduce((sum, { points }) => sum + points.length, 0);
  const sharp = off > within ? `, which turns too sharply for the ${onTape(within, units)} wanted` : "";
  return [
    sentence(
      `Down along ${frame.from}, from level with ${frame.level}; ${ways.get(frame.side)!} of it, its top away from you.`,
    ),
    sentence(
      `${counted(count, "point")}, joined by a ruler: at most ${strayInWords(off, units)} from the true line${sharp}.`,
    ),
  ];
};

const ways = new Map<ChalkedPiece["frame"]["side"], string>([
  ["right", "out to the right"],
  ["left", "out to the left"],
  ["both", "left or right"],
]);

/** How far down and how far out, each with its way before it where that is not the usual one. */
const tapedInWords = ({ down, across }: Taped, { frame }: ChalkedPiece, units: Units): string[] => {
  const side = across < 0 ? "left" : "right";
  return [
    down < 0 ? "up" : "",
    onTape(Math.abs(down), units),
    across === 0 || side === frame.side ? "" : side,
    onTape(Math.abs(across), units),
  ];
};

/** Where the edge goes, how far its ruled lines stray, and its allowance. */
const onward = ({ straight, points, to, off, allowance }: ChalkedEdge, units: Units): string[] => [
  straight && points.length === 1 ? `straight to ${to}` : `by points to ${to}`,
  strayInWords(off, units),
  allowance > 0 ? onTape(allowance, units) : "",
];
