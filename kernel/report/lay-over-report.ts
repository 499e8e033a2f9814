// What `lay --over` says: for each cloth a row a value, with a bar as long as what is to be bought.
import { boughtInWords } from "../cloth/lay/cloth-in-words.ts";
import { type ClothPoint, clothsOver, type OverValues, pointsOf } from "../cloth/lay/over-values.ts";
import { variedInWords } from "../cloth/lay/varied.ts";
import { lengthIn, plainNumber } from "../units.ts";
import type { Units } from "../working.ts";
import { bad, blank, plain, quiet, type SaidLine, strong } from "./said.ts";
import { aligned, amount, type Cell, empty, words } from "./table.ts";
import { rangeInWords } from "./varied-words.ts";

/** The cloths one below the other. */
export const layOverReport = (over: OverValues, units: Units): SaidLine[] => {
  const cloths = clothsOver(over);
  const said = [
    [
      plain(
        `Cloth over ${rangeInWords(over.varied, over.step, units)}; each value is laid by the ${over.effort} look.`,
      ),
    ],
  ];
  if (cloths.length === 0) return [...said, blank, ...nothing(over, units)];
  return [
    ...said,
    ...cloths.flatMap(({ fabric, title }) => [blank, ...clothTable(over, fabric, title, units)]),
    ...(over.isStopped ? [blank, [quiet("Stopped; larger values were not looked at.")]] : []),
  ];
};

const nothing = (over: OverValues, units: Units): SaidLine[] => {
  const reasons = over.rows.flatMap(({ value, lay, failures }) =>
    [...failures.map(({ message }) => message), ...lay.none.map(({ because }) => because)].map(
      (because): SaidLine => [bad(`${over.varied.name} ${variedInWords(over.varied, value, units)}: ${because}`)],
    ),
  );
  return reasons.length > 0 ? reasons : [[plain("The recipe has no `cut` line, so that there is nothing to lay.")]];
};

const clothTable = (over: OverValues, fabric: string, title: string, units: Units): SaidLine[] => {
  const points = pointsOf(over, fabric, units);
  const first = points.find(({ cloth }) => cloth)!.cloth!;
  const across = first.usable.to - first.usable.from;
  const longest = Math.max(...points.map(({ cloth }) => cloth?.lengthToBuy ?? 0));
  const head = [over.varied.name, "to buy", "taken", "used", "widest piece"].map((text) => words(text, "quiet"));
  return [
    [
      strong(`${fabric}, ${title}`),
      plain(`, ${lengthIn(first.width, units)} wide, ${lengthIn(across, units)} of it to lay on`),
    ],
    ...aligned([head, ...points.flatMap((point) => rowsOf(point, over, longest, units))]),
  ];
};

const rowsOf = ({ value, cloth, because }: ClothPoint, over: OverValues, longest: number, units: Units): Cell[][] => {
  const at = amount(variedInWords(over.varied, value, units));
  const widest = cloth?.widest;
  const wide = widest ? words(`${widest.piece} ${lengthIn(widest.width, units)}`) : empty;
  if (!cloth || because.length > 0) {
    const why = because.length === 0 ? ["not cut here"] : because.slice(0, mostReasons);
    return why.map((text, i) =>
      i === 0
        ? [at, words("none", "bad"), empty, empty, wide, words(text, "bad")]
        : [empty, empty, empty, empty, empty, words(text, "bad")],
    );
  }
  return [
    [
      at,
      amount(boughtInWords(cloth.lengthToBuy, units)),
      amount(lengthIn(cloth.length, units)),
      amount(`${plainNumber(100 * cloth.efficiency, 1)} %`),
      wide,
      words("#".repeat(Math.round((longestBar * cloth.lengthToBuy) / longest)), "quiet"),
    ],
  ];
};

// In signs; the whole table stays within the width of a usual terminal.
const longestBar = 24;

// More reasons than this are the same one told for several pieces.
const mostReasons = 3;
