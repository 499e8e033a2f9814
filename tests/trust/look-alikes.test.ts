// Text that looks like another: signs that hide what a line says are errors, names that look like other names are pointed out.
import { expect, test } from "vitest";
import { alphabets, skeleton } from "../../grammar/look-alikes.ts";
import { readable } from "../../kernel/report/readable.ts";
import { drafted, parse } from "../language/told.ts";

const codes = (text: string): string[] => drafted(text).findings.map(({ code, where }) => `${where.line} ${code}`);

test.each([
  // UTS 39, 4 and its introduction: "paypal" with Cyrillic letters, "scope" in Latin and in Cyrillic, circles in three scripts (from memory).
  ["paypal", "p\u0430ypal"],
  ["scope", "\u0455\u0441\u043e\u0440\u0435"],
  ["o", "\u03bf"],
  ["o", "\u043e"],
  ["\u03bf", "\u043e"],
  ["Toys", "T\u043eys"],
  // Full width (UAX 15, compatibility equivalence): A is \uff21.
  ["A", "\uff21"],
  ["hem", "he\uff4d"],
])("%s and %s have one skeleton, and both as names of a recipe are pointed out", (one, other) => {
  expect(skeleton(one)).toBe(skeleton(other));
  expect(codes(`chalkline 1\nlet ${one} = 1\nlet ${other} = 2`)).toContain("3 name-look-alike");
});

test.each([
  ["front", "back"],
  ["\u00c4rmel", "Armel"],
  ["l1", "ll"],
  ["A", "a"],
  ["\u043f\u043e\u043b\u0430", "\u0441\u043f\u0438\u043d\u0430"],
  ["\u8896", "\u88cf"],
])("%s and %s are two names, and nothing is said", (one, other) => {
  expect(codes(`chalkline 1\nlet ${one} = 1\nlet ${other} = 2`)).toEqual([]);
});

test("a name of two alphabets is pointed out once, of one or with letters that nobody confuses it is not", () => {
  // UTS 39, 5.1: single script; Han with kana is one writing system (5.2).
  expect(alphabets("fr\u043ent")).toEqual(["Latin", "Cyrillic"]);
  expect(codes("chalkline 1\nlet fr\u043ent = 1\nlet b = fr\u043ent")).toEqual(["2 name-mixed"]);
  expect(codes("chalkline 1\nlet \u043f\u043e\u043b\u0430-2 = 1\nlet \u03bb = 2\nlet \u8896\u306e\u30d5 = 3")).toEqual(
    [],
  );
});

// UAX 9, 2: every explicit mark; CVE-2021-42574 has them in comments and texts (trojansource.codes, from memory).
const marks = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069".split("");
const others = [
  "\u0000",
  "\u0007",
  "\u0008",
  "\u000b",
  "\u000c",
  "\u001b",
  "\u007f",
  "\u0085",
  "\u009b",
  "\u2028",
  "\u2029",
  "\r",
];

test.each([...marks, ...others].map((mark) => [mark.codePointAt(0)!.toString(16), mark] as const))(
  "U+%s is refused wherever it stands: in a comment, in a text, in a line",
  (_, mark) => {
    for (const line of [`# a ${mark}b`, `let a = 1 # ${mark}b`, `recipe "a${mark}b"`, `let a${mark}b = 1`]) {
      const { diagnostics } = parse({ file: "a", text: `chalkline 1\n${line}\n` });
      expect(diagnostics.map(({ code, where }) => [code, where.line])[0], JSON.stringify(line)).toEqual([
        "character-hidden",
        2,
      ]);
      for (const { message } of diagnostics) expect(readable(message), JSON.stringify(line)).toBe(message);
    }
  },
);

test("line ends of every system, tabs and letters of any script are no hidden marks", () => {
  for (const text of [
    "chalkline 1\r\n# a\r\nlet a = 1\r\n",
    "chalkline 1\n\tlet a = 1 # \u05d0\u05d1\u200f \u0627\u200e\n",
  ])
    expect(parse({ file: "a", text }).diagnostics).toEqual([]);
});

test("the early return of a comment that is none is told", () => {
  // The published example of Trojan Source, in our own words: what looks like a comment is a step, and the other way round.
  const text = "chalkline 1\npiece a {\n# \u202e} \u2066if flare > 0 cm\u2069 \u2066 begin\n}\n";
  expect(codes(text).filter((code) => code === "3 character-hidden").length).toBeGreaterThan(3);
});
