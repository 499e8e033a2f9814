// A written sheet as files: one SVG a page, or one PDF with all pages.
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { svg } from "../../kernel/export/svg.ts";

export interface WrittenFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** The pages as SVG: `card.svg`, or `card-1.svg` and so on where there are several. */
export const writtenSvg = (name: string, pages: readonly Drawing[]): WrittenFile[] =>
  pages.map((page, index) => ({
    name: pages.length === 1 ? `${name}.svg` : `${name}-${index + 1}.svg`,
    content: svg(page),
  }));

/** All pages as one PDF, and the characters that its font lacks. */
export const writtenPdf = async (
  name: string,
  pages: readonly Drawing[],
): Promise<{ readonly file: WrittenFile; readonly lacking: readonly string[] }> => {
  // What writes PDF and reads fonts is large, and nothing else waits for it.
  const [{ shippedLettering }, { pdf }, { lacking }] = await Promise.all([
    import("./paper-files.ts"),
    import("../../kernel/paper/pdf.ts"),
    import("../../kernel/lettering/readable.ts"),
  ]);
  const lettering = shippedLettering();
  const content = await pdf(
    {
      title: pages[0]?.title ?? name,
      words: pages.map(({ words }) => words).join(" "),
      groups: [],
      pages: pages.map(({ paper: { left, top, right, bottom }, groups }, index) => ({
        name: String(index + 1),
        width: right - left,
        height: bottom - top,
        strokes: groups.flatMap(({ strokes }) => strokes),
        texts: groups.flatMap(({ texts }) => texts),
      })),
    },
    lettering,
  );
  return { file: { name: `${name}.pdf`, content }, lacking: lacking(pages, lettering) };
};
