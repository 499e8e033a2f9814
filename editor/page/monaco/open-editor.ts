// The full editor: monaco with the language of recipes, its questions answered by the kernel's worker.

import { coloring, themes } from "./coloring.ts";
import { language } from "./language.ts";
import { monaco } from "./monaco-parts.ts";
import type { FullEditor, OpenedWith } from "./opened-with.ts";
import { fileOf, uriOf } from "./providers/questioner.ts";
import { registerProviders } from "./providers.ts";
import { scrub } from "./scrub.ts";

const { editor: editors, Range, Selection } = monaco;

/** Opens the editor in its place. */
export const openEditor = (opened: OpenedWith): FullEditor => {
  // Words are completed and places found by the kernel's worker; monaco's own is never asked for anything.
  (self as unknown as { MonacoEnvironment: unknown }).MonacoEnvironment = { getWorker: () => idleWorker() };
  monaco.languages.register({ id: language, extensions: [".chalk"] });
  monaco.languages.setLanguageConfiguration(language, {
    comments: { lineComment: "#" },
    brackets: [
      ["{", "}"],
      ["(", ")"],
    ],
    autoClosingPairs: [
      { open: "{", close: "}" },
      { open: "(", close: ")" },
      { open: '"', close: '"', notIn: ["string", "comment"] },
    ],
    // A name may hold hyphens.
    wordPattern: /[\p{L}_][\p{L}\p{N}_-]*/u,
  });
  monaco.languages.setTokensProvider(language, coloring);
  for (const [name, theme] of themes) editors.defineTheme(name, theme);

  let model = modelOf(opened.file, opened.text);
  const editor = editors.create(opened.place, {
    model,
    theme: themeOf(opened.isDark),
    ariaLabel: "Recipe text",
    accessibilitySupport: "auto",
    automaticLayout: true,
    minimap: { enabled: false },
    lineNumbersMinChars: 3,
    glyphMargin: false,
    folding: true,
    fontSize: 14,
    fontFamily: '"Cascadia Mono", "DejaVu Sans Mono", Menlo, Consolas, monospace',
    scrollBeyondLastLine: false,
    wordWrap: "off",
    renderLineHighlight: "line",
    wordBasedSuggestions: "off",
    occurrencesHighlight: "off",
    links: false,
    bracketPairColorization: { enabled: false },
    tabSize: 2,
    insertSpaces: true,
    "semanticHighlighting.enabled": true,
    fixedOverflowWidgets: true,
    inlayHints: { enabled: "off" },
    padding: { top: 6 },
  });
  registerProviders(opened, () => fileOf(model.uri));
  scrub(editor, opened);

  // An edit of the page's own is told to the page by whoever makes it, through the same event.
  editor.onDidChangeModelContent(() => opened.typed(model.getValue()));
  editor.onDidChangeCursorPosition(({ position, source }) => opened.onLine(position.lineNumber, source !== "api"));
  editor.onMouseMove(({ target }) => opened.overLine(target.position?.lineNumber));
  editor.onMouseLeave(() => opened.overLine(undefined));
  editor.addCommand(monaco.KeyMod.CtrlCmd | monaco.KeyCode.KeyS, () => opened.save());

  // Line ends of two kinds in one text become one kind here, and the page has to know.
  const agree = (): void => {
    if (model.getValue() !== opened.text) opened.typed(model.getValue());
  };
  agree();

  const lit = editor.createDecorationsCollection();
  editor.setPosition(model.getPositionAt(opened.cursor));

  return {
    lay(file, text) {
      const old = model;
      if (fileOf(old.uri) === file) old.dispose();
      model = modelOf(file, text);
      editor.setModel(model);
      old.dispose();
      agree();
    },
    edit(parts, stroke) {
      if (stroke === "whole" || stroke === "begin") model.pushStackElement();
      if (parts.length > 0) {
        model.pushEditOperations(
          editor.getSelections(),
          parts.map(({ from, to, text }) => ({ range: rangeOf(from, to), text })),
          () => editor.getSelections() ?? [],
        );
      }
      if (stroke === "whole" || stroke === "end") model.pushStackElement();
    },
    goTo(place) {
      const range =
        "line" in place
          ? new Range(place.line, 1, place.line, model.getLineMaxColumn(Math.min(place.line, model.getLineCount())))
          : rangeOf(place.from, place.to);
      editor.setSelection(
        new Selection(range.startLineNumber, range.startColumn, range.endLineNumber, range.endColumn),
      );
      editor.revealRangeInCenterIfOutsideViewport(range);
    },
    find(findings) {
      editors.setModelMarkers(
        model,
        "kernel",
        findings.map(({ from, to, severity, message, hint, code }) => {
          const range = rangeOf(from, Math.max(to, from + 1));
          return {
            ...spread(range),
            severity: severity === "error" ? monaco.MarkerSeverity.Error : monaco.MarkerSeverity.Warning,
            message: hint === undefined ? message : `${message}\n${hint}`,
            code,
          };
        }),
      );
    },
    light(lines) {
      lit.set(
        lines.map((line, index) => ({
          range: new Range(line, 1, line, 1),
          options: { isWholeLine: true, className: index === 0 ? "line-drew" : "line-changed" },
        })),
      );
      const [first] = lines;
      if (first !== undefined) editor.revealLineInCenterIfOutsideViewport(first);
    },
    tellValues: (isTold) => editor.updateOptions({ inlayHints: { enabled: isTold ? "on" : "off" } }),
    dye: (isDark) => editors.setTheme(themeOf(isDark)),
    focus: () => editor.focus(),
  };

  function rangeOf(from: number, to: number): InstanceType<typeof Range> {
    const [start, end] = [model.getPositionAt(from), model.getPositionAt(to)];
    return new Range(start.lineNumber, start.column, end.lineNumber, end.column);
  }
};

const spread = (range: { startLineNumber: number; startColumn: number; endLineNumber: number; endColumn: number }) => ({
  startLineNumber: range.startLineNumber,
  startColumn: range.startColumn,
  endLineNumber: range.endLineNumber,
  endColumn: range.endColumn,
});

const themeOf = (isDark: boolean): string => (isDark ? "chalk-dark" : "chalk-light");

const modelOf = (file: string, text: string): monaco.editor.ITextModel => {
  // A recipe that was only looked up in until now becomes the one that is written in.
  editors.getModel(uriOf(file))?.dispose();
  return editors.createModel(text, language, uriOf(file));
};

/** A worker that never says anything. */
const idleWorker = (): Worker => {
  const address = URL.createObjectURL(new Blob(["self.onmessage=()=>{}"], { type: "text/javascript" }));
  return new Worker(address);
};
