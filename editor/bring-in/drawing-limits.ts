// Every limit of what is brought in from outside, so that no drawing can crash or hang the program that reads it. How far a
// point may lie and how many pieces there may be is the recipe's own limit (grammar/limits.ts).

export const drawingLimits = {
  /** Bytes of one file. */
  fileBytes: 64 * 1024 * 1024,
  /** Elements of an SVG, those that `use` draws again counted again; entities of a DXF, those of its blocks likewise. */
  elements: 200_000,
  /** Elements of an SVG inside one another. */
  depth: 100,
  /** Blocks placed inside blocks, and uses inside uses. */
  placedInPlaced: 8,
  /** Group codes of a DXF file. */
  tags: 3_000_000,
  /** Straight and curved stretches in all. */
  spans: 100_000,
  /** Lines that hang together, closed or open. */
  lines: 20_000,
  /** How often it is asked whether a line lies inside an outline. */
  insideAsked: 300_000,
  /** Degree of a spline. */
  degree: 10,
  /** Letters of one text. */
  letters: 400,
  /** Texts that one piece gets as labels; the rest are told as left out. */
  labels: 40,
  /** Rows of a table of points. */
  rows: 20_000,
} as const;
