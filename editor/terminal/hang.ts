// chalkline hang: where the fullness of a garment hangs, as a table for people or as JSON for programs.
import { hangFindings, type PanelFinding } from "../../kernel/cloth/hang/hang-findings.ts";
import { hangSheet, hungRounds } from "../../kernel/cloth/hang/hang-sheet.ts";
import { figureInWords, hangSvg } from "../../kernel/cloth/hang/hang-svg.ts";
import type { Hung, HungPiece } from "../../kernel/cloth/hang/hung.ts";
import { settledGarment } from "../../kernel/cloth/hang/settled.ts";
import type { Evaluated } from "../../kernel/evaluate.ts";
import { hangJson } from "../../kernel/report/hang-json.ts";
import { jsonText } from "../../kernel/report/json.ts";
import { blank, plain, quiet, type SaidLine, strong, warning } from "../../kernel/report/said.ts";
import { aligned, amount, words } from "../../kernel/report/table.ts";
import { lengthIn } from "../../kernel/units.ts";
import type { Units } from "../../kernel/working.ts";
import { saveInto } from "../files/save.ts";
import { cannotWrite } from "./cannot-write.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal } from "./told.ts";
import type { Given } from "./worked.ts";
import { workFile } from "./worked-file.ts";

export interface HangOptions extends Given {
  readonly root?: string;
  readonly form: "long" | "json";
  /** The folder that the pictures go to; none are drawn where it is not given. */
  readonly out?: string;
}

/** Hangs one recipe; findings go to the other stream, so that the table stays a table. */
export const hang = async (path: string, options: HangOptions, out: Paper, err: Paper): Promise<number> => {
  const file = await workFile(path, options, err);
  if (!file) return exitCode.unreadable;
  const { outcome, told } = file;
  const hung = await settledGarment(outcome.garment);
  if (options.out !== undefined) {
    try {
      saveInto(options.out, [{ name: pictureName, content: hangSvg(hangSheet(outcome)) }]);
    } catch (error) {
      err.say([...told, blank, ...refusal(cannotWrite(error, options.out))]);
      return exitCode.unreadable;
    }
  }
  if (options.form === "json") out.print(jsonText(hangJson(hung, hungRounds(outcome), hangFindings(outcome.garment))));
  else out.say(hungReport(hung, [...panelLines(outcome), ...roundLines(outcome)], outcome.garment.units));
  if (options.out !== undefined && options.form === "long")
    out.say([blank, [plain(`Wrote ${pictureName} into `), strong(options.out)]]);
  err.say(options.form === "json" ? told : [blank, ...told]);
  return codeFor(outcome);
};

const pictureName = "hanging.svg";

/** Which panel carries how much of the fullness, in which third of its hem, and by how much the hem dips. */
const panelLines = ({ garment }: Evaluated): SaidLine[] => {
  const panels = hangFindings(garment).rounds.flatMap((round) =>
    round.panels.filter(({ slack }) => slack >= leastTold),
  );
  return panels.length === 0 ? [] : aligned(panels.map((panel) => panelRow(panel, garment.units)));
};

const panelRow = ({ piece, share, beside, thirds, dip }: PanelFinding, units: Units) => [
  words(piece),
  amount(`${Math.round(share * 100)} % of the fullness`),
  words(
    `from ${beside[0]} to ${beside[1]} in thirds: ${thirds.map((each) => lengthIn(Math.round(each), units)).join(", ")}`,
  ),
  words(dip.most < leastDip ? "" : `the hem dips ${lengthIn(Math.round(dip.most), units)}`),
];

// Less slack than this, mm, is nothing to tell of.
const leastTold = 10;

// A hem that dips by less, mm, is level to anybody's eye.
const leastDip = 3;

/** A sentence for each round: how many folds there are, and how wide its hem stands. */
const roundLines = (outcome: Evaluated): SaidLine[] =>
  hungRounds(outcome).flatMap(({ figures }) =>
    figures.flatMap((figure) =>
      figure.from === "below" ? [[plain(`  ${figureInWords(figure, outcome.garment.units)}`)]] : [],
    ),
  );

const hungReport = ({ pieces, assumptions }: Hung, rounds: readonly SaidLine[], units: Units): SaidLine[] => [
  [strong("As it hangs")],
  ...(pieces.length === 0
    ? [[plain("  No piece has a hem to hang.")]]
    : aligned(pieces.map((each) => row(each, units)))),
  ...pieces.flatMap(({ name, warnings }) => warnings.map((text) => [warning(`  ${name}: ${text}`)])),
  ...(rounds.length === 0 ? [] : [blank, ...rounds]),
  ...(pieces.length === 0
    ? []
    : [blank, [quiet("Taken for granted:")], ...assumptions.map((text) => [quiet(`  ${text}`)])]),
];

const row = ({ name, hem }: HungPiece, units: Units) => [
  words(name),
  amount(`${lengthIn(hem.flat, units)} of hem as cut`),
  amount(`hangs ${lengthIn(hem.hung, units)} wide`),
  hem.slack < leastTold ? words("and lies flat") : amount(`${lengthIn(hem.slack, units)} of slack`),
];
