// A recipe as a link. The text stands behind the #, which browsers keep to themselves: no server ever sees it.
import { deflateSync, inflateSync, strFromU8, strToU8 } from "fflate";
import { limits } from "../../../grammar/limits.ts";
import type { FileText } from "../worker/spoken.ts";

// Longer links are cut off by programs that pass them on.
const longestLink = 30_000;

/** The part of a link behind the #, for a recipe and the recipes it uses; undefined when it would be too long to pass on. */
export const linkOf = (files: readonly FileText[]): string | undefined => {
  const packed = deflateSync(strToU8(JSON.stringify(files.map(({ file, text }) => [file, text]))), { level: 9 });
  const link = `recipe=${base64url(packed)}`;
  return link.length > longestLink ? undefined : link;
};

/** The recipes in a link, the one to open first; a sentence when the link was cut off or is none of ours. */
export const readLink = (packed: string): readonly FileText[] | { readonly problem: string } => {
  const broken = { problem: "The link does not hold a whole recipe: it may have been cut off on its way." };
  try {
    const bytes = fromBase64url(packed);
    const unpacked = inflateSync(bytes, { out: new Uint8Array(limits.fileBytes * 4) });
    const read: unknown = JSON.parse(strFromU8(unpacked));
    if (!Array.isArray(read) || read.length === 0 || read.length > limits.usedFiles + 1) return broken;
    const files = read.map((entry: unknown) => {
      if (!Array.isArray(entry) || typeof entry[0] !== "string" || typeof entry[1] !== "string") return undefined;
      return { file: entry[0], text: entry[1] };
    });
    return files.every((file) => file !== undefined) ? files : broken;
  } catch {
    return broken;
  }
};

const base64url = (bytes: Uint8Array): string => {
  let signs = "";
  for (const byte of bytes) signs += String.fromCharCode(byte);
  return btoa(signs).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
};

const fromBase64url = (text: string): Uint8Array =>
  Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (sign) => sign.charCodeAt(0));
