// One finding on one line, in the form that editors read: file:line:column: severity code: message.
import type { Diagnostic } from "../../grammar/diagnostic.ts";
import { positionIn, type SourceTexts } from "../../grammar/source.ts";
import { plain, type SaidLine } from "./said.ts";

/** "skirt.chalk:14:3: error seam-length: The side of front is 0.3 cm longer than the side of back." */
export const shortFinding = (
  { code, severity, where, message, times = 1 }: Diagnostic,
  texts: SourceTexts,
): SaidLine => {
  const source = texts.get(where.file);
  const column = source ? positionIn(source, where.from).column : 1;
  const often = times === 1 ? "" : ` (${times} times)`;
  return [plain(`${where.file}:${where.line}:${column}: ${severity} ${code}: ${message}${often}`)];
};
