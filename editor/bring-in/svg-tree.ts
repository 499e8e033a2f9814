// The elements of an SVG file, read by saxes, which expands no entity of the file's own and fetches nothing. Declarations of a
// document type are refused: only they could make a small file large.
import { SaxesParser } from "saxes";
import { drawingLimits } from "./drawing-limits.ts";
import { Refused } from "./refused.ts";

export interface SvgElement {
  /** Without its prefix; empty for elements of other languages. */
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: SvgElement[];
  /** The line it begins at, counted from 1. */
  readonly line: number;
  /** The letters in it and in its children, for elements that hold text. */
  words: string;
}

/** The outermost element; what cannot be read is refused with its line. */
export const svgTree = (text: string): SvgElement => {
  // Read for its positions, so that a fault is told with its line.
  const parser = new SaxesParser({ xmlns: false, position: true });
  const open: SvgElement[] = [];
  let root: SvgElement | undefined;
  let count = 0;
  let line = 1;

  parser.on("error", (error) => {
    const [, at, words] = /^(?:.*?:)?(\d+):\d+: ([\s\S]*)$/.exec(error.message) ?? [];
    const said = `This is not well-formed XML: ${(words ?? error.message).replace(/\.$/, "")}.`;
    throw new Refused(said, { line: Number(at ?? parser.line) });
  });
  parser.on("doctype", (doctype) => {
    if (doctype.includes("["))
      throw new Refused("The file declares entities or elements of its own, and no drawing needs them.", {
        line: parser.line,
        hint: "Save it as plain SVG.",
      });
  });
  parser.on("opentagstart", () => {
    line = parser.line;
  });
  parser.on("opentag", (tag) => {
    count += 1;
    if (count > drawingLimits.elements)
      throw new Refused(`The file holds more than ${drawingLimits.elements} elements.`, { line });
    if (open.length >= drawingLimits.depth)
      throw new Refused(`Elements stand more than ${drawingLimits.depth} deep in one another.`, { line });
    const attributes = new Map(Object.entries(tag.attributes).map(([name, value]) => [name, String(value)]));
    const element: SvgElement = { name: ownName(tag.name), attributes, children: [], line, words: "" };
    if (root === undefined) root = element;
    else open.at(-1)?.children.push(element);
    open.push(element);
  });
  parser.on("closetag", () => {
    const closed = open.pop();
    const around = open.at(-1);
    if (closed && around && holdsWords(around) && holdsWords(closed)) around.words += closed.words;
  });
  const take = (letters: string): void => {
    const inner = open.at(-1);
    if (inner && holdsWords(inner) && inner.words.length < mostLetters) inner.words += letters.slice(0, mostLetters);
  };
  parser.on("text", take);
  parser.on("cdata", take);

  // In parts, so that a limit is reached long before the whole file is read.
  for (let at = 0; at < text.length; at += part) parser.write(text.slice(at, at + part));
  parser.close();
  if (root === undefined) throw new Refused("There is nothing in this file.");
  if (root.name !== "svg") throw new Refused(`The outermost element is no svg.`, { line: root.line });
  return root;
};

const part = 65_536;
const mostLetters = 4 * drawingLimits.letters;

const ownName = (name: string): string => {
  const [prefix, local] = name.includes(":") ? name.split(":", 2) : ["", name];
  return prefix === "" || prefix === "svg" ? local! : "";
};

const holdsWords = ({ name }: SvgElement): boolean => name === "text" || name === "tspan" || name === "textPath";
