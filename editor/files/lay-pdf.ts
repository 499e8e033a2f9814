// A lay as a PDF file. A file of its own, because what writes PDF is large, and no other command waits for it.
import { layPrint } from "../../kernel/cloth/lay/lay-print.ts";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { pdf } from "../../kernel/paper/pdf.ts";
import { shippedLettering } from "./shipped-lettering.ts";

/** The drawing of a lay on a page of its size. */
export const layPdf = (drawing: Drawing): Promise<Uint8Array> => pdf(layPrint(drawing), shippedLettering());
