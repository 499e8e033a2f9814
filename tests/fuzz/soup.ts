// Words and signs of the language in any order: what no person would write, and a file that was damaged may hold.
import fc from "fast-check";
import { statementWords } from "../../grammar/statements.ts";
import { placeWords } from "../../grammar/tokens.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { plainRecipe } from "./seed-recipes.ts";
import type { Subject } from "./target.ts";

const signs = [
  "=",
  "(",
  ")",
  "{",
  "}",
  ",",
  ".",
  "--",
  "-",
  "+",
  "*",
  "/",
  "<",
  ">",
  "<=",
  "<>",
  "\n",
  "\n",
  "\n",
  "# c\n",
];
const values = [
  "0",
  "1",
  "3 cm",
  "-2 in",
  "90 deg",
  "50%",
  "1 1/2",
  '"x"',
  "a",
  "b",
  "p",
  "a.b",
  "(1 cm, 2 cm)",
  "length(a)",
];

// Every word that stands in a sentence of a step as it is written: taken from the examples, which show all of them.
const exampleWords = [...new Set(vocabulary.steps.flatMap(({ example }) => example.match(/[a-z][a-z-]*/g) ?? []))];
const exampleLines = vocabulary.steps.flatMap(({ example }) => example.split("\n").map((line) => `${line}\n`));

const word = fc.oneof(
  fc.constantFrom(...signs),
  fc.constantFrom(...values),
  fc.constantFrom(...statementWords, ...placeWords, ...exampleWords),
  fc.string({ unit: "binary", maxLength: 4 }),
);

/** Recipes of words in any order, or of lines of the manual's examples in any order. */
export const soup: fc.Arbitrary<Subject> = fc
  .oneof(
    fc.array(word, { maxLength: 80 }).map((words) => words.join(" ")),
    fc.array(fc.constantFrom(...exampleLines), { maxLength: 40 }).map((lines) => lines.join("")),
  )
  .map((text) => ({ from: plainRecipe, text: `chalkline 1\nunits cm\n${text}` }));
