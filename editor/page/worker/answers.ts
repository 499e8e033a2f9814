// What the page may ask about the recipe on the table. Each answer is a function of the worked text and plain data.

import { hangSheet, hungRounds } from "../../../kernel/cloth/hang/hang-sheet.ts";
import { meshesOf } from "../../../kernel/cloth/hang/rigged.ts";
import type { Evaluated } from "../../../kernel/evaluate.ts";
import type { Scalar } from "../../../kernel/value.ts";
import type { Garment } from "../../../kernel/working.ts";
import type { CodeAction } from "../../assist/actions/code-action.ts";
import { codeActions, tried } from "../../assist/code-actions.ts";
import { completion } from "../../assist/completion.ts";
import { definition } from "../../assist/definition.ts";
import { folding } from "../../assist/folding.ts";
import { formatting } from "../../assist/formatting.ts";
import { type Governing, governing, type Spot } from "../../assist/governing.ts";
import { hover } from "../../assist/hover.ts";
import { inlayValues } from "../../assist/inlay-values.ts";
import { references } from "../../assist/references.ts";
import { renamable, rename } from "../../assist/rename.ts";
import { semanticTokens } from "../../assist/semantic-tokens.ts";
import { signatureHelp } from "../../assist/signature-help.ts";
import { symbols } from "../../assist/symbols.ts";
import { type WorkedText, workedText } from "../../assist/worked-text.ts";
import { readAmount } from "../../files/amount.ts";
import { bodiesIn, bodyIn } from "../../files/body-table.ts";
import { remarksOn } from "../../files/drawn-files.ts";
import { patternFormats } from "../../files/pattern-files.ts";
import { picturedAsOf } from "../../picture/as-of.ts";
import type { Picture } from "../../picture/picture.ts";
import { pictured } from "../../picture/pictured.ts";
import type { Hanging } from "../hang/spoken.ts";
import type { ToDraw } from "../print/spoken.ts";
import { shelved } from "./shelf.ts";
import type { FileText } from "./spoken.ts";

export const answers = {
  /** The pieces as the first so many steps of the working left them. */
  pictureAsOf: ({ outcome }: WorkedText, { steps }: { readonly steps: number }): Picture =>
    picturedAsOf(outcome, steps),
  /** The pieces that another text of the same recipe gives, to hold the drawing against. */
  pictureOfText: ({ kernel, source, circumstances }: WorkedText, { text }: { readonly text: string }): Picture =>
    pictured(workedText(kernel, { ...source, text }, circumstances).outcome),
  /** The numbers that a pull at this spot could turn. */
  governing: (worked: WorkedText, { spot }: { readonly spot: Spot }): Governing[] => governing(worked, spot),
  /** The garment as it hangs by the formula, with what the pictures mean. */
  hanging: ({ outcome }: WorkedText, _asked: object) => {
    const { rows, notes, units } = hangSheet(outcome);
    return { figures: rows.flat().map(({ figure }) => figure), notes, units };
  },
  /** The same to be settled: the rounds that are shown, and the meshes of their pieces. */
  meshes: ({ outcome }: WorkedText, _asked: object): Hanging => {
    const rounds = hungRounds(outcome).map(({ round }) => round);
    const shown = new Set(rounds.flatMap(({ turns }) => turns.map(({ piece }) => piece)));
    const meshes = [...meshesOf(outcome.garment)].filter(([piece]) => shown.has(piece));
    return { rounds, meshes: meshes.map(([piece, mesh]) => ({ piece, mesh })) };
  },
  /** The recipes that this one uses, and theirs. */
  filesUsed: ({ outcome }: WorkedText, _asked: object): FileText[] => usedBy(outcome),
  /** The formats that the drawings can be written in. */
  formats: (_worked: WorkedText, _asked: object): { name: string; title: string }[] =>
    patternFormats.map(({ name, title }) => ({ name, title })),
  /** The garment as it is to be drawn, with what its drawings say of it. */
  toDraw: ({ outcome, circumstances }: WorkedText, _asked: object): ToDraw => {
    const { size } = circumstances;
    const sized = size === undefined ? {} : { size };
    return { garment: outcome.garment, remarks: remarksOn(outcome, sized), ...sized };
  },
  /** The garment as it is to be laid on its cloths; nothing where the recipe cuts none of its pieces from any. */
  toLay: ({ outcome }: WorkedText, _asked: object): Garment | undefined =>
    outcome.garment.cuts.length > 0 ? outcome.garment : undefined,
  hover: (worked: WorkedText, { offset }: At) => hover(worked, offset),
  completion: (worked: WorkedText, { offset }: At) => completion(worked, offset, [...shelved.keys()]),
  signatureHelp: (worked: WorkedText, { offset }: At) => signatureHelp(worked, offset),
  definition: (worked: WorkedText, { offset }: At) => definition(worked, offset),
  references: (worked: WorkedText, { offset }: At) => references(worked, offset, others(worked)),
  renamable: (worked: WorkedText, { offset }: At) => renamable(worked, offset),
  rename: (worked: WorkedText, { offset, name }: At & { readonly name: string }) =>
    rename(worked, offset, name, others(worked)),
  symbols: (worked: WorkedText, _asked: object) => symbols(worked),
  folding: (worked: WorkedText, _asked: object) => folding(worked),
  semanticTokens: (worked: WorkedText, _asked: object) => semanticTokens(worked),
  formatting: (worked: WorkedText, _asked: object) => formatting(worked),
  inlayValues: (worked: WorkedText, { fromLine, toLine }: { readonly fromLine: number; readonly toLine: number }) =>
    inlayValues(worked, fromLine, toLine),
  codeActions: (worked: WorkedText, { from, to }: { readonly from: number; readonly to: number }) =>
    codeActions(worked, from, to, others(worked)),
  /** An action that has to be tried first, as it may be done, or with the reason why it may not. */
  triedAction: (worked: WorkedText, { action }: { readonly action: CodeAction }) => tried(worked, action),
  /** What a user wrote for a measure: a length, an angle or a number; undefined when it is none. */
  amount: (_worked: WorkedText, { written }: { readonly written: string }): Scalar | undefined => readAmount(written),
  /** The bodies in a file, and what is the matter with rows that hold none. */
  bodies: (
    _worked: WorkedText,
    { text, called }: { readonly text: string; readonly called: string },
  ): { readonly bodies: readonly Body[]; readonly problems: readonly string[] } => {
    const table = bodiesIn(text, called);
    if (!("problem" in table)) {
      return {
        bodies: table.bodies.map(({ name, measures }) => ({ name, measures: [...measures] })),
        problems: table.problems,
      };
    }
    // Not a table with one body a row: perhaps a single body.
    const single = bodyIn(text, called, undefined);
    return single instanceof Map
      ? { bodies: [{ name: called, measures: [...single] }], problems: [] }
      : { bodies: [], problems: ["problem" in single ? String(single.problem) : table.problem] };
  },
};

/** A place in the text of the recipe on the table. */
interface At {
  readonly offset: number;
}

const others = ({ source }: WorkedText): FileText[] =>
  [...shelved].flatMap(([file, text]) => (file === source.file ? [] : [{ file, text }]));

/** A body as the page keeps it. */
export interface Body {
  readonly name: string;
  readonly measures: readonly (readonly [string, Scalar])[];
}

const usedBy = ({ uses }: Evaluated): FileText[] => [
  ...new Map(
    [...uses.values()].flatMap((used) => [
      [used.tree.file, { file: used.tree.file, text: used.tree.text }] as const,
      ...usedBy(used).map((each) => [each.file, each] as const),
    ]),
  ).values(),
];

export type Answers = typeof answers;
