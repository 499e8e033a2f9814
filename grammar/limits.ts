// Every limit of the language in one place, so that no recipe can crash or hang the program that opens it.

export const limits = {
  /** Bytes of one recipe file. */
  fileBytes: 1024 * 1024,
  /** Brackets and blocks inside one another. */
  nesting: 64,
  /** Letters and digits of one name. */
  wordLetters: 100,
  /** Letters of one text, which may be lettered on a piece, and digits of one number. */
  textLetters: 2000,
  /** Words and signs in one statement, its continued lines included. */
  statementWords: 4000,
  /** Operators and place words in one value: each is one more call on the way down through it. */
  valueSigns: 500,
  /** Files brought in by `use`, and how deep they may bring in one another. */
  usedFiles: 100,
  useDepth: 16,
  /** Lines being worked inside one another: blocks, steps of the recipe's own and used recipes together. */
  linesInLines: 256,
  /** Steps worked in all, those inside `repeat`, `solve`, steps of the recipe's own and used recipes included. */
  steps: 20_000,
  /** Rounds of one `repeat`. */
  rounds: 200,
  pieces: 500,
  /** Names of edges and places of a piece, added up over every step in the record, which keeps the piece as each step left it. */
  recorded: 4_000_000,
  curveSpans: 100_000,
  /** Lines and curves of one piece. */
  pieceSpans: 1000,
  /** Notches, drill holes, labels, darts and the like of one piece. */
  marks: 500,
  /**
   * What working a recipe may cost beside its steps: each value as one, each edge that is measured by sixteen for each of its lines and
   * curves, and each outline that is drawn or altered by the square of theirs, for that is how long these take.
   */
  effort: 2_000_000,
  /** Millimetres from the middle of the table to any point. */
  coordinate: 100_000,
  /** Millimetres of any length that a step is given: nothing on the table is longer than the table. */
  length: 200_000,
  /** Millimetres of a seam or hem allowance: a matter of centimetres, and the widest hem of a stage cloak is far below this. */
  allowance: 1000,
  /** Solves inside one another, and halvings of one. */
  solveDepth: 2,
  halvings: 60,
  /** Findings listed for one file; the rest are counted. */
  findings: 200,
  /** Pages that a pattern is printed on where it is put together of small ones: nobody puts together more. */
  pages: 500,
} as const;
