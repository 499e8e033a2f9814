// What the manual says of a statement, a function or a step of the recipe's own, in a few lines.
import { type Form, signature } from "../../grammar/phrase.ts";
import type { Statement } from "../../grammar/statements.ts";
import type { FunctionEntry } from "../../kernel/functions.ts";
import { type Entry, functionEntry, statementEntry } from "../../kernel/manual/entry.ts";
import { asCode } from "./markdown.ts";

/** A statement's sentence and what it is for. */
export const describeStatement = (statement: Statement): string => briefly(statementEntry(statement));

/** How a function is written and what it gives. */
export const describeFunction = (entry: FunctionEntry): string => briefly(functionEntry(entry));

/** How a step of the recipe's own is called. */
export const describeOwnStep = ({ verb, parts = [] }: Form, line: number | undefined): string =>
  `${asCode(signature(parts) || verb)}\n\nA step of this recipe's own${line === undefined ? "" : `, from line ${line}`}.`;

const briefly = ({ forms, sentences }: Entry): string => [...forms.map(asCode), ...sentences].join("\n\n");
