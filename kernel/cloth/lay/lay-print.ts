// A lay on paper: one page as large as the cloth, for a plotter or to look at; a very long cloth on several, one after another.
import type { Drawing } from "../../drawing/drawing.ts";
import type { Page, Print } from "../../paper/page.ts";

/** The drawing as a print, true to the scale that it is drawn in. */
export const layPrint = ({ title, words, paper, groups }: Drawing): Print => {
  const { left, top, right, bottom } = paper;
  const count = Math.ceil((right - left) / longestPage);
  const length = (right - left) / count;
  const pages = Array.from({ length: count }, (_, i): Page => {
    const of = { left: left + i * length, right: left + (i + 1) * length, top, bottom };
    const window = { of, at: { x: 0, y: 0 }, scale: 1 };
    return { name: `${i + 1}`, width: length, height: bottom - top, window, strokes: [], texts: [] };
  });
  return { title, words, groups, pages };
};

// Viewers show nothing of a page beyond 14,400 units (5.08 m), mm.
const longestPage = 5000;
