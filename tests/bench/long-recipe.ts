// Recipes of a wanted length for the bench: the panels of a stage curtain, each drawn as a piece of a coat is, with sums, curves,
// an outline, allowances, notches and a grain line.

// Lines of one panel, the empty line before it among them.
const linesOfAPanel = 25;

/** A clean recipe of so many lines, or one panel less; `panels` says how many pieces it makes. */
export const longRecipe = (lines: number): string => {
  const panels = Math.max(1, Math.floor((lines - 6) / linesOfAPanel));
  return [
    "chalkline 1",
    'recipe "Stage curtain"',
    "units cm",
    'measure drop = 180 cm from 20 cm to 400 cm "From the batten to the floor"',
    'param width = 40 cm from 20 cm to 90 cm "Of one panel at the floor"',
    "let rise = 8 cm",
    ...Array.from({ length: panels }, (_, index) => panel(index + 1)).flat(),
    "",
  ].join("\n");
};

/** The same with every tenth line spoiled, and which lines these are, counted from 1. */
export const spoiledRecipe = (lines: number): { readonly text: string; readonly spoiled: readonly number[] } => {
  const spoiled: number[] = [];
  const text = longRecipe(lines)
    .split("\n")
    .map((line, index) => {
      // A line that opens or closes a block stays as it is, for a brace too few is a mistake of many lines.
      if (index % 10 !== 9 || !/^ {2}/.test(line)) return line;
      spoiled.push(index + 1);
      return line.replace(/(?: +#.*)?$/, " )$&");
    })
    .join("\n");
  return { text, spoiled };
};

const panel = (number: number): string[] => [
  "",
  `piece panel-${number} {`,
  "  point top-left = (0, 0)",
  `  point top-right = top-left right width - ${1 + (number % 7)} cm`,
  "  point foot-left = (0, drop)",
  "  point foot-right = foot-left right width",
  "  point middle = (x(top-right) / 2, rise)",
  `  point waist = (width - ${(number % 5) + 1} cm, drop * 40%)`,
  "  curve top = top-left to top-right handles top-left right width / 4 down rise, top-right left width / 4 down rise  # hangs between its rings",
  "  curve side = top-right to foot-right through waist leaving down arriving down",
  "  line foot = foot-left to foot-right",
  "  line center = top-left to foot-left",
  "  outline center, top, side, foot",
  "  mark foot as hem",
  "  let hem = clamp(drop / 20, 2 cm, 6 cm)",
  "  allow top, side by 1.5 cm",
  "  allow center by 1 cm",
  "  allow foot by hem corners turned",
  "  notch side at length(side) / 3",
  "  notch side at end - 12.5 cm double",
  "  notch top at 50%",
  "  drill middle down 3 cm",
  "  grain (8 cm, 30 cm) to (8 cm, drop - 15 cm)",
  `  label "PANEL ${number}"`,
  "}",
];
