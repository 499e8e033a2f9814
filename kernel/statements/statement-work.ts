// Which code works which statement. What a statement looks like stands in grammar/statements.ts.
import type { Line } from "../../grammar/tree.ts";
import type { Working } from "../evaluate.ts";
import { ifLine, repeatLine } from "./branches.ts";
import { acceptLine, checkLine } from "./checks.ts";
import { baseLine, fabricLine, letLine, measureLine, paramLine, sizeLine } from "./declarations.ts";
import { chalklineLine, recipeLine, unitsLine } from "./heading.ts";
import { stepLine } from "./own-step.ts";
import { pieceLine } from "./piece.ts";
import { solveLine } from "./solve.ts";
import { useLine } from "./use.ts";

export type StatementWork = (line: Line, working: Working) => void;

export const statementWork: ReadonlyMap<string, StatementWork> = new Map([
  ["chalkline", chalklineLine],
  ["recipe", recipeLine],
  ["units", unitsLine],
  ["measure", measureLine],
  ["param", paramLine],
  ["let", letLine],
  ["size", sizeLine],
  ["base", baseLine],
  ["fabric", fabricLine],
  ["use", useLine],
  ["step", stepLine],
  ["piece", pieceLine],
  ["if", ifLine],
  ["repeat", repeatLine],
  ["solve", solveLine],
  ["check", checkLine],
  ["accept", acceptLine],
]);
