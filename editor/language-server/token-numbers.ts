// Semantic tokens in the numbers of the protocol, and the legend that tells what they mean.
import { SemanticTokensBuilder, type SemanticTokensLegend } from "vscode-languageserver/node";
import type { TextDocument } from "vscode-languageserver-textdocument";
import { type SemanticToken, type TokenKind, tokenModifiers } from "../assist/semantic-tokens.ts";

// Editors colour the kinds that the protocol names, so each of ours stands for one of these.
const standing: Record<TokenKind, string> = {
  verb: "method",
  clause: "keyword",
  word: "keyword",
  name: "variable",
  edge: "property",
  place: "property",
  dart: "property",
  value: "variable",
  piece: "class",
  recipe: "namespace",
  fabric: "type",
  function: "function",
  unit: "keyword",
  number: "number",
  text: "string",
  comment: "comment",
  sign: "operator",
  parameter: "parameter",
};

const types = [...new Set(Object.values(standing))];

/** What the numbers mean; `given` is the protocol's declaration. */
export const legend: SemanticTokensLegend = {
  tokenTypes: types,
  tokenModifiers: tokenModifiers.map((modifier) => (modifier === "given" ? "declaration" : modifier)),
};

/** The tokens of a document. */
export const tokenNumbers = (document: TextDocument, tokens: readonly SemanticToken[]): number[] => {
  const builder = new SemanticTokensBuilder();
  for (const { from, to, kind, modifiers } of tokens) {
    const { line, character } = document.positionAt(from);
    const bits = modifiers.reduce((sum, modifier) => sum | (1 << tokenModifiers.indexOf(modifier)), 0);
    builder.push(line, character, to - from, types.indexOf(standing[kind]), bits);
  }
  return builder.build().data;
};
