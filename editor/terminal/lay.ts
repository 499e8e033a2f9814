// chalkline lay: how the pieces lie on the cloth and how much of it to buy, for people or as JSON, with drawings to cut by.

import { clothInWords } from "../../kernel/cloth/lay/cloth-in-words.ts";
import { estimateOf } from "../../kernel/cloth/lay/estimate.ts";
import { layDrawing, lifeSize, tenth } from "../../kernel/cloth/lay/lay-drawing.ts";
import { type Asked, type LaidCloth, type Lay, layOf } from "../../kernel/cloth/lay/lay-of.ts";
import { isWhole } from "../../kernel/cloth/lay/obstacle.ts";
import { overDrawing } from "../../kernel/cloth/lay/over-drawing.ts";
import { clothsOver, type OverValues } from "../../kernel/cloth/lay/over-values.ts";
import { rungsOf } from "../../kernel/cloth/lay/rungs.ts";
import { fineStep, roundStep, type Varied } from "../../kernel/cloth/lay/varied.ts";
import { svg } from "../../kernel/export/svg.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { type Json, jsonText } from "../../kernel/report/json.ts";
import { layJson } from "../../kernel/report/lay-json.ts";
import { layMostReport } from "../../kernel/report/lay-most-report.ts";
import { layOverReport } from "../../kernel/report/lay-over-report.ts";
import { layMostJson, layOverJson } from "../../kernel/report/lay-varied-json.ts";
import { bad, blank, plain, quiet, type SaidLine, strong } from "../../kernel/report/said.ts";
import { aligned, amount, words } from "../../kernel/report/table.ts";
import { lengthIn } from "../../kernel/units.ts";
import type { Garment, Units } from "../../kernel/working.ts";
import { drawingNames } from "../files/drawing-names.ts";
import { saveInto } from "../files/save.ts";
import type { WrittenFile } from "../files/written-files.ts";
import { cannotWrite } from "./cannot-write.ts";
import { chalk } from "./known.ts";
import { atHandAsked, type LayOptions, layAsked, variedAsked } from "./lay-asked.ts";
import { mostThatFits } from "./lay-most.ts";
import { overValues } from "./lay-over.ts";
import { withPackers } from "./packers.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal } from "./told.ts";
import { type Stop, searched, untilCtrlC } from "./until-stopped.ts";
import { type WorkedFile, workFile } from "./worked-file.ts";

/** Lays one recipe; findings go to the other stream, so that what is to be bought stands alone. */
export const lay = async (path: string, options: LayOptions, out: Paper, err: Paper): Promise<number> => {
  const asked = layAsked(options);
  if (typeof asked === "string") return refused(asked, err);
  const file = await workFile(path, options, err);
  if (!file) return exitCode.unreadable;
  const answer =
    options.most !== undefined
      ? await mostAnswer(options.most, options, asked, file)
      : options.over !== undefined
        ? await overAnswer(options.over, options, asked, file)
        : await layAnswer(file, asked, err);
  if (typeof answer === "string") return refused(answer, err);
  const files = options.out === undefined ? [] : await answer.drawn();
  if (options.out !== undefined) {
    const folder = options.out;
    try {
      saveInto(folder, files);
    } catch (error) {
      err.say([...file.told, blank, ...refusal(cannotWrite(error, folder))]);
      return exitCode.unreadable;
    }
  }
  if (options.form === "json") out.print(jsonText(answer.json));
  else out.say([...answer.report, ...writtenLines(files, options.out)]);
  err.say(options.form === "json" ? file.told : [blank, ...file.told]);
  // What was told last is about the recipe, and would be read as if all were well.
  if (answer.code !== codeFor(file.outcome)) err.say([[bad("Not all of it lies on the cloth: see above.")]]);
  return answer.code;
};

const refused = (problem: string, err: Paper): number => {
  err.say(refusal(problem));
  return exitCode.unreadable;
};

/** What was found, in every form. */
interface Answer {
  readonly report: readonly SaidLine[];
  readonly json: Json;
  readonly code: number;
  readonly drawn: () => Promise<WrittenFile[]>;
}

const layAnswer = async ({ outcome }: WorkedFile, asked: Asked, err: Paper): Promise<Answer> => {
  const { garment } = outcome;
  const laid = await untilCtrlC((stop) => laidUntil(stop, garment, asked, err));
  return {
    report: layReport(laid, garment.units),
    json: layJson(laid),
    code: isWhole(laid) ? codeFor(outcome) : exitCode.errors,
    drawn: () => drawn(laid, garment.units),
  };
};

const mostAnswer = async (
  name: string,
  options: LayOptions,
  asked: Asked,
  file: WorkedFile,
): Promise<Answer | string> => {
  const { garment } = file.outcome;
  const range = variedAsked(name, options, file.outcome);
  if (typeof range === "string") return `--most: ${range}`;
  const atHand = atHandAsked(options.length, garment);
  if (typeof atHand === "string") return atHand;
  const { varied, step = fineStep(varied, garment.units) } = range;
  const found = await withPackers(atHand.size === 0 ? 0 : usualStrips, (packers) =>
    mostThatFits(varied, step, asked, atHand, workingWith(file, varied), packers),
  );
  return {
    report: layMostReport(found, garment.units),
    json: layMostJson(found),
    code: found.largest ? exitCode.clean : exitCode.errors,
    drawn: async () => (found.largest ? drawn(found.largest.lay, garment.units) : []),
  };
};

const overAnswer = async (
  name: string,
  options: LayOptions,
  asked: Asked,
  file: WorkedFile,
): Promise<Answer | string> => {
  const { units } = file.outcome.garment;
  const range = variedAsked(name, options, file.outcome);
  if (typeof range === "string") return `--over: ${range}`;
  const { varied, step = roundStep(varied, units, usualSteps) } = range;
  const rungs = rungsOf(varied.least, varied.most, step, options.from === undefined ? 0 : varied.least);
  if (rungs.count > mostRows) return `--by: that makes ${rungs.count} values, and no more than ${mostRows} are laid.`;
  const over = await withPackers(rungs.count, (packers) =>
    overValues(varied, step, rungs, asked, workingWith(file, varied), packers),
  );
  const canBeCut = over.rows.some(({ lay: each, failures }) => failures.length === 0 && isWhole(each));
  return {
    report: layOverReport(over, units),
    json: layOverJson(over),
    code: canBeCut ? exitCode.clean : exitCode.errors,
    drawn: async () => overDrawn(over, units),
  };
};

// About so many strips are packed until a range is halved down to a step.
const usualStrips = 20;

// A range that nobody divides is divided into about so many steps; and a table of more rows than this nobody reads.
const usualSteps = 12;
const mostRows = 200;

/** Works the recipe with another value of what is varied. */
const workingWith =
  ({ source, circumstances }: WorkedFile, { name, kind, of }: Varied) =>
  (value: number): Outcome => {
    const given = kind === "param" ? "params" : "measures";
    const values = new Map(circumstances[given]).set(name, { kind: of, value });
    return chalk.work(source, { ...circumstances, [given]: values });
  };

// Of so much is told how far a long look is.
const toldEvery = 0.1;

/** The lay when all effort is spent, or what there is when Ctrl-C is pressed. */
const laidUntil = async (stop: Stop, garment: Garment, asked: Asked, err: Paper): Promise<Lay> => {
  let told = toldEvery;
  const found = await searched(layOf(garment, asked), stop, ({ done, best }) => {
    if (asked.effort !== "long" || done < told) return;
    told += toldEvery;
    err.say([[quiet(`${Math.round(100 * done)} %: ${soFar(best, garment.units)}`)]]);
  });
  if ("end" in found) return found.end;
  err.say([[quiet("Stopped; this is the best lay so far.")]]);
  return found.stoppedAt.best;
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
const drawn = async ({ cloths }: Lay, units: Units): Promise<WrittenFile[]> => {
  // What writes PDF and reads fonts is large, and few lays are drawn.
  const [{ layPdf }, { shippedLettering }] = await Promise.all([
    import("../files/lay-pdf.ts"),
    import("../files/shipped-lettering.ts"),
  ]);
  const names = drawingNames(cloths.map(({ fabric }) => fabric));
  const files: WrittenFile[] = [];
  for (const cloth of cloths) {
    const small = layDrawing(cloth, units, tenth);
    const name = `lay-${names.get(cloth.fabric)!}`;
    files.push({ name: `${name}.svg`, content: svg(small, shippedLettering()) });
    files.push({ name: `${name}.pdf`, content: await layPdf(small) });
    files.push({ name: `${name}-life-size.pdf`, content: await layPdf(layDrawing(cloth, units, lifeSize)) });
  }
  return files;
};

/** The curve of every cloth. */
const overDrawn = async (over: OverValues, units: Units): Promise<WrittenFile[]> => {
  const { shippedLettering } = await import("../files/shipped-lettering.ts");
  const cloths = clothsOver(over);
  const names = drawingNames(cloths.map(({ fabric }) => `${fabric}-over-${over.varied.name}`));
  return cloths.map(({ fabric, title }) => ({
    name: `lay-${names.get(`${fabric}-over-${over.varied.name}`)!}.svg`,
    content: svg(overDrawing(over, fabric, title, units), shippedLettering()),
  }));
};

const writtenLines = (files: readonly WrittenFile[], folder: string | undefined): SaidLine[] =>
  folder === undefined
    ? []
    : [blank, [plain(`Wrote ${files.map(({ name }) => name).join(", ")} into `), strong(folder)]];
