// The shape of the text: its outline, what folds, what each word is, and its tidy form.
import { tokenKinds, tokenModifiers } from "../../../assist/semantic-tokens.ts";
import type { OutlineSymbol } from "../../../assist/symbols.ts";
import { language } from "../language.ts";
import { monaco } from "../monaco-parts.ts";
import { type Questioner, rangeIn, stillTrue } from "./questioner.ts";

const { FoldingRangeKind, SymbolKind } = monaco.languages;

export const shapeFrom = ({ ask }: Questioner): monaco.IDisposable[] => [
  monaco.languages.registerDocumentSymbolProvider(language, {
    displayName: "Recipe",
    provideDocumentSymbols: async (model) =>
      ((await stillTrue(model, ask("symbols", {}))) ?? []).map((symbol) => symbolIn(model, symbol)),
  }),
  monaco.languages.registerFoldingRangeProvider(language, {
    provideFoldingRanges: async (model) =>
      ((await stillTrue(model, ask("folding", {}))) ?? []).map(({ fromLine, toLine, kind }) => ({
        start: fromLine,
        end: toLine,
        ...(kind === "comments" && { kind: FoldingRangeKind.Comment }),
      })),
  }),
  monaco.languages.registerDocumentSemanticTokensProvider(language, {
    getLegend: () => ({ tokenTypes: [...tokenKinds], tokenModifiers: [...tokenModifiers] }),
    async provideDocumentSemanticTokens(model) {
      const tokens = await stillTrue(model, ask("semanticTokens", {}));
      if (!tokens) return null;
      let [line, column] = [1, 1];
      const data = tokens.flatMap(({ from, to, kind, modifiers }) => {
        const at = model.getPositionAt(from);
        const down = at.lineNumber - line;
        const across = down === 0 ? at.column - column : at.column - 1;
        [line, column] = [at.lineNumber, at.column];
        const bits = modifiers.reduce((sum, each) => sum + 2 ** tokenModifiers.indexOf(each), 0);
        return [down, across, to - from, tokenKinds.indexOf(kind), bits];
      });
      return { data: new Uint32Array(data) };
    },
    releaseDocumentSemanticTokens: () => {},
  }),
  monaco.languages.registerDocumentFormattingEditProvider(language, {
    displayName: "Tidy",
    async provideDocumentFormattingEdits(model) {
      const tidied = await stillTrue(model, ask("formatting", {}));
      return !tidied || "refused" in tidied
        ? []
        : tidied.edits.map((edit) => ({ range: rangeIn(model, edit), text: edit.text }));
    },
  }),
];

const symbolIn = (model: monaco.editor.ITextModel, symbol: OutlineSymbol): monaco.languages.DocumentSymbol => ({
  name: symbol.name === "" ? symbol.kind : symbol.name,
  detail: symbol.detail,
  kind: kinds[symbol.kind] ?? SymbolKind.Variable,
  tags: [],
  range: rangeIn(model, symbol),
  selectionRange: rangeIn(model, { from: symbol.nameFrom, to: symbol.nameTo }),
  children: symbol.children.map((child) => symbolIn(model, child)),
});

const kinds: Partial<Readonly<Record<OutlineSymbol["kind"], monaco.languages.SymbolKind>>> = {
  piece: SymbolKind.Class,
  edge: SymbolKind.Property,
  place: SymbolKind.Field,
  dart: SymbolKind.Event,
  measure: SymbolKind.Constant,
  param: SymbolKind.Variable,
  step: SymbolKind.Method,
  size: SymbolKind.EnumMember,
  use: SymbolKind.Module,
  check: SymbolKind.Boolean,
};
