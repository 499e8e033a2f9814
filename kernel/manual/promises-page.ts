// The page that tells what one may rely on when a stranger's recipe is opened, and what not. Its numbers come from the table of limits,
// so that it cannot go stale; what the program says of the recipe in it is put in by the test that writes the page.
import { limits } from "../../grammar/limits.ts";
import { plainNumber } from "../units.ts";

/** A recipe that tries whatever a recipe can try. */
export const hostileRecipe = `chalkline 1
recipe "A gift"
use "../../letters/private.chalk" as letters
use "https://example.org/more.chalk" as more
use "/dev/zero.chalk" as endless

piece trap {
  label "<script>alert('gotcha')</script>"
  line reach = (0, 0) to (900000 m, 0)
  repeat 200 as i { repeat 200 as j { repeat 200 as k { let a = i * j * k } } }
}
`;

/** The page as Markdown; `said` is what `chalkline check gift.chalk` prints of the recipe above. */
export const promisesPage = (said: string): string => `# Opening a recipe that somebody sent you

Made from the program's own table of limits by \`npm run manual\`; a test fails when it is stale.

Recipes go from hand to hand, and you cannot read every one before you open it. You need not: to check, measure, draw, lay or hang a
recipe is meant to be as safe as to look at a text file. This page says what that means, how it is tested, and where it ends.

## What is promised

**It always ends.** There is no way to write a line that goes round for ever, and what goes round has its limits. At a limit there is a
plain error at the line that went too far, and what is drawn so far stays.

| what | at most |
| --- | --- |
${rows.map(([what, most]) => `| ${what} | ${most} |`).join("\n")}

Whatever multiplies itself (a repeat in a repeat, steps that call steps, recipes that use recipes) is counted as often as it is worked,
not as often as it is written, and stops within about a second, or a few where the geometry is heavy, and below 512 MB of memory. A file of 1 MiB that is no recipe at all
is told so within two seconds of computing.

**It reads nothing of yours.** A recipe reads other recipes only: files that end in \`.chalk\`, in its own folder and the folders below it,
or below the folder that you name with \`--root\`. That is judged by where a file really lies once it is open, so neither \`..\` nor a link
that is turned at the right moment leads out; devices and pipes are never read. What it read goes nowhere but onto your screen and into
the files that you asked for.

**It writes nothing** but what you ask for: \`--out\` names the folder. There is no step that writes.

**It runs nothing.** There is no code in a recipe. No file beside it is loaded for its own sake, whatever it is called: no settings, no
steps, no \`node_modules\`. Steps from outside come only from a file that *you* name with \`--with FILE\` or have pinned with
\`chalkline trust FILE\`, and a pinned file is refused once a letter of it changes.

**It calls nobody.** The program has no means to reach a network. There are two exceptions, and no recipe can ask for either:
\`chalkline edit\` serves its page on this machine alone, and \`chalkline batch --queue\` talks to the server that you name.

**What it says stays words.** Names and labels can hold anything. In an SVG, a page, a PDF, a DXF, a table or on the terminal they are
shown as they are and never followed: no markup, no formula, no command for the terminal. Signs that hide what a line says, such as
those that turn the direction of reading, are an error wherever they stand, and a name that looks like another name is pointed out.

## How it is tested

- Every limit from both sides, the last that is worked and the first that is refused, with its place: \`tests/trust/limits.test.ts\`.
- Two hundred ways to write a path, and a link that is turned while it is followed: \`tests/trust/paths.test.ts\`.
- The sources hold no other way to a network, to a program or to run a text, and seen from outside no command takes one:
  \`tests/trust/containment.test.ts\`.
- A folder with thirty baits, every one of which would leave a mark if it were run: \`tests/trust/plugins.test.ts\`.
- Recipes that multiply themselves, with time and memory measured: \`tests/trust/bombs.test.ts\`.
- Every regular expression of the program, judged and tried on long texts: \`tests/trust/regexes.test.ts\`.
- Text that looks like another, and words in every format: \`tests/trust/look-alikes.test.ts\`, \`tests/trust/escapers.test.ts\`.
- Recipes made to hang or to crash, and a mebibyte of whatever comes: \`tests/language/hostile.test.ts\`, and \`npm run fuzz\` for as long as
  you like.

## What is not promised

- **Nothing holds against a fault of the engine** (Node, or your browser) that all this runs in. Keep it up to date.
- **A plugin that you trust runs with your rights.** It can do whatever you can. Trust what you have read, or whom you would lend your keys.
- **How long a slow thing takes.** A recipe within the limits may still keep a command busy: hundreds of pieces take a while to be laid on
  cloth, and a thousand wild curves a while to be drawn with their allowances. Ctrl-C stops it, and leaves no half-written file.
- **That the garment is any good**, or that what a stranger's label says is true. Check the test square before you cut, and mind the
  shears and the iron.
- **The server of \`chalkline batch --queue\`.** Whoever can write to it can have your workers draft their recipes, within these limits.

## A recipe written to attack its reader

\`\`\`
${hostileRecipe.trimEnd()}
\`\`\`

And what comes of it, word for word:

\`\`\`
$ chalkline check gift.chalk
${said.trimEnd()}
\`\`\`

## If you find a way round

That is a bug, and the most welcome kind. Send the recipe to whoever gave you this program, or open an issue where it is kept, and say
what it did that this page says it cannot. If others could be hurt by it before it is mended, write to the maintainers alone. The recipe
goes into \`tests/fuzz/corpus\`, where every run tries it again.
`;

/** 2000000 as 2,000,000. */
const count = (value: number): string =>
  value < 1000 ? String(value) : `${count(Math.floor(value / 1000))},${String(value % 1000).padStart(3, "0")}`;
const meters = (millimetres: number): string => `${plainNumber(millimetres / 1000, 3)} m`;

const rows: readonly (readonly [string, string])[] = [
  ["a recipe file", `${limits.fileBytes / 1024 / 1024} MiB`],
  ["brackets and blocks in one another", count(limits.nesting)],
  ["letters of a name", count(limits.wordLetters)],
  ["letters of a text", count(limits.textLetters)],
  ["words and signs of a statement", count(limits.statementWords)],
  ["operators and place words in one value", count(limits.valueSigns)],
  ["recipes that are used, all in all", count(limits.usedFiles)],
  ["recipes that use one another", `${limits.useDepth} deep`],
  ["lines worked inside one another", count(limits.linesInLines)],
  ["steps, counted as often as they are worked", count(limits.steps)],
  ["rounds of one repeat", count(limits.rounds)],
  ["solves in one another, and tries of one", `${limits.solveDepth}, ${limits.halvings}`],
  ["pieces", count(limits.pieces)],
  ["lines and curves, of one piece and of all", `${count(limits.pieceSpans)}, ${count(limits.curveSpans)}`],
  ["notches, holes, labels and other marks of a piece", count(limits.marks)],
  ["names in the record of all steps", count(limits.recorded)],
  ["values reckoned, and lines gone over", count(limits.effort)],
  ["from the middle of the table to any point", meters(limits.coordinate)],
  ["a length that a step is given", meters(limits.length)],
  ["an allowance", meters(limits.allowance)],
  ["findings that are told; the rest is counted", count(limits.findings)],
  ["pages that a pattern is put together of", count(limits.pages)],
];
