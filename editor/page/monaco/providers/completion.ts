// What can stand at the cursor.
import type { Completion } from "../../../assist/completion.ts";
import { language } from "../language.ts";
import { monaco } from "../monaco-parts.ts";
import { type Questioner, rangeIn } from "./questioner.ts";

const { CompletionItemKind, CompletionItemInsertTextRule } = monaco.languages;

export const completionFrom = ({ ask }: Questioner): monaco.IDisposable =>
  monaco.languages.registerCompletionItemProvider(language, {
    triggerCharacters: [" ", ".", '"'],
    async provideCompletionItems(model, position) {
      // Whoever types on while this is worked out types behind the word that it is about, and monaco narrows the list by itself:
      // the answer holds for the longer word too.
      const found = (await ask("completion", { offset: model.getOffsetAt(position) })) ?? [];
      return {
        suggestions: found.map(({ label, kind, detail, insert, isSnippet, from, to, documentation }, index) => ({
          label,
          kind: kinds[kind] ?? CompletionItemKind.Text,
          detail,
          insertText: insert,
          ...(isSnippet && { insertTextRules: CompletionItemInsertTextRule.InsertAsSnippet }),
          range: rangeIn(model, { from, to }),
          sortText: String(index).padStart(5, "0"),
          ...(documentation !== undefined && { documentation: { value: documentation, supportHtml: false } }),
        })),
      };
    },
  });

const kinds: Partial<Readonly<Record<Completion["kind"], monaco.languages.CompletionItemKind>>> = {
  statement: CompletionItemKind.Keyword,
  step: CompletionItemKind.Function,
  "own-step": CompletionItemKind.Method,
  clause: CompletionItemKind.Keyword,
  edge: CompletionItemKind.Property,
  place: CompletionItemKind.Field,
  dart: CompletionItemKind.Event,
  piece: CompletionItemKind.Class,
  recipe: CompletionItemKind.Module,
  fabric: CompletionItemKind.Color,
  measure: CompletionItemKind.Constant,
  param: CompletionItemKind.Variable,
  let: CompletionItemKind.Variable,
  value: CompletionItemKind.Value,
  size: CompletionItemKind.EnumMember,
  function: CompletionItemKind.Function,
  unit: CompletionItemKind.Unit,
  choice: CompletionItemKind.EnumMember,
  check: CompletionItemKind.Interface,
  file: CompletionItemKind.File,
};
