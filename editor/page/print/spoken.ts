// What the page asks of its printer: drawings of a garment or of a lay as files, the same bytes as the command line writes.
import type { LaidCloth } from "../../../kernel/cloth/lay/lay-of.ts";
import type { Remarks } from "../../../kernel/drawing/remarks.ts";
import type { Garment, Units } from "../../../kernel/working.ts";
import type { LaySize } from "../../files/lay-files.ts";
import type { PrintedFile } from "../../files/printed-file.ts";

/** A worked garment, and what its drawings say of how it was drafted. */
export interface ToDraw {
  readonly garment: Garment;
  readonly remarks: Remarks;
  readonly size?: string;
}

export type ToPrint =
  /** In a format of files/pattern-files.ts. */
  | { readonly kind: "drawings"; readonly format: string; readonly toDraw: ToDraw }
  /** As PDF on a paper of kernel/paper/papers.ts. */
  | { readonly kind: "paper"; readonly paper: string; readonly toDraw: ToDraw }
  /** How the pieces lie on one cloth of these, as PDF at a tenth of the size or as large as life. */
  | {
      readonly kind: "lay";
      readonly cloths: readonly LaidCloth[];
      readonly fabric: string;
      readonly units: Units;
      readonly size: LaySize;
    };

/** The files, and the characters that they write as numbers because the font lacks them; or why there are none. */
export type Printed =
  | { readonly files: readonly PrintedFile[]; readonly lacking: readonly string[] }
  | { readonly refused: string };
