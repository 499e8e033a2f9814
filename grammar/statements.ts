// The statements of the language itself, as sentences. Every other first word is a step.
import { type Form, optional, type Part, phrase, type Slot, type TypedSlot } from "./phrase.ts";

const slot = <N extends string>(
  name: N,
  note: string,
  wanted: string,
  more: Partial<Slot> = {},
): TypedSlot<N, never> => ({
  note,
  wanted,
  shape: "value",
  many: false,
  ...more,
  name,
});

const newName = (note: string) => slot("name", note, "a name", { shape: "name" });
const value = slot("value", "what it is worth", "a value");
const least = slot("least", "the smallest it may be", "a value");
const most = slot("most", "the largest it may be", "a value");
const text = slot("text", "what it means, for people", "a text");
const condition = slot("condition", "what must be true", "a condition");
const because = slot("because", "the reason, which is printed", "a text");

/** What a statement is for, and how it is written. */
export interface Statement extends Form {
  readonly parts: readonly Part[];
  readonly summary: string;
  /** Where it may stand. */
  readonly place: "garment" | "anywhere";
}

const statement = (
  form: Form & { parts: readonly Part[] },
  place: Statement["place"],
  summary: string,
  more: Partial<Form> = {},
): Statement => ({ ...form, place, summary, ...more });

/** All statements, in the order the manual teaches them. */
export const statements: readonly Statement[] = [
  statement(
    phrase`chalkline ${slot("version", "the version of the language", "a whole number")}`,
    "garment",
    "Says which version of the language the recipe is written in; it comes first.",
  ),
  statement(
    phrase`recipe ${slot("title", "the title", "a text")}`,
    "garment",
    "Gives the recipe its title; a block may add `by`, `made-for` and `notes`.",
    { block: "fields", blockOptional: true },
  ),
  statement(
    phrase`units ${slot("unit", "in, cm or mm", "a unit", { shape: "choice", choices: ["in", "cm", "mm"] })}`,
    "garment",
    "Says in which unit results are shown; never how numbers are read.",
  ),
  statement(
    phrase`measure ${newName("the measure")} = ${value} ${optional`from ${least} to ${most}`} ${optional`${text}`}`,
    "garment",
    "A body measure with its default and range; one body serves the whole garment.",
  ),
  statement(
    phrase`param ${newName("the design choice")} = ${value} ${optional`from ${least} to ${most}`} ${optional`${text}`}`,
    "garment",
    "A design choice with its default and range; it belongs to its own recipe.",
  ),
  statement(phrase`let ${newName("the value")} = ${value}`, "anywhere", "Names a value."),
  statement(
    phrase`size ${newName("the size")}`,
    "garment",
    "A size: a block of measures, `size M { bust-girth = 92 cm }`.",
    { block: "entries" },
  ),
  statement(
    phrase`base size ${slot("name", "the size", "a size", { shape: "name" })}`,
    "garment",
    "Says which size the recipe's own defaults stand for.",
  ),
  statement(
    phrase`fabric ${newName("the cloth")} ${optional`${slot("title", "what the shop calls it", "a text")}`} ${optional`width ${slot("width", "from selvedge to selvedge", "a length")}`} ${optional`weight ${slot("weight", "of a square metre or yard", "a weight")}`} ${optional`bending-length ${slot("bendingLength", "the length that bends under its own weight", "a length")}`} ${optional`shrink-length ${slot("shrinkLength", "shrinkage along the selvedge", "a ratio")}`} ${optional`shrink-width ${slot("shrinkWidth", "shrinkage across", "a ratio")}`} ${optional`one-way`}`,
    "garment",
    "A cloth the pieces are cut from.",
  ),
  statement(
    phrase`use ${slot("path", "the other recipe's file", "a text")} as ${newName("the name its pieces go by here")}`,
    "garment",
    "Brings another recipe's pieces and values in, with other params where a block gives them.",
    { block: "entries", blockOptional: true },
  ),
  statement(
    phrase`step ${newName("the step")}`,
    "garment",
    "A step of the recipe's own, called by its name with its parameters as clauses.",
    { block: "lines", parameters: true },
  ),
  statement(
    phrase`piece ${newName("the piece")} ${optional`= ${slot("source", "the piece it is copied from", "a piece")}`}`,
    "garment",
    "A new piece, or a copy of another piece that is then altered.",
    { block: "lines" },
  ),
  statement(phrase`if ${condition}`, "anywhere", "Lines that are worked only where the condition holds.", {
    block: "lines",
  }),
  statement(phrase`else`, "anywhere", "The lines that are worked where the condition before does not hold.", {
    block: "lines",
  }),
  statement(
    phrase`repeat ${slot("count", "how many times", "a whole number")} as ${newName("counts 1, 2, …")}`,
    "anywhere",
    "Works its lines a number of times.",
    { block: "lines" },
  ),
  statement(
    phrase`solve ${newName("the value that is sought")} from ${least} to ${most} until ${condition}`,
    "anywhere",
    "Finds the value between two limits at which two lengths agree.",
    { block: "lines" },
  ),
  statement(
    phrase`check ${condition} ${optional`within ${slot("tolerance", "how far off it may be", "a value")}`} ${optional`because ${because}`}`,
    "anywhere",
    "The recipe's own constraint; its finding says both values.",
  ),
  statement(
    phrase`accept ${slot("check", "the check that is waived", "the name of a check", { shape: "choice" })} on ${slot("thing", "what it is waived on", "a piece, an edge or a place")} because ${because}`,
    "anywhere",
    "Waives a built-in check on one thing, visibly; the reason is printed.",
  ),
];

/** The first words of statements, which cannot be names. */
export const statementWords: readonly string[] = statements.map(({ verb }) => verb);
