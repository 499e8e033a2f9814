// Every format that a garment is written in as text. What makes a file whole is asked of each in its own way.
import { SaxesParser } from "saxes";
import { cuttingRoomDxf } from "../../../kernel/exchange/cutting-room.ts";
import { type Format, formats } from "../../../kernel/export/formats.ts";
import { plainlyTold } from "../figures-told.ts";
import { Broken, holds, type Target } from "../target.ts";
import { drawnOnce, workedOnce } from "../worked-once.ts";

/** The target of one format of a drawing. */
export const exporting = (format: Format): Target => ({
  name: `write ${format.name}`,
  run({ text }) {
    const written = format.write(drawnOnce(text).sheet);
    plainlyTold(written, text, format.name);
    if (format.ending.endsWith(".svg")) isXml(written);
    if (format.ending.endsWith(".dxf")) isTagged(written);
    if (format.ending.endsWith(".plt")) isPenCode(written);
  },
});

const cuttingRoom: Target = {
  name: "write cutting-room dxf",
  run({ text }) {
    const written = cuttingRoomDxf([{ base: true, garment: workedOnce(text).garment }]);
    plainlyTold(written, text, "cutting-room dxf");
    isTagged(written);
  },
};

export const exportingAll: readonly Target[] = [...formats.map(exporting), cuttingRoom];

/** Throws where a reader of XML 1.0 (saxes, which is strict) does not take it. */
export const isXml = (written: string): void => {
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw new Broken("the SVG is no XML", error.message);
  });
  parser.write(written).close();
};

/** A DXF is pairs of lines, a whole number and its value, and ends in EOF (Autodesk, DXF reference, "About the DXF format"; from memory). */
export const isTagged = (written: string): void => {
  const lines = written.replace(/\r?\n$/, "").split(/\r?\n/);
  holds(lines.length % 2 === 0, "the DXF has half a tag");
  for (let index = 0; index < lines.length; index += 2)
    holds(/^ *\d+$/.test(lines[index]!), "a tag of the DXF has no number", `line ${index + 1}: ${lines[index]}`);
  holds(lines.at(-1) === "EOF", "the DXF does not end");
};

/** Two letters and numbers for each order, and nothing that is none (HP-GL/2 reference guide; from memory). Lettering is drawn, not sent. */
const isPenCode = (written: string): void => {
  const orders = [...written].every((letter) => letter >= " " || "\n\r\u0003\u001b".includes(letter));
  holds(orders, "a control character goes to the plotter");
};
