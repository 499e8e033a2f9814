// Tidying twice changes nothing more, and tidying never changes what a recipe says or what comes of it.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tidy } from "../../grammar/print.ts";
import { sourcesOf } from "../pages/worked-page.ts";
import { pageRecipes, readable } from "./recipe-texts.ts";
import { drafted, parse } from "./told.ts";
import { comesTo, treeSays } from "./without-places.ts";

const read = (text: string) => parse({ file: "test.chalk", text });

const tidied = (text: string): string => {
  const { tree, forms } = read(text);
  return tidy(tree, forms);
};

const saysTheSame = (text: string): void => {
  const once = tidied(text);
  const [before, after] = [read(text), read(once)];
  expect(after.diagnostics).toEqual([]);
  expect(treeSays(after.tree)).toEqual(treeSays(before.tree));
  expect(after.tree.comments.map((comment) => comment.text)).toEqual(
    before.tree.comments.map((comment) => comment.text),
  );
  expect(tidied(once)).toBe(once);
};

const isTidy = (text: string): void => {
  expect(text).not.toMatch(/[ \t]+$/m);
  expect(text).not.toMatch(/\n\n\n/);
  expect(text.startsWith("\n")).toBe(false);
  expect(text.endsWith("\n")).toBe(true);
  expect(text.endsWith("\n\n")).toBe(false);
};

describe.each(readable)("$name", ({ text }) => {
  test("says the same, tidied", () => {
    saysTheSame(text);
    isTidy(tidied(text));
  });
});

test("what comes of a recipe stays the same to the last digit", () => {
  const own = pageRecipes.filter(({ text }) => read(text).diagnostics.length === 0);
  expect(own.length).toBeGreaterThan(100);
  for (const { name, text, page } of own) {
    const sources = sourcesOf(page);
    expect(comesTo(drafted(tidied(text), { sources })), name).toEqual(comesTo(drafted(text, { sources })));
  }
});

test("one style", () => {
  const text = `# head
   chalkline   1 # v
recipe "X" { by "me"   # who
 notes "n" }


param a=3cm from 1 cm to 5 cm "text"   # c1
measure bust-girth = 92cm "B" # c2
# between
param b = -  3 cm   + 2*( 1 cm -0 )
let  c = 1   1/2 in # mixed
let d = not   a = b   and (a>b or a<>b)
size   S{bust-girth=80cm ,
}
piece p # behind p
{
 point A=( 0,- 3 cm)
 point B = A toward ( 0 , 0 ) 50% right 1cm


 line x= A to B through (1 cm,2 cm), # one
  # two
  (3 cm, 4 cm)
 allow x corners turned by 3 cm # clauses
 notch x at end   -   3 cm double
 line y = A to p . A
 curve k = A to B arriving - 3 deg leaving down through B heading along x , A
 # end of p
} # closed
if a>b { let e = 3 cm } # yes
# between the branches
else if a = b { } else { # else c
let f = turned( p . x ) . start
}
repeat 3 as i { }
step s ( edge e,length l=3 cm ) { allow e by l }   piece g = p { s l 3 cm e x }
# last`;
  expect(tidied(text)).toBe(`# head
chalkline 1  # v
recipe "X" {
  by "me"  # who
  notes "n"
}

param a            = 3 cm  from 1 cm to 5 cm "text"  # c1
measure bust-girth = 92 cm                   "B"  # c2
# between
param b = -3 cm + 2 * (1 cm - 0)
let c = 1 1/2 in  # mixed
let d = not a = b and (a > b or a <> b)
size S { bust-girth = 80 cm }
piece p {
  # behind p
  point A = (0, -3 cm)
  point B = A toward (0, 0) 50% right 1 cm

  # one
  # two
  line x = A to B through (1 cm, 2 cm), (3 cm, 4 cm)
  allow x by 3 cm corners turned  # clauses
  notch x at end - 3 cm double
  line y = A to p.A
  curve k = A to B through B heading along x, A leaving down arriving -3 deg
  # end of p
}  # closed
if a > b {
  let e = 3 cm
  # yes
  # between the branches
} else if a = b {
} else {  # else c
  let f = turned(p.x).start
}
repeat 3 as i { }
step s (edge e, length l = 3 cm) {
  allow e by l
}
piece g = p {
  s e x l 3 cm
}
# last
`);
});

describe("recipes made at random", () => {
  const name = fc.constantFrom("a", "b-2", "Ä", "side-front", "to", "by", "along", "through", "hem", "length", "A1");
  const unit = fc.constantFrom("mm", "cm", "in", "deg", "");
  const gap = fc.constantFrom(" ", "  ", "\t", " \t ");
  const space = fc.constantFrom("", " ", "  ");
  const number = fc
    .tuple(fc.constantFrom("0", "3", "12.5", "5/8", "1 1/2", "50%"), fc.boolean(), unit)
    .map(([figures, glued, word]) =>
      figures.endsWith("%") || word === "" ? figures : `${figures}${glued ? "" : " "}${word}`,
    );
  const { value } = fc.letrec<{ value: string; atom: string }>((tie) => ({
    atom: fc.oneof(
      { maxDepth: 3, depthSize: "small" },
      number,
      name,
      fc.tuple(name, name).map(([piece, edge]) => `${piece}.${edge}`),
      fc.tuple(space, tie("value"), space).map(([left, inner, right]) => `(${left}${inner}${right})`),
      fc
        .tuple(fc.constantFrom("length", "min", "x"), tie("value"), tie("value"))
        .map(([call, a, b]) => `${call}(${a},${b})`),
      fc.tuple(space, tie("value"), space, tie("value")).map(([left, x, middle, y]) => `(${left}${x},${middle}${y})`),
      fc.tuple(fc.constantFrom("-", "- "), tie("atom")).map(([sign, inner]) => `${sign}${inner}`),
      fc.tuple(name, name).map(([a, b]) => `${a}--${b}`),
      fc.tuple(name, name).map(([call, member]) => `turned(${call}).${member}`),
    ),
    value: fc.oneof(
      { maxDepth: 4, depthSize: "small" },
      tie("atom"),
      fc.tuple(tie("atom"), gap, fc.constantFrom("+", "-", "*", "/"), gap, tie("atom")).map((parts) => parts.join("")),
      fc.tuple(tie("atom"), gap, fc.constantFrom("right", "up"), gap, tie("atom")).map((parts) => parts.join("")),
      fc.tuple(name, gap, number).map(([edge, between, at]) => `${edge} at${between}end - ${at}`),
      fc.tuple(name, gap, name, gap, number).map(([a, one, b, two, at]) => `${a}${one}toward ${b}${two}${at}`),
    ),
  }));
  const comment = fc.constantFrom("", "", "", "  # a note", "#", '# {("');
  const clauses = fc.shuffledSubarray(
    [" leaving down", " arriving along hem", " tension 2", " through A1 heading up,  b-2"],
    { minLength: 0 },
  );
  const step = fc.oneof(
    fc.tuple(name, gap, value).map(([called, between, inner]) => `point${between}${called}=${inner}`),
    fc
      .tuple(name, value, value, clauses)
      .map(([called, from, to, more]) => `curve ${called} = ${from} to (${to})${more.join("")}`),
    fc
      .tuple(
        fc.array(name, { minLength: 1, maxLength: 4 }),
        fc.constantFrom(",", ", ", ",\n    ", ",  # here\n", " , "),
      )
      .map(([names, comma]) => `outline ${names.join(comma)}`),
    fc
      .tuple(name, value, fc.boolean())
      .map(([edge, width, first]) =>
        first ? `allow ${edge} corners cut by ${width}` : `allow ${edge} by ${width} corners cut`,
      ),
    fc.constant('label "a # \\" b"   at A1'),
  );
  const { block } = fc.letrec<{ block: string; line: string }>((tie) => ({
    line: fc.oneof(
      { maxDepth: 2, depthSize: "small" },
      step,
      fc
        .tuple(value, tie("block"), tie("block"))
        .map(([condition, first, other]) => `if ${condition} = 1${first}else${other}`),
      fc.tuple(value, tie("block")).map(([condition, inner]) => `if ${condition} > 1 cm${inner}`),
      fc.tuple(number, tie("block")).map(([count, inner]) => `repeat ${count} as i${inner}`),
      fc.tuple(tie("block")).map(([inner]) => `solve h from 1 cm to 2 cm until h = 1${inner}`),
    ),
    block: fc
      .tuple(
        fc.array(fc.tuple(tie("line"), comment, fc.constantFrom("\n", "\n\n", "\n\n\n", "\n  ")), { maxLength: 3 }),
        comment,
        space,
      )
      .map(
        ([inner, behind, indent]) =>
          ` {${behind === "" ? "" : `${behind}\n`}${inner.map((parts) => indent + parts.join("")).join("")}}${indent}`,
      ),
  }));
  const entries = fc
    .array(fc.tuple(name, value, fc.constantFrom(",", "\n", ", \n", "  # entry\n")), { maxLength: 3 })
    .map((list) => list.map(([key, inner, behind]) => `${key}=${inner}${behind}`).join(""));
  const top = fc.oneof(
    fc
      .tuple(name, value, fc.boolean())
      .map(([called, inner, noted]) => `param ${called}=${inner}${noted ? ' from 0 to 1  "a  note"' : ""}`),
    fc.tuple(name, value).map(([called, inner]) => `let ${called} =${inner}`),
    fc.tuple(entries).map(([inner]) => `use "a.chalk" as q {${inner} }`),
    fc.tuple(name, block).map(([called, inner]) => `piece ${called}${inner}`),
    fc
      .tuple(name, number, block)
      .map(([called, least, inner]) => `step fancy (edge ${called},length l=${least} )${inner}`),
  );
  const recipe = fc
    .array(fc.tuple(top, comment, fc.constantFrom("\n", "\n\n", "\n\n\n\n", "\r\n")), { minLength: 1, maxLength: 5 })
    .map((lines) => `chalkline 1\n${lines.map((parts) => parts.join("")).join("")}`)
    // A recipe declares a step once.
    .filter((text) => text.split("step fancy").length < 3);

  test("say the same, tidied", () => {
    let fine = 0;
    fc.assert(
      fc.property(recipe, (text) => {
        if (read(text).diagnostics.length > 0) return;
        fine += 1;
        saysTheSame(text);
        isTidy(tidied(text));
      }),
      { seed: 7, numRuns: 600 },
    );
    // The generator makes recipes, and not only mistakes.
    expect(fine).toBeGreaterThan(400);
  });
});
