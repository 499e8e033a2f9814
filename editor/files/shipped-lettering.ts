// The font that comes with the program, read once and only where something is lettered. A file of its own, because what reads
// fonts is large, and most commands never wait for it.
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { type Face, faceFrom, type Lettering } from "../../kernel/lettering/lettering.ts";

let read: Lettering | undefined;

/** The two faces of DejaVu Sans. */
export const shippedLettering = (): Lettering => {
  read ??= { plain: faceIn("DejaVuSans.ttf"), bold: faceIn("DejaVuSans-Bold.ttf") };
  return read;
};

/** Beside the built program, or in the package that the build takes it from. */
const faceIn = (file: string): Face => {
  const beside = fileURLToPath(new URL(file, import.meta.url));
  const path = existsSync(beside) ? beside : createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${file}`);
  return faceFrom(readFileSync(path));
};
