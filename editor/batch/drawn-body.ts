// The drawings of one body's garment, in the formats that were asked for.
import type { Diagnostic } from "../../grammar/diagnostic.ts";
import type { SourceTexts } from "../../grammar/source.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import type { FileToSave } from "../files/save.ts";
import { garmentFiles } from "../terminal/draw.ts";
import type { Parcel } from "./parcel.ts";

export interface DrawnBody {
  readonly files: readonly { readonly name: string; readonly content: FileToSave["content"] }[];
  /** What no paper takes, in sentences. */
  readonly refused: readonly string[];
  /** Letters that the font lacks, at the recipe's lines. */
  readonly findings: readonly Diagnostic[];
}

/** Draws one garment for the person of this name; nothing, where no format was asked for. */
export const drawnBody = async (
  outcome: Outcome,
  texts: SourceTexts,
  { as, paper, size }: Parcel,
  person: string,
): Promise<DrawnBody> => {
  if (as.length === 0) return { files: [], refused: [], findings: [] };
  const made = { as, person, ...(size !== null && { size }), ...(paper.length > 0 && { paper }) };
  const { files, refused, lettered } = await garmentFiles(outcome, made);
  if (lettered.length === 0) return { files, refused, findings: [] };
  // What reads fonts is large, and a batch without drawings never needs it.
  const [{ shippedLettering }, { lettersMissing }, { lacking }] = await Promise.all([
    import("../files/shipped-lettering.ts"),
    import("../../kernel/lettering/letters-missing.ts"),
    import("../../kernel/lettering/readable.ts"),
  ]);
  const { findings } = lettersMissing(lacking(lettered, shippedLettering()), outcome.garment, texts);
  return { files, refused, findings };
};
