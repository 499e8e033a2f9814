// The chapter of the manual that no declaration can tell: how a recipe is written and what its values mean.

export const languageChapter = `## The language

A recipe is a plain text file, \`NAME.chalk\`. One drafting step is one line, so a line diff is the list of alterations.
It always ends, reads no file but recipes below its own folder, runs no code and reaches no network.

\`\`\`
chalkline 1
recipe "Lobby coat, swing version"
units cm

use "blocks/straight-coat.chalk" as straight

param flare = 9 cm from 0 cm to 20 cm "opening of each slash, at the hem"

piece front = straight.front {
  spread-from shoulder at 50% to hem by flare
  true-seam hem, shoulder
  keep neck, shoulder, armscye
}
\`\`\`

### Words and numbers

- \`#\` starts a comment, to the end of the line.
- A name is letters and digits with single hyphens inside: \`back\`, \`side-front\`. \`a-b\` is one name, \`a - b\` a subtraction.
- \`pi\` is the number 3.14159…
- Numbers: \`12\`, \`12.5\`, \`5/8\`, \`1 1/2\`, \`50%\`. A fraction has no spaces, a division has them: \`girth / 4\`.
- Units: \`mm cm m in ft yd\` for lengths, \`deg rad\` for angles, \`gsm\` (g/m2) and \`osy\` (oz/yd2) for weights. Only 0 goes without.
- Texts stand in double quotes, with \`\\"\`, \`\\\\\` and \`\\n\` inside.
- A statement ends with its line; it goes on inside ( ) and after a comma or an operator. \`{ }\` hold blocks.
- A line uses only names from lines above it, and a name is given once. Names made inside \`if\`, \`repeat\` and a \`step\` of the
  recipe's own stay inside; an edge drawn there that ends up in the outline goes on under its name. Inside a piece its own names
  come first; outside, write \`PIECE.NAME\`.
- These words cannot be names: the place words \`at toward right left up down bearing for end\`, \`and or not\`, and the first
  words of statements. Clause words (\`to\`, \`by\`, \`along\` …) are words only behind their own step.

### Values

Numbers, lengths, areas, angles, weights, texts, conditions, places, directions, edges, pieces and fabrics. Arithmetic keeps
track of the kind: length * length is an area, length / length a number, and \`2 cm + 3\` an error. \`=\` between lengths in
\`check\` and \`if\` means equal within 0.5 mm (angles: within 0.1 deg) unless \`within\` says otherwise.

### Places

The table is flat: x grows to the right, y grows down the body. A place reads left to right, as one would walk it.

\`\`\`
(0 cm, 0 cm)                    absolute
A right 12 cm down 4 cm         also left, up
A toward B 20 cm                also a ratio: A toward B 50%
A bearing 20 deg for 12 cm      0 deg points right, 90 deg points down
shoulder at 50%                 along an edge, by ratio, in the direction it was drafted
armscye at 8 cm                 along an edge, from its start
armscye at end - 8 cm           back from its end
shoulder.start, shoulder.end    the ends of an edge, as it was drafted
bust.tip, bust.first            the tip of a dart, and its leg ends: first and second
corner(center, neck)            where two neighbouring edges of an outline meet
back.nape                       a named place of another piece
A--B                            the straight line between two places, an edge
\`\`\`

A ratio stands between 0 and 1. The amount after a place word is everything up to the next place word or clause word.
The place behind \`toward\` is a name or stands in brackets.

### Directions

\`left right up down\`, an angle, \`toward PLACE\`, \`along EDGE\` (as it was drafted), \`square-to EDGE\` (of the two, the one at the
smaller angle to the way from the curve's start to its end). Along and square to an edge go by the edge's direction where it is
nearest. Leaving and arriving are both directions of travel.

### Steps of the recipe's own

\`\`\`
step lengthened (edge bottom, length amount = 5 cm) {
  extend-hem bottom by amount
  true-seam bottom
}
piece long = straight.front {
  lengthened bottom hem amount 12 cm
}
\`\`\`

Each parameter is a clause of the call; one with a default may be left out. An edge or a named place that is given stays that
edge or place while the lines alter it. The kinds are edge, place, length, angle, number, area, weight, text, truth, direction,
piece and fabric. A step calls only steps above it.

### Using other recipes

\`use "PATH" as NAME { param = value }\` works the other recipe afresh. Its pieces and values stand under NAME, its fabrics and sizes
carry over, its cuts and seams do not, its checks run. One body serves the whole garment: a \`measure\` of the recipe that is opened
reaches every recipe it uses. Only \`.chalk\` files below the folder of the opened recipe can be used (\`--root\` widens it).

### Solving

\`solve h from 5 cm to 30 cm until length(cap) = armhole + ease { … }\` draws its block again and again until both values agree to
0.001 mm. The two limits must lie on opposite sides. The value and the block's names stay below.

### What stands on a drawing

- Lines are told by their weight and dashes: cut along the heavy solid line, sew along the dashed one; a hem is turned up along dashes
  and dots, the fold of the cloth has long dashes, and what a piece was before it was altered is grey and dotted.
- Small along each edge stand its name and, in the band beyond the sewing line, the width of its allowance. Where the band has no room
  for it the width stands with the name. The cutting line never crosses itself: where an inner curve is tighter than the allowance,
  or two allowances lie on one another, it follows the outer rim of both.
- A notch is carried to the cutting line square to the seam. Where there is no allowance, or where the line is more than
  two and a half times the allowance away, it stands on the sewing line and goes into the piece.
- The label says piece, garment, size, what to cut of which cloth, the recipe's own labels, and the version. A small piece has less
  of it: first the garment goes, then the version, the labels, the size.
- The version is seven digits that change with the recipe and carry no date: the first of the SHA-256 of its text with the texts of the
  recipes that it uses behind it, each once, in the order in which they are first used. \`cat coat.chalk blocks/back.chalk | sha256sum\`
  begins with them. Params, size and body that are given when it is drawn do not change it; the sheet names them.
- The sheet ends with words of caution: on shears, iron and machine always, and on capes, cords, wide sleeves, brushed or sheer
  cloth, nightwear and buttons where names, cloth or pieces of the garment ask for them.

### Limits

A file has at most 1 MiB; brackets and blocks go 64 deep; a recipe uses 100 others, 16 deep, takes 20,000 steps, makes 500 pieces
of 100,000 curves, and stays within 100 m. A step takes lengths up to 200 m, and an allowance is at most 1 m wide. A piece
has at most 1,000 lines and curves and 500 marks, a text 2,000 letters, a name 100. Past a limit comes a plain error, never a crash.
All limits stand in [PROMISES.md](PROMISES.md).

### Tidy text

\`chalkline tidy\` has one style and no options: two-space blocks, one statement a line, one space between words, aligned \`=\` and
texts in runs of \`measure\` and \`param\` lines, a blank line at most once, clauses in the order of the step's form, comments kept.
It never changes what a recipe means.
`;
