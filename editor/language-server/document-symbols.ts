// The outline of a recipe as an editor shows it.
import { type DocumentSymbol, SymbolKind } from "vscode-languageserver/node";
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { OutlineSymbol } from "../assist/symbols.ts";
import { rangeIn } from "./stretches.ts";

/** These symbols, with their own below them. */
export const documentSymbols = (document: TextDocument, symbols: readonly OutlineSymbol[]): DocumentSymbol[] =>
  symbols.map(({ name, kind, detail, from, to, nameFrom, nameTo, children }) => ({
    // An editor refuses a symbol without a name.
    name: name.trim() === "" ? kind : name,
    detail,
    kind: kinds[kind],
    range: rangeIn(document, from, to),
    selectionRange: rangeIn(document, nameFrom, nameTo),
    children: documentSymbols(document, children),
  }));

const kinds: Record<OutlineSymbol["kind"], SymbolKind> = {
  piece: SymbolKind.Class,
  edge: SymbolKind.Field,
  place: SymbolKind.Key,
  dart: SymbolKind.Property,
  measure: SymbolKind.Constant,
  param: SymbolKind.Variable,
  let: SymbolKind.Variable,
  step: SymbolKind.Method,
  size: SymbolKind.EnumMember,
  fabric: SymbolKind.Object,
  use: SymbolKind.Module,
  seam: SymbolKind.Interface,
  cut: SymbolKind.Event,
  check: SymbolKind.Boolean,
};
