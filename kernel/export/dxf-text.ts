// Words in a DXF file: ASCII only, one line, no control, so that no label can end a line and begin an entity of its own.

/** A text as a DXF reader shows it again: other characters as \U+XXXX, at most 250 bytes; controls become spaces or go. */
export const dxfText = (text: string): string => {
  const signs = [...text.replace(/[\t\n\r]+/g, " ").replace(unreadable, "")];
  const written: string[] = [];
  let bytes = 0;
  for (const index of signs.keys()) {
    const next = escaped(signs, index);
    // What is left out is told by the dots, and a sign is never cut in two.
    if (bytes + next.length > mostBytes - dots.length && bytes + lengthOf(signs, index) > mostBytes)
      return [...written, dots].join("").trim();
    written.push(next);
    bytes += next.length;
  }
  return written.join("").trim();
};

/** Names of layers and blocks by what they stand for: A to Z, digits, hyphen, underscore, at most 31; no two alike. */
export const dxfNames = (names: Iterable<string>): ReadonlyMap<string, string> => {
  const taken = new Set<string>();
  const given = new Map<string, string>();
  for (const name of new Set(names)) {
    // The reference for release 12 allows capitals, digits and three signs; what is no letter of these becomes one sign.
    const short = name.toUpperCase().replace(/[^A-Z0-9-]+/g, "_") || "_";
    let [free, number] = [short.slice(0, mostInName), 1];
    while (taken.has(free)) {
      number += 1;
      free = `${short.slice(0, mostInName - String(number).length - 1)}_${number}`;
    }
    taken.add(free);
    given.set(name, free);
  }
  return given;
};

// Release 12 reads lines of 255 bytes.
const mostBytes = 250;
const mostInName = 31;
const dots = "...";

// Controls, halves of characters, signs that stand for none, and those that turn the direction of reading.
const unreadable = /[\p{Cc}\p{Cs}\p{Noncharacter_Code_Point}\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu;

/** How many bytes the signs from an index on take, or more than all that is allowed. */
const lengthOf = (signs: readonly string[], from: number): number => {
  let bytes = 0;
  for (let index = from; index < signs.length && bytes <= mostBytes; index += 1) bytes += escaped(signs, index).length;
  return bytes;
};

/** A sign as it is written between its neighbours. */
const escaped = (signs: readonly string[], index: number): string => {
  const [before, sign, next] = [signs[index - 1], signs[index]!, signs[index + 1]];
  // A caret makes a control out of the letter behind it, and one with a space is a caret (DXF reference, "Control characters").
  if (sign === "^") return "^ ";
  // Two percent signs begin a code (%%d is a degree sign); parted they are what they were.
  if (sign === "%" && before === "%") return " %";
  if (sign === "\\" && (next === "U" || next === "M")) return unicode(sign.charCodeAt(0));
  const code = sign.codePointAt(0)!;
  if (code < 0x7f) return sign;
  // Four digits reach no further than U+FFFF; what lies beyond is shown as lost rather than as two other signs.
  return unicode(code > 0xffff ? 0xfffd : code);
};

const unicode = (code: number): string => `\\U+${code.toString(16).toUpperCase().padStart(4, "0")}`;
