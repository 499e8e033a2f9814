// Names for what was drawn, out of what a file calls things: letters, digits and single hyphens, none twice.
import { nameFault } from "../paper/traced-outline.ts";

/** Gives every thing a name of its own; what cannot be one becomes the stem with a number. */
export class Names {
  private readonly taken = new Set<string>();
  private readonly counts = new Map<string, number>();

  /** The name nearest to what the file says, else the next of the stem: piece-1, piece-2. */
  take(called: string | undefined, stem: string): string {
    const own = called === undefined ? "" : asName(called);
    if (own !== "" && nameFault(own) === undefined && !this.taken.has(own)) return this.kept(own);
    const [base, from] = own === "" ? [stem, 1] : [nameFault(own) === undefined ? own : `${stem}-${own}`, 2];
    for (let number = this.counts.get(base) ?? from; ; number += 1) {
      this.counts.set(base, number + 1);
      const name = `${base}-${number}`;
      if (!this.taken.has(name)) return this.kept(name);
    }
  }

  private kept(name: string): string {
    this.taken.add(name);
    return name;
  }
}

/** What is left of a text when only what names may hold is kept; perhaps nothing. */
const asName = (text: string): string =>
  text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/[^A-Za-z0-9]+/g, "-")
    .replace(/^[^A-Za-z]+|-+$/g, "")
    .slice(0, mostLetters)
    .replace(/-+$/, "");

const mostLetters = 40;
