// Text out of a recipe or a file name, made harmless for a terminal, and how wide it stands there.

/**
 * The text on one line, every sign that could steer a terminal or turn the direction of reading replaced by U+FFFD.
 * A sign for a sign, so that carets under the text stay where they belong.
 */
export const readable = (text: string): string => text.replace(/\t/g, " ").replace(steering, "\ufffd");

// Controls of both sets, line and paragraph separators, halves of characters, and the marks that turn the reading direction
// (Unicode Standard Annex 9, section 2).
const steering = /[\p{Cc}\p{Cs}\u2028\u2029\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** How many columns a readable text takes: letters of East Asian scripts take two, marks on a letter none. */
export const columnsOf = (text: string): number => {
  let columns = 0;
  for (const sign of text) columns += columnsOfSign(sign);
  return columns;
};

const columnsOfSign = (sign: string): number => {
  if (/[\p{M}\u200b-\u200d\u2060\ufeff]/u.test(sign)) return 0;
  return wide.test(sign) ? 2 : 1;
};

// The blocks that Unicode Standard Annex 11 gives as wide, and pictures.
const wide =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\ua960-\ua97c\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1b000}-\u{1b2ff}\u{1f300}-\u{1f64f}\u{1f900}-\u{1f9ff}\u{20000}-\u{3fffd}]/u;
