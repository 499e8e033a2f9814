// What is said of a batch at its end: how its rows came out, what was found most often, and how to go on.
import { bad, good, plain, quiet, type SaidLine, strong, warning } from "../../kernel/report/said.ts";
import { aligned, amount, words } from "../../kernel/report/table.ts";
import { counted } from "../../kernel/report/verdict.ts";
import { wrapped } from "../../kernel/report/wrapped.ts";
import { tableNames } from "./results.ts";
import { commonest, rowsIn, type Tally } from "./tally.ts";

const mostCodes = 8;

/** The closing summary. */
export const batchTold = (file: string, folder: string, tally: Tally, drawings: boolean, width: number): SaidLine[] => {
  const { clean, warnings, errors, notWorked } = countsOf(tally);
  const rows = [
    [words("clean", clean > 0 ? "good" : "plain"), amount(String(clean))],
    [words("with warnings", warnings > 0 ? "warning" : "plain"), amount(String(warnings))],
    [words("with errors", errors > 0 ? "bad" : "plain"), amount(String(errors))],
    [words("not worked", notWorked > 0 ? "bad" : "plain"), amount(String(notWorked))],
  ];
  const codes = commonest(tally, mostCodes);
  const findings =
    codes.length === 0
      ? []
      : [
          [strong("Commonest findings")],
          ...aligned(
            codes.map(([code, count]) => [
              words(code),
              amount(String(count)),
              words(count === 1 ? "row" : "rows", "quiet"),
            ]),
          ),
        ];
  const named = tally.notWorked.flatMap((message) =>
    wrapped(message, width - 4).map((line, index) => [plain(`${index === 0 ? "  " : "    "}${line}`)]),
  );
  const more = notWorked - tally.notWorked.length;
  return [
    [strong(file), plain(`: ${counted(rowsIn(tally), "row")} of the table, into `), strong(folder)],
    ...aligned(rows),
    ...findings,
    ...(notWorked === 0
      ? []
      : [
          [strong("Rows that could not be worked")],
          ...named,
          ...(more > 0 ? [[quiet(`  and ${more} more, in ${tableNames.findings}`)]] : []),
        ]),
    [
      plain("Wrote "),
      strong(tableNames.measures),
      plain(", "),
      strong(tableNames.findings),
      ...(drawings ? [plain(" and "), strong("drawings/"), plain(", a folder a row")] : []),
    ],
  ];
};

/** How long it took, and how to go on where it is not at its end. */
export const paceTold = (rows: number, seconds: number): SaidLine => [
  quiet(
    `${counted(rows, "row")} in ${seconds.toFixed(1)} s${seconds > 0 && rows > 0 ? `, ${(rows / seconds).toFixed(1)} a second` : ""}`,
  ),
];

export const countsOf = ({ rows }: Tally) => ({
  clean: rows.get("clean") ?? 0,
  warnings: rows.get("warnings") ?? 0,
  errors: rows.get("errors") ?? 0,
  notWorked: rows.get("not worked") ?? 0,
});

/** What is said of a batch that was stopped; `anew` is whether it was begun with --anew. */
export const stoppedTold = (done: number, of: number, anew: boolean): SaidLine[] => [
  [warning("stopped"), plain(`: ${done} of ${counted(of, "row")} ${done === 1 ? "is" : "are"} done, and kept.`)],
  [plain(`  The same command${goesOn(anew)}`)],
];

export const goesOnTold = (done: number, of: number): SaidLine => [
  good("going on"),
  plain(`: ${done} of ${counted(of, "row")} were done before.`),
];

/** What is said of a batch that could not be brought to its end. */
export const failedTold = (problem: string, done: number, of: number, anew: boolean): SaidLine[] => [
  [bad("error"), plain(`: ${problem}`)],
  [
    plain(
      `  ${done} of ${counted(of, "row")} ${done === 1 ? "is" : "are"} done, and kept; the same command${goesOn(anew)}`,
    ),
  ],
];

// With --anew it would throw away what it has just called kept.
const goesOn = (anew: boolean): string => `${anew ? ", without --anew," : " again"} goes on with the next row.`;
