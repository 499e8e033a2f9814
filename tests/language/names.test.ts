// Any word is a name but the few that the language reserves: the words of other steps, and the words that a program may
// trip over.
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { statementWords } from "../../grammar/statements.ts";
import { placeWords, unitWords } from "../../grammar/tokens.ts";
import { functions } from "../../kernel/functions.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { drafted, filesNamed, parse, told } from "./told.ts";

const clauseWords = vocabulary.steps.flatMap(({ phrases }) =>
  phrases.flatMap(({ clauses }) => clauses.map(({ word }) => word)),
);
const reserved = new Set([...placeWords, ...statementWords]);

const free = [
  ...new Set([
    ...[
      "constructor",
      "toString",
      "hasOwnProperty",
      "valueOf",
      "isPrototypeOf",
      "prototype",
      "proto",
      "then",
      "length",
      "name",
    ],
    ...[
      "to",
      "along",
      "by",
      "from",
      "with",
      "as",
      "on",
      "start",
      "holding",
      "corners",
      "because",
      "within",
      "until",
      "pi",
    ],
    ...[
      "hem",
      "fold",
      "seam",
      "opening",
      "turned",
      "double",
      "point",
      "line",
      "cut",
      "true",
      "false",
      "null",
      "undefined",
    ],
    ...["a", "A", "a1", "a-1", "a-b-c", "Ärmel", "袖", "é", "e\u0301", "ﬁ", "𝒽em"],
    ...vocabulary.steps.map(({ name }) => name),
    ...functions.keys(),
    ...clauseWords,
    ...unitWords,
  ]),
].filter((name) => !reserved.has(name));

// A program that looks names up in plain objects would meet these, or write to what all objects share.
beforeAll(() => {
  Object.freeze(Object.prototype);
  Object.freeze(Array.prototype);
  Object.freeze(Map.prototype);
});
afterAll(() => expect(Object.keys(Object.prototype)).toEqual([]));

describe.each(free)("%s", (name) => {
  test("names a piece, an edge and a place", () => {
    const { findings, garment } = drafted(`chalkline 1
piece ${name} {
  point origin = (0, 0)
  line ${name} = origin to (3 cm, 4 cm)
  line other = ${name}.end to ${name}.start through (3 cm, 0)
  outline ${name}, other
  notch ${name} at 1 cm
  mark ${name} as hem
  allow ${name} by 1 cm
  let half = length(${name}) / 2
  drill ${name} at half
}
piece other = ${name} {
  point ${name}-2 = ${name} at 50%
  extend-hem ${name} by 1 cm
}
let all-round = length(other.${name}) + length(${name}.${name})
check area(${name}) > 0 * 1 cm * 1 cm
piece third {
  point ${name} = (3 cm, 0)
  line top = (0, 0) to ${name}
  line low = ${name} down 1 cm to ${name} toward (0, 0) 1 cm
}`);
    expect(findings.map(({ message }) => message)).toEqual([]);
    expect([...garment.pieces.keys()]).toEqual(
      [name, "other", "third"].filter((each, index, all) => all.indexOf(each) === index),
    );
  });

  test("names a value, a param, a measure, a fabric, a size and a used recipe", () => {
    const sources = filesNamed({
      "a.chalk": `chalkline 1\nparam ${name} = 3 cm\npiece p { point here = (${name}, 0) }`,
    });
    expect(told(`chalkline 1\nlet ${name} = 3 cm\nlet b1 = ${name} * 2 + ${name}`)).toEqual([]);
    expect(told(`chalkline 1\nparam ${name} = 3 cm from 1 cm to 4 cm\nlet b1 = ${name} - ${name}`)).toEqual([]);
    expect(told(`chalkline 1\nmeasure ${name} = 30 cm\nsize ${name} { ${name} = 31 cm }\nbase size ${name}`)).toEqual(
      [],
    );
    expect(
      told(`chalkline 1\nfabric ${name} width 150 cm\npiece p1 { point q = (0, 0) }\ncut p1 2 from ${name}`),
    ).toEqual([]);
    const { findings, garment } = drafted(
      `chalkline 1\nuse "a.chalk" as ${name} { ${name} = 5 cm }\npiece q1 = ${name}.p { drill here }`,
      { sources },
    );
    expect(findings).toEqual([]);
    expect(garment.pieces.get("q1")!.places.get("here")!.point.x).toBe(50);
  });
});

test.each([...reserved])("%s is reserved, and the finding says so", (word) => {
  const { findings } = drafted(`chalkline 1\nlet ${word} = 3 cm`);
  expect(findings.map(({ code, message, where }) => [code, message.startsWith(`${word} is `), where.from])).toEqual([
    ["name-reserved", true, 16],
  ]);
});

test.each(["__proto__", "a_b", "a.b c", "3a", "-a", "a--b", "a-", "$a", "a'b"])("%s is no name", (name) => {
  expect(told(`chalkline 1\nlet ${name} = 3 cm`)).toHaveLength(1);
});

test("a step of the recipe's own has any free name that is no step yet", () => {
  for (const name of free) {
    const isStep = parse({ file: "a", text: "" }).forms.has(name);
    expect(
      told(`chalkline 1\nstep ${name} (length wide = 1 cm) { drill (wide, 0) }\npiece p1 {\n${isStep ? "" : name}\n}`),
    ).toEqual(isStep ? ["2 step-known"] : []);
  }
});

test("a parameter of a step may have any free name", () => {
  for (const name of free.filter((word) => !unitWords.has(word))) {
    const text = `chalkline 1\nstep my-own (length ${name}, edge which) { allow which by ${name} }
piece p1 {
  line e1 = (0, 0) to (3 cm, 0)
  line e2 = (3 cm, 0) to (0, 0) through (1 cm, 1 cm)
  outline e1, e2
  my-own ${name} 3 cm which e1
}`;
    expect(told(text), name).toEqual(name === "which" ? ["2 name-taken"] : []);
  }
});
