// What `stress` found, for people and for programs.
import type { StressFailure, StressReport } from "../stress/stress.ts";
import { plainNumber } from "../units.ts";
import type { Scalar } from "../value.ts";
import type { Json } from "./json.ts";
import { bad, blank, good, plain, quiet, type SaidLine, strong } from "./said.ts";
import { wrapped } from "./wrapped.ts";

/** The sum of it, then each kind of failure with the command that shows it. */
export const stressReport = (file: string, report: StressReport, width: number): SaidLine[] => [
  ...report.failures.flatMap((failure) => [...failureLines(file, failure, width), blank]),
  [plain(`${file}: `), ...sum(report)],
];

const sum = ({ tried, passed, outOfRange, failures }: StressReport): SaidLine => {
  const failed = tried - passed - outOfRange;
  return [
    plain(`${tried} tried, `),
    failed === 0 ? good(`${passed} passed`) : plain(`${passed} passed`),
    ...(outOfRange === 0 ? [] : [plain(`, ${outOfRange} out of range`)]),
    ...(failed === 0
      ? []
      : [plain(", "), bad(`${failed} failed in ${failures.length === 1 ? "1 way" : `${failures.length} ways`}`)]),
  ];
};

const failureLines = (
  file: string,
  { check, on, times, origin, values, message }: StressFailure,
  width: number,
): SaidLine[] => [
  [
    bad("fails"),
    plain(" "),
    strong(check),
    plain(` on ${on}`),
    quiet(`  ${times === 1 ? "once" : `${times} times`}, first with ${origin}`),
  ],
  ...wrapped(message, width - 4).map((text) => [plain(`  ${text}`)]),
  [quiet("  See it: "), plain(`chalkline check ${file}${settings(values)}`)],
];

const settings = (values: ReadonlyMap<string, Scalar>): string =>
  [...values].map(([name, value]) => ` --set ${name}=${written(value)}`).join("");

/** A value as the command line takes it: 92.5cm, 20deg, 0.5. */
const written = ({ kind, value }: Scalar): string => {
  if (kind === "length") return `${plainNumber(value / 10, 3)}cm`;
  if (kind === "angle") return `${plainNumber((value * 180) / Math.PI, 3)}deg`;
  if (kind === "weight") return `${plainNumber(value, 2)}gsm`;
  return plainNumber(value, 4);
};

/** The same as data, in mm and degrees. */
export const stressJson = ({ tried, passed, outOfRange, failures }: StressReport): Json => ({
  schema: 1,
  tried,
  passed,
  outOfRange,
  failures: failures.map(({ check, on, times, origin, values, found, wanted, file, line, message }) => ({
    check,
    on,
    times,
    origin,
    values: Object.fromEntries(
      [...values].map(([name, { kind, value }]) => [name, kind === "angle" ? (value * 180) / Math.PI : value]),
    ),
    found,
    wanted,
    file,
    line,
    message,
  })),
});
