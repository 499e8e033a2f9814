// A sentence as data: what may stand on a line after its first word. The parser, the tidy printer, completion and
// the manual all read these; the grammar itself knows no step by name.

import { listWithOr } from "./nearest.ts";

/** What the grammar has to know of a slot; what it means is the kernel's business. */
export type SlotShape =
  /** A new name: `point A = …`. */
  | "name"
  /** A word out of a fixed few: `corners turned`. */
  | "choice"
  /** A direction: `leaving square-to shoulder`. */
  | "direction"
  /** A whole number with no comma before it: `cut back 1`. */
  | "count"
  /** Any other value. */
  | "value";

/** A hole in a sentence. */
export interface Slot {
  readonly name: string;
  /** What stands here, in drafting words: "the edge that is opened". */
  readonly note: string;
  /** What kind of thing it is: "an edge", "a length". */
  readonly wanted: string;
  readonly shape: SlotShape;
  /** One, or several with commas between them. */
  readonly many: boolean;
  /** The words of a choice. */
  readonly choices?: readonly string[];
  /** A word that may follow each of several values, with a value of its own: `through A heading down, B`. */
  readonly suffix?: { readonly word: string; readonly slot: Slot };
}

/** A clause: its word, and the slots behind it; no slot at all makes it a flag. */
export interface Clause {
  readonly word: string;
  readonly slot?: Slot;
  readonly optional: boolean;
  /** Words of the clauses that have to stand beside this one. */
  readonly needs: readonly string[];
}

/** One form of a line. */
export interface Form {
  readonly verb: string;
  /** The names it gives, before the `=`. */
  readonly naming?: {
    readonly slot: Slot;
    readonly equals: "always" | "perhaps" | "never";
    readonly optional: boolean;
  };
  readonly operand?: Slot & { readonly optional: boolean };
  /** A number that follows the operand with nothing between: `cut back 1`. */
  readonly count?: Slot;
  readonly clauses: readonly Clause[];
  /** A text that may close the line. */
  readonly text?: Slot & { readonly optional: boolean };
  readonly block?: "lines" | "entries" | "fields";
  readonly blockOptional?: boolean;
  readonly parameters?: boolean;
  /** The sentence as data, for showing it. */
  readonly parts?: readonly Part[];
  /** A line written in this form. */
  readonly example?: string;
}

/** A phrase knows the types of its slots, so that the code behind it does too. */
export interface Phrase<_Fill = unknown> extends Form {
  readonly parts: readonly Part[];
}

export type Part =
  | { readonly kind: "words"; readonly words: readonly string[] }
  | { readonly kind: "slot"; readonly slot: Slot }
  | { readonly kind: "optional"; readonly parts: readonly Part[] };

/** A slot that yields a T under the name N. */
export interface TypedSlot<N extends string, T> extends Slot {
  readonly name: N;
  /** Never read at run time: it carries the type of what stands here. */
  readonly filledWith?: T;
}

/** An optional stretch of a sentence. */
export interface OptionalPart<F> {
  readonly kind: "optional";
  readonly parts: readonly Part[];
  readonly filledWith?: F;
}

type FillOf<H> =
  H extends OptionalPart<infer F>
    ? Partial<F>
    : H extends TypedSlot<infer N, infer T>
      ? { readonly [K in N]: T }
      : never;
type Both<U> = (U extends unknown ? (u: U) => void : never) extends (i: infer I) => void ? I : never;
type Fill<H extends readonly unknown[]> = H extends readonly [] ? unknown : Both<FillOf<H[number]>>;
type Hole = TypedSlot<string, unknown> | OptionalPart<unknown>;

/** Writes a sentence: phrase`spread-from ${hinge} to ${target} by ${opening}`. The first word is the verb. */
export const phrase = <const H extends readonly Hole[]>(words: TemplateStringsArray, ...holes: H): Phrase<Fill<H>> => {
  const parts = partsOf(words, holes);
  return { ...formOf(parts), parts };
};

/** Writes an optional stretch of a sentence; its clauses stand together or not at all. */
export const optional = <const H extends readonly Hole[]>(
  words: TemplateStringsArray,
  ...holes: H
): OptionalPart<Fill<H>> => ({ kind: "optional", parts: partsOf(words, holes) });

const isOptional = (hole: Hole): hole is OptionalPart<unknown> => "kind" in hole;

const partsOf = (words: TemplateStringsArray, holes: readonly Hole[]): Part[] =>
  words.flatMap((text, index): Part[] => {
    const list = text.split(/\s+/).filter((word) => word !== "");
    const hole = holes[index];
    return [
      ...(list.length > 0 ? [{ kind: "words" as const, words: list }] : []),
      ...(hole === undefined
        ? []
        : [
            isOptional(hole) ? { kind: "optional" as const, parts: hole.parts } : { kind: "slot" as const, slot: hole },
          ]),
    ];
  });

/** Reads the parts of a sentence as verb, names, operand, clauses and closing text. */
const formOf = (parts: readonly Part[]): Form => {
  const [first, ...rest] = parts;
  if (first?.kind !== "words") throw new Error("a phrase starts with its verb");
  const [verb, ...wordsAfterVerb] = first.words;
  let naming: Form["naming"];
  let operand: Form["operand"];
  let text: Form["text"];
  let count: Form["count"];
  const clauses: Clause[] = [];

  const read = (list: readonly Part[], isOptionalPart: boolean): void => {
    const firstClause = clauses.length;
    let word: string | undefined;
    const flushFlag = (): void => {
      if (word !== undefined) clauses.push({ word, optional: isOptionalPart, needs: [] });
      word = undefined;
    };
    for (const part of list) {
      if (part.kind === "words") {
        for (const each of part.words) {
          if (each === "=") {
            if (naming) naming = { ...naming, equals: isOptionalPart ? "perhaps" : "always" };
            continue;
          }
          flushFlag();
          word = each;
        }
      } else if (part.kind === "optional") {
        flushFlag();
        read(part.parts, true);
      } else if (word !== undefined) {
        clauses.push({ word, slot: part.slot, optional: isOptionalPart, needs: [] });
        word = undefined;
      } else if (part.slot.shape === "name" && !naming && !operand) {
        naming = { slot: part.slot, equals: "never", optional: isOptionalPart };
      } else if (operand === undefined && clauses.length === 0) {
        operand = { ...part.slot, optional: isOptionalPart };
      } else if (part.slot.shape === "count") {
        count = part.slot;
      } else {
        text = { ...part.slot, optional: isOptionalPart };
      }
    }
    flushFlag();
    const added = clauses.slice(firstClause);
    if (isOptionalPart && added.length > 1 && added.every((clause) => clause.optional)) {
      for (let index = firstClause; index < clauses.length; index += 1) {
        const clause = clauses[index]!;
        clauses[index] = {
          ...clause,
          needs: added.filter((other) => other.word !== clause.word).map((other) => other.word),
        };
      }
    }
  };

  read([{ kind: "words", words: wordsAfterVerb }, ...rest], false);
  return {
    verb: verb!,
    ...(naming && { naming }),
    ...(operand && { operand }),
    clauses,
    ...(text && { text }),
    ...(count && { count }),
  };
};

/** The sentence as the manual shows it: `spread-from PLACE to EDGE by LENGTH [along EDGE]`. */
export const signature = (parts: readonly Part[]): string =>
  parts
    .map((part): string => {
      if (part.kind === "words") return part.words.join(" ");
      if (part.kind === "optional") return `[${signature(part.parts)}]`;
      return slotSign(part.slot);
    })
    .join(" ")
    .replace(/\s+,/g, ",");

/** How a line is written, as a hint, with an example where there is one. */
export const howToWrite = (forms: readonly Form[]): string | undefined => {
  const written = forms.flatMap(({ parts }) => (parts ? [signature(parts)] : []));
  if (written.length === 0) return undefined;
  const example = forms.find((form) => form.example !== undefined)?.example;
  return `Write ${listWithOr(written)}${example === undefined ? "." : `, as in: ${example}`}`;
};

const slotSign = (slot: Slot): string => {
  const one = slot.choices ? slot.choices.join("|") : shortly(slot.wanted);
  const withSuffix = slot.suffix ? `${one} [${slot.suffix.word} ${slotSign(slot.suffix.slot)}]` : one;
  return slot.many ? `${withSuffix}, …` : withSuffix;
};

/** "an edge of this piece or a place" as a sign: EDGE-OR-PLACE. */
const shortly = (wanted: string): string =>
  wanted
    .replace(/ of this piece| of the piece|\bnamed |\bplain /g, "")
    .replace(/\b(?:an?|the) /g, "")
    .replace(/,? /g, "-")
    .toUpperCase();
