// A drawing as a file, to be saved under its name or handed over by the page.

export interface PrintedFile {
  readonly name: string;
  /** Its media type. */
  readonly type: string;
  readonly content: string | Uint8Array;
}

/** The media type of PDF (RFC 8118). */
export const pdfType = "application/pdf";
