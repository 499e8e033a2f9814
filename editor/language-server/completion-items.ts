// Completions as an editor offers them.
import { type CompletionItem, CompletionItemKind, InsertTextFormat, MarkupKind } from "vscode-languageserver/node";
import { type Completion, completion } from "../assist/completion.ts";
import { rangeIn } from "./stretches.ts";
import type { WorkedDocument } from "./worked-documents.ts";
import type { Workroom } from "./workroom.ts";

/** What could stand at an offset; placeholders only for an editor that reads them. */
export const completionItems = (
  { document, place, worked }: WorkedDocument,
  offset: number,
  room: Workroom,
  readsSnippets: boolean,
): CompletionItem[] => {
  const { text } = worked.source;
  const row = text.slice(text.lastIndexOf("\n", offset - 1) + 1, offset);
  // The disk is only looked through where a file is named.
  const files = /^\s*use\s/.test(row) ? room.namesAround(place) : [];
  return completion(worked, offset, files).map((each, index): CompletionItem => {
    const isSnippet = each.isSnippet && readsSnippets;
    return {
      label: each.label,
      kind: kinds[each.kind],
      detail: each.detail,
      // The order is ours: editors sort by this text.
      sortText: String(index).padStart(5, "0"),
      insertTextFormat: isSnippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
      textEdit: {
        range: rangeIn(document, each.from, each.to),
        newText: each.isSnippet && !isSnippet ? withoutPlaceholders(each.insert) : each.insert,
      },
      ...(each.documentation !== undefined && {
        documentation: { kind: MarkupKind.Markdown, value: each.documentation },
      }),
    };
  });
};

/** `line ${1:name} = $0` with what the placeholders hold. */
const withoutPlaceholders = (snippet: string): string =>
  snippet
    .replace(/\$\{\d+:((?:\\.|[^\\}])*)\}|\$\{\d+\}|\$\d+/g, (_, held: string | undefined) => held ?? "")
    .replace(/\\([$}\\])/g, "$1");

const kinds: Record<Completion["kind"], CompletionItemKind> = {
  statement: CompletionItemKind.Keyword,
  step: CompletionItemKind.Method,
  "own-step": CompletionItemKind.Method,
  clause: CompletionItemKind.Keyword,
  edge: CompletionItemKind.Field,
  place: CompletionItemKind.Field,
  dart: CompletionItemKind.Field,
  piece: CompletionItemKind.Class,
  recipe: CompletionItemKind.Module,
  fabric: CompletionItemKind.Color,
  measure: CompletionItemKind.Constant,
  param: CompletionItemKind.Variable,
  parameter: CompletionItemKind.Variable,
  let: CompletionItemKind.Variable,
  value: CompletionItemKind.Variable,
  size: CompletionItemKind.EnumMember,
  function: CompletionItemKind.Function,
  unit: CompletionItemKind.Unit,
  word: CompletionItemKind.Keyword,
  choice: CompletionItemKind.EnumMember,
  check: CompletionItemKind.Event,
  file: CompletionItemKind.File,
  name: CompletionItemKind.Variable,
  sign: CompletionItemKind.Operator,
};
