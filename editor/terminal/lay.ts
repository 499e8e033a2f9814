// chalkline lay: how the pieces lie on the cloth and how much of it to buy, for people or as JSON, with drawings to cut by.

import { join } from "node:path";
import { setImmediate } from "node:timers/promises";
import { clothInWords } from "../../kernel/cloth/lay/cloth-in-words.ts";
import { estimateOf } from "../../kernel/cloth/lay/estimate.ts";
import { layDrawing, lifeSize, tenth } from "../../kernel/cloth/lay/lay-drawing.ts";
import { type Asked, type LaidCloth, type Lay, layOf } from "../../kernel/cloth/lay/lay-of.ts";
import { svg } from "../../kernel/export/svg.ts";
import { jsonText } from "../../kernel/report/json.ts";
import { layJson } from "../../kernel/report/lay-json.ts";
import { bad, blank, plain, quiet, type SaidLine, strong } from "../../kernel/report/said.ts";
import { aligned, amount, words } from "../../kernel/report/table.ts";
import { lengthIn } from "../../kernel/units.ts";
import type { Garment, Units } from "../../kernel/working.ts";
import { readAmount } from "../files/amount.ts";
import { drawingNames } from "../files/drawing-names.ts";
import { type FileToSave, makeFolder, saveAll } from "../files/save.ts";
import { cannotWrite } from "./cannot-write.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal } from "./told.ts";
import type { Given } from "./worked.ts";
import { workFile } from "./worked-file.ts";

export interface LayOptions extends Given {
  readonly root?: string;
  readonly cloth: Asked["spread"];
  readonly width?: string;
  readonly selvedge: string;
  readonly tilt: string;
  readonly effort: Asked["effort"];
  readonly try: string;
  readonly form: "long" | "json";
  /** The folder that the drawings go to; none are drawn where it is not given. */
  readonly out?: string;
}

/** Lays one recipe; findings go to the other stream, so that what is to be bought stands alone. */
export const lay = async (path: string, options: LayOptions, out: Paper, err: Paper): Promise<number> => {
  const asked = askedOf(options);
  if (typeof asked === "string") {
    err.say(refusal(asked));
    return exitCode.unreadable;
  }
  const file = await workFile(path, options, err);
  if (!file) return exitCode.unreadable;
  const { outcome, told } = file;
  const { units } = outcome.garment;
  const laid = await laidUntilStopped(outcome.garment, asked, err);
  const files = options.out === undefined ? [] : await drawn(laid, units);
  if (options.out !== undefined) {
    const folder = options.out;
    try {
      makeFolder(folder);
      saveAll(files.map(({ path: name, content }) => ({ path: join(folder, name), content })));
    } catch (error) {
      err.say([...told, blank, ...refusal(cannotWrite(error, folder))]);
      return exitCode.unreadable;
    }
  }
  if (options.form === "json") out.print(jsonText(layJson(laid)));
  else out.say([...layReport(laid, units), ...writtenLines(files, options.out)]);
  err.say(options.form === "json" ? told : [blank, ...told]);
  return isWhole(laid) ? codeFor(outcome) : exitCode.errors;
};

const isWhole = ({ cloths, none }: Lay): boolean =>
  none.length === 0 && cloths.every(({ tooWide, notLaid }) => tooWide.length + notLaid.length === 0);

/** What was asked for, or a sentence about what cannot be. */
const askedOf = (options: LayOptions): Asked | string => {
  const width = options.width === undefined ? undefined : lengthGiven(options.width);
  if (options.width !== undefined && !(width !== undefined && width > 0))
    return `--width takes a length, such as 150cm or 45in, and not ${options.width}.`;
  const selvedge = lengthGiven(options.selvedge);
  if (selvedge === undefined || selvedge < 0)
    return `--selvedge takes a length, such as 1cm or 0cm, and not ${options.selvedge}.`;
  const tilt = readAmount(options.tilt);
  if (tilt?.kind !== "angle" || tilt.value < 0 || tilt.value > mostTilt)
    return `--tilt takes an angle from 0deg to 10deg, and not ${options.tilt}.`;
  const seed = Number(options.try);
  if (!Number.isInteger(seed) || seed < 0) return `--try takes a whole number, and not ${options.try}.`;
  const { cloth: spread, effort } = options;
  return { spread, selvedge, tilt: tilt.value, effort, seed, ...(width !== undefined && { width }) };
};

// Further off the grain a piece hangs askew, radians.
const mostTilt = Math.PI / 18;

const lengthGiven = (text: string): number | undefined => {
  const value = readAmount(text);
  return value?.kind === "length" ? value.value : undefined;
};

// So many looks are taken between two chances to stop, and of so much is told how far it is.
const looksAtATime = 32;
const toldEvery = 0.1;

/** The lay when all effort is spent, or what there is when Ctrl-C is pressed. */
const laidUntilStopped = async (garment: Garment, asked: Asked, err: Paper): Promise<Lay> => {
  const stop = { isAsked: false };
  const onStop = (): void => {
    stop.isAsked = true;
  };
  process.once("SIGINT", onStop);
  const search = layOf(garment, asked);
  let told = toldEvery;
  try {
    for (let look = 1; ; look += 1) {
      const { done, value } = search.next();
      if (done) return value;
      if (look % looksAtATime === 0) await setImmediate();
      if (asked.effort === "long" && value.done >= told) {
        told += toldEvery;
        err.say([[quiet(`${Math.round(100 * value.done)} %: ${soFar(value.best, garment.units)}`)]]);
      }
      if (!stop.isAsked) continue;
      err.say([[quiet("Stopped; this is the best lay so far.")]]);
      return value.best;
    }
  } finally {
    process.removeListener("SIGINT", onStop);
  }
};

const soFar = ({ cloths }: Lay, units: Units): string =>
  cloths.map(({ fabric, length }) => `${fabric} ${lengthIn(length, units)}`).join(", ");

const layReport = ({ cloths, none }: Lay, units: Units): SaidLine[] => {
  const parts = [
    ...cloths.map((cloth) => clothReport(cloth, units)),
    ...none.map(({ because }): SaidLine[] => [[bad(because)]]),
  ];
  if (parts.length === 0) return [[plain("The recipe has no `cut` line, so that there is nothing to lay.")]];
  return parts.flatMap((part, i) => (i === 0 ? part : [blank, ...part]));
};

const clothReport = (cloth: LaidCloth, units: Units): SaidLine[] => {
  const { fabric, title, area, usable, spread } = cloth;
  const layers = spread === "flat" ? 1 : 2;
  const counts = new Map<string, number>();
  for (const { piece } of cloth.placements) counts.set(piece, (counts.get(piece) ?? 0) + 1);
  return [
    [strong(`${fabric}, ${title}`)],
    [plain(`  ${clothInWords(cloth, units)}`)],
    ...aligned([...counts].map(([piece, count]) => [words(piece), amount(`${count}`)])),
    ...cloth.tooWide.flatMap(({ message, hint }) => [[bad(`  ${message}`)], [plain(`    ${hint}`)]]),
    ...cloth.notLaid.map(({ because }) => [bad(`  ${because}`)]),
    ...(counts.size === 0 ? [] : rules(area, layers * (usable.to - usable.from), units)),
  ];
};

/** What the rule of area says, so that one sees what it is worth, and what is left to add. */
const rules = (area: number, width: number, units: Units): SaidLine[] => {
  const { least, most } = estimateOf(area, width);
  const range = `${lengthIn(least, units)} to ${lengthIn(most, units)}`;
  return [
    [quiet(`  By the rule of area, 60 to 85 % of the cloth used, it would be ${range}.`)],
    [quiet(`  ${patternedCloth}`)],
  ];
};

// Common practice, no source.
const patternedCloth = "Stripes and checks are not matched: for such cloth add one repeat for each main piece.";

/** Every cloth as SVG and PDF at a tenth of the size and as PDF at life size. */
const drawn = async ({ cloths }: Lay, units: Units): Promise<FileToSave[]> => {
  // What writes PDF is large, and few lays are drawn.
  const { layPdf } = await import("../files/lay-pdf.ts");
  const names = drawingNames(cloths.map(({ fabric }) => fabric));
  const files: FileToSave[] = [];
  for (const cloth of cloths) {
    const small = layDrawing(cloth, units, tenth);
    const name = `lay-${names.get(cloth.fabric)!}`;
    files.push({ path: `${name}.svg`, content: svg(small) });
    files.push({ path: `${name}.pdf`, content: await layPdf(small) });
    files.push({ path: `${name}-life-size.pdf`, content: await layPdf(layDrawing(cloth, units, lifeSize)) });
  }
  return files;
};

const writtenLines = (files: readonly FileToSave[], folder: string | undefined): SaidLine[] =>
  folder === undefined
    ? []
    : [blank, [plain(`Wrote ${files.map(({ path }) => path).join(", ")} into `), strong(folder)]];
