// A cutting card in words: headings, sentences and tables, for terminal and paper alike.
import { lengthIn, plainNumber } from "../units.ts";
import { amountsUnder, caution, type Entry, heading, sentence, table, title, wordsUnder } from "../written/entry.ts";
import { differenceIn } from "./amounts.ts";
import type { CardField, CardPiece, CuttingCard } from "./cutting-card.ts";

/** The card as entries, in the order in which a workroom needs them. */
export const cardEntries = (card: CuttingCard): Entry[] => [
  title(card.title),
  ...(card.unfit === undefined ? [] : [caution(card.unfit)]),
  ...card.fields.map((field) => sentence(`${field.name}: ${field.text}`)),
  ...draftedWith(card),
  ...cloths(card),
  ...pieces(card),
  ...seams(card),
  ...measures(card),
  ...steps(card),
  heading("Cautions"),
  ...card.cautions.map((text) => sentence(text)),
];

const draftedWith = ({ choices, body, version, units }: CuttingCard): Entry[] => [
  ...(choices.length === 0 ? [] : [sentence(`Drafted with ${choices.join(", ")}.`)]),
  ...(body.length === 0 ? [] : [sentence(`Body: ${body.map(fieldInWords).join(", ")}.`)]),
  sentence(
    `${version === undefined ? "" : `Recipe version ${version}. `}All measures in ${units === "in" ? "inches" : units}.`,
  ),
];

const fieldInWords = ({ name, text }: CardField): string => `${name} ${text}`;

const cloths = ({ cloths: all, units }: CuttingCard): Entry[] => [
  heading("Cloth"),
  ...(all.length === 0 ? [sentence("The recipe names no cloth.")] : []),
  ...table(
    [wordsUnder("name"), wordsUnder("cloth"), amountsUnder("width"), amountsUnder("weight"), wordsUnder("nap")],
    all.map(({ name, title: cloth, width, weight, oneWay }) => [
      name,
      cloth,
      width === undefined ? "" : lengthIn(width, units),
      weight === undefined ? "" : `${plainNumber(weight, 1)} g/m2`,
      oneWay ? "one way: all pieces the same way up" : "",
    ]),
  ),
];

const pieces = ({ pieces: all }: CuttingCard): Entry[] => [
  heading("Cut"),
  ...table(
    [wordsUnder("piece"), wordsUnder("cut"), wordsUnder("written on it")],
    all.map(({ name, cuts, labels }: CardPiece) => [
      name,
      cuts.length === 0 ? "the recipe does not say" : cuts.join("; "),
      labels.join("; "),
    ]),
  ),
];

const seams = ({ seams: all, units }: CuttingCard): Entry[] => [
  heading("Sew, in the order of the recipe"),
  ...(all.length === 0 ? [sentence("The recipe tells no seams.")] : []),
  ...table(
    [
      amountsUnder(""),
      wordsUnder("edges"),
      amountsUnder("long"),
      wordsUnder("to"),
      amountsUnder("long"),
      amountsUnder("longer by"),
      amountsUnder("ease"),
      wordsUnder("verdict"),
    ],
    all.map(({ first, second, firstLength, secondLength, difference, ease, verdict }, index) => [
      String(index + 1),
      first.join(", "),
      lengthIn(firstLength, units),
      second.join(", "),
      lengthIn(secondLength, units),
      differenceIn(difference, units),
      ease === 0 ? "" : lengthIn(ease, units),
      verdicts.get(verdict) ?? "does not fit",
    ]),
  ),
];

const verdicts = new Map<string | undefined, string>([
  [undefined, "not judged"],
  ["pass", "fits"],
  ["accepted", "accepted"],
]);

const measures = ({ measures: all, units }: CuttingCard): Entry[] =>
  all.length === 0
    ? []
    : [
        heading("Finished measures, as sewn"),
        ...table(
          [
            wordsUnder("piece"),
            wordsUnder("edge"),
            wordsUnder("part"),
            amountsUnder("sewn"),
            amountsUnder("in the garment"),
            amountsUnder("before gathers or darts"),
            amountsUnder("allowance"),
          ],
          all.map(({ piece, edge, role, sewn, cut, allowance, times }, index) => [
            all[index - 1]?.piece === piece ? "" : piece,
            edge,
            role,
            lengthIn(sewn, units),
            times === 1 ? "" : lengthIn(sewn * times, units),
            cut === undefined ? "" : lengthIn(cut, units),
            allowance === undefined ? "" : lengthIn(allowance, units),
          ]),
        ),
      ];

const steps = ({ steps: all }: CuttingCard): Entry[] =>
  all.length === 0
    ? []
    : [
        heading("How it was altered"),
        ...table(
          [wordsUnder("piece"), wordsUnder("what was done")],
          all.map(({ piece, words }, index) => [index > 0 && all[index - 1]?.piece === piece ? "" : piece, words]),
        ),
      ];
