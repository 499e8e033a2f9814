// A written sheet as files: one SVG a page, or one PDF with all pages. Files of their own, because what reads fonts and writes PDF is
// large, and a sheet on a screen waits for neither.
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { svg } from "../../kernel/export/svg.ts";

export interface WrittenFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** The pages as SVG: `card.svg`, or `card-1.svg` and so on where there are several. */
export const writtenSvg = async (name: string, pages: readonly Drawing[]): Promise<WrittenFile[]> => {
  const { shippedLettering } = await import("./shipped-lettering.ts");
  return pages.map((page, index) => ({
    name: pages.length === 1 ? `${name}.svg` : `${name}-${index + 1}.svg`,
    content: svg(page, shippedLettering()),
  }));
};

/** All pages as one PDF. */
export const writtenPdf = async (name: string, pages: readonly Drawing[]): Promise<WrittenFile> => {
  const [{ shippedLettering }, { pdf }] = await Promise.all([
    import("./shipped-lettering.ts"),
    import("../../kernel/paper/pdf.ts"),
  ]);
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
    shippedLettering(),
  );
  return { name: `${name}.pdf`, content };
};
