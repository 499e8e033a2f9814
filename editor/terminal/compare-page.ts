// A comparison as one HTML page that stands by itself: pictures with a slider that fades from before to after, and all facts as
// tables and lists. Nothing is fetched, nothing is sent, and without its few lines of script it still tells everything.
import { createHash } from "node:crypto";
import { escaped } from "../../kernel/export/svg.ts";
import type { Picture } from "../../kernel/report/compare-pictures.ts";
import { toldOf } from "../../kernel/report/compare-sections.ts";
import type { Review, Section } from "../../kernel/report/compare-told.ts";

/** A review and its pictures. */
export interface PicturedReview {
  readonly review: Review;
  readonly pictures: readonly Picture[];
}

/** The page; its policy admits its own few lines of script and nothing else. */
export const comparePage = (reviews: readonly PicturedReview[]): string =>
  [
    "<!doctype html>",
    '<html lang="en">',
    "<head>",
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-${scriptHash}'; base-uri 'none'; form-action 'none'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light">',
    `<title>${escaped(reviews.map(({ review }) => review.title).join(", "))}: what changed</title>`,
    `<style>${style}</style>`,
    "</head>",
    "<body>",
    "<main>",
    ...reviews.flatMap(({ review, pictures }, index) => reviewParts(review, pictures, `r${index}`)),
    "</main>",
    `<script>${pageScript}</script>`,
    "</body>",
    "</html>",
    "",
  ].join("\n");

const reviewParts = (review: Review, pictures: readonly Picture[], id: string): string[] => {
  const svgs = new Map(pictures.map(({ piece, svg }) => [piece, svg]));
  const { title, before, after, summary, remarks, sections } = toldOf(review);
  return [
    "<header>",
    `<h1>${escaped(title)}</h1>`,
    `<p class="sides"><span>${escaped(before)}</span> <span aria-hidden="true">→</span><span class="heard"> to </span> <span>${escaped(after)}</span></p>`,
    `<p class="summary">${escaped(summary)}</p>`,
    ...remarks.map((remark) => `<p class="remark">${escaped(remark)}</p>`),
    "</header>",
    ...(svgs.size === 0
      ? []
      : [
          `<div class="slider"><label for="${id}-fade">Before</label><input id="${id}-fade" class="fade" type="range" min="0" max="100" value="50" aria-label="Fade all pictures from before to after" aria-valuetext="both"><output for="${id}-fade">After</output></div>`,
        ]),
    ...sections.flatMap((section, index) => sectionParts(section, svgs.get(section.piece ?? ""), `${id}-s${index}`)),
  ];
};

const sectionParts = ({ heading, remark, rows, sentences }: Section, svg: string | undefined, id: string): string[] => [
  `<section aria-labelledby="${id}"${svg === undefined ? "" : ' class="piece"'}>`,
  `<h2 id="${id}">${escaped(heading)}</h2>`,
  ...(remark === "" ? [] : [`<p>${escaped(remark)}</p>`]),
  ...(svg === undefined ? [] : [`<figure>${svg}</figure>`]),
  '<div class="facts">',
  ...(rows.length === 0
    ? []
    : [`<div class="wide" role="region" tabindex="0" aria-label="${escaped(heading)}, table">${tableOf(rows)}</div>`]),
  ...(sentences.length === 0
    ? []
    : ["<ul>", ...sentences.map(({ text, tone }) => `<li class="${tone}">${escaped(text)}</li>`), "</ul>"]),
  "</div>",
  "</section>",
];

const tableOf = ([head, ...rows]: Section["rows"]): string => {
  const columns = Math.max(head?.length ?? 0, ...rows.map((row) => row.length));
  const all = (
    row: Section["rows"][number],
    cell: (text: string, isAmount: boolean, first: boolean) => string,
  ): string =>
    Array.from({ length: columns }, (_, i) => cell(row[i]?.text.trim() ?? "", row[i]?.amount === true, i === 0)).join(
      "",
    );
  return [
    "<table>",
    `<thead><tr>${all(head ?? [], (text) => `<th scope="col">${escaped(text)}</th>`)}</tr></thead>`,
    "<tbody>",
    ...rows.map(
      (row) =>
        `<tr>${all(row, (text, isAmount, isFirst) => (isFirst ? `<th scope="row">${escaped(text)}</th>` : `<td${isAmount ? ' class="amount"' : ""}>${escaped(text)}</td>`))}</tr>`,
    ),
    "</tbody>",
    "</table>",
  ].join("");
};

// The whole script: the slider sets how much of either side is seen.
const pageScript = `
for (const slider of document.querySelectorAll(".fade")) {
  const show = () => {
    const after = Number(slider.value) / 100;
    const seen = { before: Math.min(1, 2 - 2 * after), removed: Math.min(1, 2 - 2 * after), after: Math.min(1, 2 * after), added: Math.min(1, 2 * after) };
    for (const [name, share] of Object.entries(seen))
      for (const part of document.querySelectorAll("figure ." + name)) part.style.opacity = share;
    slider.setAttribute("aria-valuetext", after === 0 ? "before" : after === 1 ? "after" : after === 0.5 ? "both" : slider.value + " percent after");
  };
  slider.addEventListener("input", show);
  show();
}
`;

const scriptHash = createHash("sha256").update(pageScript).digest("base64");

const style = `
:root { font: 16px/1.45 system-ui, sans-serif; color: #1a1a1a; background: #fff; }
body { margin: 0; }
main { max-width: 72rem; margin: 0 auto; padding: 1rem; }
h1 { font-size: 1.5rem; margin: 0.5rem 0 0; overflow-wrap: anywhere; }
h2 { font-size: 1.15rem; margin: 0 0 0.25rem; overflow-wrap: anywhere; }
p { margin: 0.25rem 0; }
.sides { color: #555; overflow-wrap: anywhere; }
.summary { font-weight: 600; }
.remark { border-left: 4px solid #000; padding-left: 0.75rem; }
.heard { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.slider { position: sticky; top: 0; z-index: 1; display: flex; gap: 0.75rem; align-items: center; background: #fff; padding: 0.5rem 0; border-bottom: 1px solid #ccc; }
.slider input { flex: 1; min-width: 0; height: 2.75rem; accent-color: #000; }
section { border-top: 1px solid #ccc; padding: 1rem 0; }
figure { margin: 0.5rem 0; }
figure svg { display: block; width: 100%; height: auto; max-height: 85vh; border: 1px solid #ddd; box-sizing: border-box; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; }
th, td { text-align: left; padding: 0.2rem 1rem 0.2rem 0; vertical-align: top; }
thead th { font-weight: 400; color: #555; border-bottom: 1px solid #ccc; }
tbody th { font-weight: 600; }
.amount { text-align: right; white-space: nowrap; }
ul { padding-left: 1.2rem; margin: 0.5rem 0; }
li { overflow-wrap: anywhere; }
li.bad, li.warning, li.strong { font-weight: 600; }
@media (max-width: 30rem) { th, td { padding-right: 0.6rem; } }
@media (min-width: 60rem) {
  .piece { display: grid; grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); column-gap: 2rem; }
  .piece h2, .piece > p { grid-column: 1 / -1; }
}
@media print { .slider { display: none; } }
`;
