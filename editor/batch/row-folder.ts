// The folder that the drawings of one body go to, good on every system, and another for every row.

/** Longer names are cut, so that no system refuses them; a letter takes up to four of 255 bytes. */
const mostLetters = 40;

/** `000012-usher-3` for row 12 of the table: folders stand in the order of the rows, and two bodies of one name apart. */
export const rowFolder = (row: number, name: string): string => {
  // Letters that look like two on one system and like one on another are made one.
  const plain = name.normalize("NFC").replace(/[^\p{L}\p{M}\p{N}]+/gu, "-");
  const short = [...plain]
    .slice(0, mostLetters)
    .join("")
    .replace(/^-+|-+$/g, "");
  const number = String(row).padStart(6, "0");
  return short === "" ? number : `${number}-${short}`;
};

/** Whether a folder was made for a row. */
export const isRowFolder = (name: string): boolean => /^\d{6,}(?:-[\p{L}\p{M}\p{N}-]+)?$/u.test(name);
