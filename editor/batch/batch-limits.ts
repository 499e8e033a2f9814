// How much of anything one piece of a batch may hold, so that nothing that comes over a queue can fill a machine.

export const batchLimits = {
  /** Rows handed out at a time: enough that handing out costs nothing, few enough that a kill loses little. */
  rows: 100,
  /** Fields of a row, and columns of a table. */
  fields: 2000,
  /** Letters of one field, name, sentence or option. */
  letters: 10_000,
  /** Used recipes, by all the ways in which they are written. */
  used: 1000,
  /** Letters of all recipes together. */
  recipeLetters: 8 * 1024 * 1024,
  /** Letters of what is handed out, and of what comes back, drawings included. */
  questionLetters: 16 * 1024 * 1024,
  answerLetters: 128 * 1024 * 1024,
  /** Measures that each row is answered with. */
  headings: 100_000,
  /** Findings of one row: as many as are listed for a recipe, and one for each measure that was not taken. */
  findings: 3000,
  /** Drawings of one row. */
  files: 3000,
} as const;
