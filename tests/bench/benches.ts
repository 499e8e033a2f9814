// The files of the bench that measure the kernel alone, in the order of the table.
import { arcLengthBench } from "./arc-length.ts";
import { cuttingLineBench } from "./cutting-line.ts";
import { evaluateBench } from "./evaluate.ts";
import { parseBench } from "./parse.ts";
import type { Bench } from "./row.ts";
import { startBench } from "./start.ts";
import { tilesBench } from "./tiles.ts";

export { isMet, ratioOf } from "./row.ts";

export const benches: readonly Bench[] = [
  startBench,
  parseBench,
  arcLengthBench,
  cuttingLineBench,
  evaluateBench,
  tilesBench,
];
