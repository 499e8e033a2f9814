// A number of a line as a param of the recipe, with a range to turn it in.
import type { Dial } from "../dials.ts";
import { dials } from "../dials.ts";
import { edited } from "../text-edit.ts";
import type { WorkedText } from "../worked-text.ts";
import { type Written, type WrittenLine, written } from "../written.ts";
import type { CodeAction } from "./code-action.ts";
import { freeName } from "./free-name.ts";
import { outermost } from "./outermost.ts";

/** The number at the cursor, or the only one that is selected, given a name. */
export const extractParam = (worked: WorkedText, from: number, to: number): CodeAction[] => {
  const number = dials(worked).filter((dial) => dial.from <= to && from <= dial.to);
  const [dial, more] = number;
  if (!dial || more || dial.isParam) return [];
  const read = written(worked);
  const line = read.lines.findLast((each) => each.from <= dial.from);
  if (!line || !isMovable(worked, line, dial)) return [];
  const top = outermost(line);
  const { source } = worked;
  const at = placeForParam(source.text, read, top);
  if (at === undefined) return [];
  const name = freeName(read, nameFrom(dial.label));
  const end = source.text.startsWith("\r\n", source.text.indexOf("\n") - 1) ? "\r\n" : "\n";
  const number_ = source.text.slice(dial.from, dial.to);
  const inUnit = (value: number): string => `${value}${unitWithSpace(dial.unit)}`;
  const isBlankAbove = !top.verb || read.lines.every((each) => each.verb !== "param" || each.from >= top.from);
  const param = `param ${name} = ${number_} from ${inUnit(dial.least)} to ${inUnit(dial.most)} "${dial.label}"${end}${isBlankAbove ? end : ""}`;
  const edits = [
    { file: source.file, from: at, to: at, text: param },
    { file: source.file, from: dial.from, to: dial.to, text: name },
  ];
  const start = edited(source.text, edits).indexOf(name, at);
  return [
    {
      title: `Make ${number_} a param`,
      kind: "refactor.extract",
      edits,
      select: { from: start, to: start + name.length },
    },
  ];
};

/** Whether a name may stand instead: not where a number is counted or declares something itself. */
const isMovable = (worked: WorkedText, line: WrittenLine, { from, unit, value }: Dial): boolean => {
  const word = line.words.find((each) => each.from === from);
  const { verb } = outermost(line);
  const isDeclaring = ["chalkline", "measure", "param", "size", "units", "recipe"].includes(verb);
  // A bare 0 may be a length or an angle, and a param is one of them.
  return (
    word?.means === "Number" && !isDeclaring && !(unit === "" && value === 0) && worked.outcome.tree.lines.length > 0
  );
};

/** Behind the last param above a line of the recipe, else right above that line. */
const placeForParam = (text: string, { lines }: Written, top: WrittenLine): number | undefined => {
  const param = lines.findLast(({ verb, around, from }) => verb === "param" && !around && from < top.from);
  if (!param) return text.lastIndexOf("\n", top.from - 1) + 1;
  const end = text.indexOf("\n", param.to);
  return end < 0 ? undefined : end + 1;
};

const unitWithSpace = (unit: string): string => (unit === "" || unit === "%" ? unit : ` ${unit}`);

/** "extend-hem by" as a name. */
const nameFrom = (label: string): string => label.replace(/[^\p{L}\d]+/gu, "-").replace(/^[-\d]+|-+$/g, "") || "amount";
