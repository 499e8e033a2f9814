// The manual's examples, each a small garment that one step is used in, with one line of another put in or one taken out: so
// that every step is met with pieces it was not made for.
import fc from "fast-check";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { plainRecipe } from "./seed-recipes.ts";
import type { Subject } from "./target.ts";

const examples = vocabulary.steps.map(({ example }) => example);
const lines = examples.flatMap((example) => example.split("\n")).filter((line) => line.startsWith("  "));

/** An example with numbers changed and lines of others put in. */
export const mixedExample: fc.Arbitrary<Subject> = fc
  .tuple(
    fc.constantFrom(...examples),
    fc.array(fc.tuple(fc.nat(1000), fc.constantFrom(...lines)), { maxLength: 3 }),
    fc.array(fc.tuple(fc.nat(1000), fc.constantFrom("0", "0.001", "1", "7", "45", "180", "1000", "20000")), {
      minLength: 1,
      maxLength: 3,
    }),
  )
  .map(([example, added, changed]) => {
    let text = example;
    for (const [at, line] of added) {
      const all = text.split("\n");
      text = all.toSpliced(at % all.length, 0, line).join("\n");
    }
    for (const [at, number] of changed) {
      const found = [...text.matchAll(/(?<=[ (-])\d+(?:\.\d+)?(?= |\)|%)/g)];
      const one = found[at % Math.max(1, found.length)];
      if (one) text = text.slice(0, one.index) + number + text.slice(one.index + one[0].length);
    }
    return { from: plainRecipe, text };
  });
