// What a command writes to a terminal, by way of the paper that all commands write on.
import { Writable } from "node:stream";
import { paperOn } from "../../editor/terminal/paper.ts";
import type { SaidLine } from "../../kernel/report/said.ts";
import { plainlyTold } from "./figures-told.ts";
import { holds } from "./target.ts";

/** Throws at a word that stands for no value, and at a sign that would steer the terminal (C0 and DEL, ISO/IEC 6429; from memory). */
export const toldOnScreen = (lines: readonly SaidLine[], recipe: string, what: string): void => {
  let written = "";
  const stream = new Writable({ decodeStrings: false });
  stream.write = (text: string | Uint8Array): boolean => {
    written += String(text);
    return true;
  };
  paperOn(stream as NodeJS.WriteStream, false).say(lines);
  plainlyTold(written, recipe, what);
  const steers = [...written].find((letter) => (letter < " " && letter !== "\n") || letter === "\u007f");
  holds(steers === undefined, `${what}: a control character goes to the screen`, steers?.codePointAt(0)?.toString(16));
};
