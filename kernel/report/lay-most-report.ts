// What `lay --most` says: the largest value, what stands against a step more, how everything then lies, and how it was found.
import { clothInWords } from "../cloth/lay/cloth-in-words.ts";
import type { LaidCloth } from "../cloth/lay/lay-of.ts";
import type { MostThatFits, TriedValue } from "../cloth/lay/most-that-fits.ts";
import type { Obstacle } from "../cloth/lay/obstacle.ts";
import { variedInWords } from "../cloth/lay/varied.ts";
import { lengthIn } from "../units.ts";
import type { Units } from "../working.ts";
import { bad, blank, plain, quiet, type SaidLine, strong, warning } from "./said.ts";
import { rangeInWords } from "./varied-words.ts";

/** The answer first. */
export const layMostReport = (found: MostThatFits, units: Units): SaidLine[] => [
  ...answer(found, units),
  ...(found.largest?.lay.cloths ?? []).flatMap((cloth) => [blank, ...clothLines(cloth, units)]),
  blank,
  ...gaps(found, units),
  ...howFound(found, units).map((line): SaidLine => [quiet(line)]),
];

const answer = (found: MostThatFits, units: Units): SaidLine[] => {
  const { varied, largest, next, isStopped } = found;
  const shown = (value: number): string => variedInWords(varied, value, units);
  const what = `fits ${fitsWhat(found, units)}`;
  if (!largest) return [[bad(`No ${varied.name} that was looked at ${what}.`)], ...firstObstacles(found, units)];
  const value = strong(`${varied.name} ${shown(largest.value)}`);
  if (isStopped) return [[value, plain(` ${what}; stopped before it was known whether more does.`)]];
  if (!next) return [[value, plain(`, the end of its range, still ${what}.`)]];
  return [
    [value, plain(` is the most that ${what}.`)],
    [plain(`  At ${shown(next.value)}, a step more: ${inWords(next.obstacle)}`)],
  ];
};

const fitsWhat = ({ atHand }: MostThatFits, units: Units): string =>
  atHand.size === 0
    ? "the width of the cloth"
    : [...atHand].map(([fabric, length]) => `${lengthIn(length, units)} of ${fabric}`).join(" and ");

/** What stands against the least value, and against the largest where that is something else. */
const firstObstacles = ({ varied, tried }: MostThatFits, units: Units): SaidLine[] => {
  const ends = [tried[0], tried.at(-1)].flatMap((each) => each ?? []);
  return ends
    .filter(({ obstacle }, i) => i === 0 || obstacle?.message !== ends[0]!.obstacle?.message)
    .map(({ value, obstacle }) => [plain(`  At ${variedInWords(varied, value, units)}: ${inWords(obstacle)}`)]);
};

const inWords = (obstacle: Obstacle | undefined): string => {
  if (!obstacle) return "";
  const { kind, code, file, line, message } = obstacle;
  return kind === "does-not-work" ? `the recipe does not work (${code}, ${file}:${line}): ${message}` : message;
};

const clothLines = (cloth: LaidCloth, units: Units): SaidLine[] => {
  const { fabric, title, usable, widest } = cloth;
  const room = lengthIn(usable.to - usable.from, units);
  return [
    [strong(`${fabric}, ${title}`)],
    [plain(`  ${clothInWords(cloth, units)}`)],
    ...(widest
      ? [[plain(`  The widest piece, ${widest.piece}, takes ${lengthIn(widest.width, units)} of ${room}.`)]]
      : []),
  ];
};

/** Values below the largest that do not fit, of those that were looked at. */
const gaps = ({ varied, largest, tried }: MostThatFits, units: Units): SaidLine[] => {
  const below = tried.filter(({ value, obstacle }) => obstacle && largest && value < largest.value);
  const [first] = below;
  if (!first) return [];
  const shown = ({ value }: TriedValue): string => variedInWords(varied, value, units);
  const more = below.length > mostShown ? ` and ${below.length - mostShown} more` : "";
  return [
    [
      warning("note"),
      plain(`: not every smaller value fits: not ${below.slice(0, mostShown).map(shown).join(", ")}${more}.`),
    ],
    [plain(`  At ${shown(first)}: ${inWords(first.obstacle)}`)],
    blank,
  ];
};

const mostShown = 5;

/** What was looked at, so that one sees what was not. */
const howFound = (found: MostThatFits, units: Units): string[] => {
  const { varied, step, count, effort, atHand, tried, next } = found;
  const whole = rangeInWords(varied, step, units);
  const between = next ? ", then halved what lies above the largest that fits" : "";
  return [
    tried.length === count
      ? `Looked at every value of ${whole}.`
      : `Looked at ${tried.length} of ${count} values of ${whole}: all over the range${between}. What lies between was not looked at.`,
    ...(atHand.size === 0 ? [] : [`Each was laid by the ${effort} look; a longer one may fit a little more.`]),
  ];
};
