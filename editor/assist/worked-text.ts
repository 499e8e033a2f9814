// A recipe's text together with all that came of working it: what every answer of the editor's is looked up in.
// Nothing under editor/assist knows of a page, a protocol or a file system: text and an offset go in, plain data comes out.
import type { Circumstances, Kernel, Outcome } from "../../kernel/kernel.ts";
import { noSources, type Source, type Sources } from "../../kernel/sources.ts";

/** A recipe as it stands on the table. */
export interface WorkedText {
  readonly kernel: Kernel;
  readonly source: Source;
  /** The way to the recipes that this one uses. */
  readonly sources: Sources;
  /** What it was worked with. */
  readonly circumstances: Circumstances;
  readonly outcome: Outcome;
}

/** Works a text, so that it can be asked about. */
export const workedText = (kernel: Kernel, source: Source, circumstances: Circumstances = {}): WorkedText => ({
  kernel,
  source,
  sources: circumstances.sources ?? noSources,
  circumstances,
  outcome: kernel.work(source, circumstances),
});
