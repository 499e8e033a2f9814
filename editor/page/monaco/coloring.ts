// Colors of the text: a rough reading that is there at once, line by line, and the ink for both themes.
import type { monaco } from "./monaco-parts.ts";

// Nothing of a line depends on the line before.
const state: monaco.languages.IState = { clone: () => state, equals: () => true };

const parts =
  /(?<comment>#.*)|(?<text>"(?:[^"\\]|\\.)*"?)|(?<amount>\d+(?:\.\d+)?(?:\s+\d+\/\d+)?(?:\s*(?:mm|cm|m|in|ft|yd|deg|gsm)(?![\p{L}\p{N}_-])|%)?)|(?<name>[\p{L}_][\p{L}\p{N}_-]*)/gu;

/** The first word of a line is its verb; the rest is names, amounts, texts and comments. What a name means is added later by the worker. */
export const coloring: monaco.languages.TokensProvider = {
  getInitialState: () => state,
  tokenize(line) {
    const tokens: monaco.languages.IToken[] = [{ startIndex: 0, scopes: "" }];
    for (const found of line.matchAll(parts)) {
      const [kind] = Object.entries(found.groups!).find(([, text]) => text !== undefined)!;
      const isVerb = kind === "name" && line.slice(0, found.index).trim() === "";
      tokens.push({ startIndex: found.index, scopes: isVerb ? "verb" : kind });
      tokens.push({ startIndex: found.index + found[0].length, scopes: "" });
    }
    return { tokens, endState: state };
  },
};

const inks = {
  light: {
    ink: "1e2a44",
    verb: "7a1f10",
    amount: "0b5394",

    comment: "5b6274",
    text: "2f6130",
    card: "fffdf8",
    line: "f4ecdd",
  },
  dark: {
    ink: "f2ece0",
    verb: "ff9d80",
    amount: "8cc4ff",

    comment: "b6bcc2",
    text: "a9d6a0",
    card: "272e34",
    line: "2f3840",
  },
} as const;

const themeFor = (
  base: "vs" | "vs-dark",
  ink: (typeof inks)["light" | "dark"],
): monaco.editor.IStandaloneThemeData => ({
  base,
  inherit: true,
  rules: [
    { token: "", foreground: ink.ink },
    { token: "name", foreground: ink.ink },
    { token: "verb", foreground: ink.verb, fontStyle: "bold" },
    { token: "amount", foreground: ink.amount },
    { token: "comment", foreground: ink.comment, fontStyle: "italic" },
    { token: "text", foreground: ink.text },
    { token: "clause", foreground: ink.verb },
    { token: "naming", foreground: ink.ink, fontStyle: "bold" },
    // As the worker tells them, once it has read the line.
    { token: "number", foreground: ink.amount },
    { token: "value", foreground: ink.amount },
    { token: "unit", foreground: ink.amount },
    { token: "piece", foreground: ink.ink, fontStyle: "underline" },
    { token: "recipe", foreground: ink.ink, fontStyle: "underline" },
    { token: "function", foreground: ink.verb },
    { token: "sign", foreground: ink.ink },
  ],
  colors: {
    "editor.background": `#${ink.card}`,
    "editor.foreground": `#${ink.ink}`,
    "editor.lineHighlightBackground": `#${ink.line}`,
    "editorLineNumber.foreground": `#${ink.comment}`,
    "editorCursor.foreground": `#${ink.verb}`,
  },
});

export const themes: readonly (readonly [string, monaco.editor.IStandaloneThemeData])[] = [
  ["chalk-light", themeFor("vs", inks.light)],
  ["chalk-dark", themeFor("vs-dark", inks.dark)],
];
