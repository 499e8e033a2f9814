// The built language server, asked over its standard input and output by a real client of the protocol.
import { type ChildProcessWithoutNullStreams, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, expect, test } from "vitest";
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node";
import type {
  CodeAction,
  CompletionItem,
  Diagnostic,
  DocumentSymbol,
  Hover,
  InitializeResult,
  InlayHint,
  Location,
  Position,
  PublishDiagnosticsParams,
  Range,
  SignatureHelp,
  TextEdit,
  WorkspaceEdit,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import { program, workroom } from "../terminal/chalkline.ts";
import { recipeText } from "./assist/marked.ts";

const block = `chalkline 1
units cm
param long = 30 cm from 10 cm to 60 cm "from top to hem"
piece panel {
  point A = (0 cm, 0 cm)
  point B = A right 20 cm
  point C = B down long
  point D = A down long
  line top = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline top, side, hem, center
  mark hem as hem
  grain along center
  allow top, side, center by 1 cm
  allow hem by 2 cm
}
`;
const vest = `chalkline 1
units cm
use "blocks/panel.chalk" as block { long = 40 cm }
fabric felt "felt" width 90 cm
piece back = block.panel {
  extend-hem hem by 5 cm
}
cut back 2 from felt
`;

/** An editor that talks to a server of its own. */
interface Client {
  readonly folder: string;
  readonly capabilities: InitializeResult["capabilities"];
  readonly server: ChildProcessWithoutNullStreams;
  readonly connection: MessageConnection;
  uriOf(file: string): string;
  open(file: string, text: string): TextDocument;
  /** Writes the text anew and says so. */
  change(document: TextDocument, text: string): TextDocument;
  ask<T>(method: string, document: TextDocument, more?: object): Promise<T>;
  /** What is told of a document next that holds as many findings as this, or any. */
  findings(uri: string, isWanted: (found: readonly Diagnostic[]) => boolean): Promise<readonly Diagnostic[]>;
}

const running: Client[] = [];

afterEach(() => {
  for (const { server, connection } of running.splice(0)) {
    connection.dispose();
    server.kill();
  }
});

const start = async (files: readonly (readonly [string, string])[], hasFolder = true): Promise<Client> => {
  const folder = workroom(...files);
  const server = spawn(process.execPath, [program, "language-server", "--stdio"], { cwd: folder });
  const connection = createMessageConnection(
    new StreamMessageReader(server.stdout),
    new StreamMessageWriter(server.stdin),
  );
  const told = new Map<string, readonly Diagnostic[]>();
  const waiting = new Set<() => void>();
  connection.onNotification("textDocument/publishDiagnostics", ({ uri, diagnostics }: PublishDiagnosticsParams) => {
    told.set(uri, diagnostics);
    for (const look of waiting) look();
  });
  connection.listen();
  const uriOf = (file: string): string => pathToFileURL(join(folder, file)).href;
  const { capabilities } = (await connection.sendRequest("initialize", {
    processId: process.pid,
    rootUri: null,
    workspaceFolders: hasFolder ? [{ uri: pathToFileURL(folder).href, name: "workroom" }] : null,
    capabilities: {
      textDocument: {
        completion: { completionItem: { snippetSupport: true } },
        codeAction: { dataSupport: true, disabledSupport: true, resolveSupport: { properties: ["edit"] } },
      },
    },
  })) as InitializeResult;
  await connection.sendNotification("initialized", {});
  const client: Client = {
    folder,
    capabilities,
    server,
    connection,
    uriOf,
    open(file, text) {
      const document = TextDocument.create(uriOf(file), "chalkline", 1, text);
      const { uri, languageId, version } = document;
      void connection.sendNotification("textDocument/didOpen", { textDocument: { uri, languageId, version, text } });
      return document;
    },
    change({ uri, version }, text) {
      void connection.sendNotification("textDocument/didChange", {
        textDocument: { uri, version: version + 1 },
        contentChanges: [{ text }],
      });
      return TextDocument.create(uri, "chalkline", version + 1, text);
    },
    ask: (method, { uri }, more = {}) =>
      connection.sendRequest(`textDocument/${method}`, { textDocument: { uri }, ...more }),
    findings: (uri, isWanted) =>
      new Promise((resolve) => {
        const look = (): void => {
          const found = told.get(uri);
          if (!found || !isWanted(found)) return;
          waiting.delete(look);
          resolve(found);
        };
        waiting.add(look);
        look();
      }),
  };
  running.push(client);
  return client;
};

const files = [
  ["blocks/panel.chalk", block],
  ["vest.chalk", vest],
] as const;

/** Where these words stand in a document, `into` characters further on. */
const at = (document: TextDocument, words: string, into = 1): { position: Position } => {
  const offset = document.getText().indexOf(words);
  if (offset < 0) throw new Error(`there is no ${words}`);
  return { position: document.positionAt(offset + into) };
};

const rangeOf = (document: TextDocument, words: string): Range => {
  const from = document.getText().indexOf(words);
  return { start: document.positionAt(from), end: document.positionAt(from + words.length) };
};

const wordsAt = (document: TextDocument, range: Range): string => document.getText(range);

test("it says what it can do, and goodbye", async () => {
  const { capabilities, connection, server } = await start(files);
  expect(capabilities).toMatchObject({
    hoverProvider: true,
    renameProvider: { prepareProvider: true },
    documentFormattingProvider: true,
    inlayHintProvider: true,
  });
  await connection.sendRequest("shutdown");
  const gone = once(server, "exit");
  await connection.sendNotification("exit");
  expect((await gone)[0]).toBe(0);
});

test("findings come while typing, and go when the mistake is mended", async () => {
  const client = await start(files);
  const document = client.open("vest.chalk", vest.replace("by 5 cm", "by 5"));
  const [finding] = await client.findings(document.uri, (found) => found.length > 0);
  expect(finding).toMatchObject({ severity: 1, source: "chalkline", code: "value-kind" });
  expect(wordsAt(document, finding!.range)).toBe("5");
  client.change(document, vest);
  expect(await client.findings(document.uri, (found) => found.length === 0)).toEqual([]);
});

test("only the newest text is told of", async () => {
  const client = await start(files);
  let document = client.open("vest.chalk", vest);
  for (const length of ["1", "12", "123 c", "123 cm +", "6 cm"])
    document = client.change(document, vest.replace("5 cm", length));
  const shown: PublishDiagnosticsParams[] = [];
  client.connection.onNotification("textDocument/publishDiagnostics", (told: PublishDiagnosticsParams) => {
    shown.push(told);
  });
  await expect.poll(() => shown.length, { timeout: 5000 }).toBeGreaterThan(0);
  expect(shown.map(({ version, diagnostics }) => [version, diagnostics])).toEqual([[document.version, []]]);
});

test("what is open and not saved is what other recipes use", async () => {
  const client = await start(files);
  const document = client.open("vest.chalk", vest);
  await client.findings(document.uri, (found) => found.length === 0);
  // The block loses its hem in the editor, and keeps it on the disk.
  const open = client.open("blocks/panel.chalk", block);
  client.change(open, block.replaceAll("hem", "low"));
  const found = await client.findings(document.uri, (each) => each.length > 0);
  expect(found.map(({ range }) => wordsAt(document, range))).toContain("hem");
  // Closed again, the disk counts.
  await client.connection.sendNotification("textDocument/didClose", { textDocument: { uri: open.uri } });
  await client.findings(document.uri, (each) => each.length === 0);
});

test("a mistake in a used recipe stands on the line that uses it", async () => {
  const client = await start([["blocks/panel.chalk", block.replace("A right 20 cm", "A right 20")], files[1]]);
  const document = client.open("vest.chalk", vest);
  const [finding] = await client.findings(document.uri, (found) => found.length > 0);
  expect(wordsAt(document, finding!.range)).toContain('use "blocks/panel.chalk" as block');
  expect(finding!.message).toContain("In line 6 of blocks/panel.chalk");
  expect(finding!.relatedInformation![0]!.location).toMatchObject({
    uri: client.uriOf("blocks/panel.chalk"),
    range: { start: { line: 5 } },
  });
});

test("hover, completion and signature help answer at the cursor", async () => {
  const client = await start(files);
  const document = client.open("vest.chalk", vest);
  const hover = await client.ask<Hover>("hover", document, at(document, "hem by"));
  expect(wordsAt(document, hover.range!)).toBe("hem");
  // 20 cm wide, and extended at both sides by straight neighbours: still 20 cm.
  expect(JSON.stringify(hover.contents)).toContain("20 cm");
  const items = await client.ask<CompletionItem[]>("completion", document, at(document, "hem by", 0));
  expect(items.map(({ label }) => label)).toEqual(expect.arrayContaining(["hem", "side", "center"]));
  const paths = await client.ask<CompletionItem[]>("completion", document, at(document, "blocks/panel", 3));
  expect(paths.map(({ label }) => label)).toContain("blocks/panel.chalk");
  const help = await client.ask<SignatureHelp>("signatureHelp", document, at(document, "by 5 cm", 4));
  expect(help.signatures[0]!.label).toContain("extend-hem");
});

test("definitions lead into the used recipe, and the path to its file", async () => {
  const client = await start(files);
  const document = client.open("vest.chalk", vest);
  const [given] = await client.ask<Location[]>("definition", document, at(document, "hem by"));
  expect(given!.uri).toBe(client.uriOf("blocks/panel.chalk"));
  expect(given!.range).toEqual({ start: { line: 10, character: 7 }, end: { line: 10, character: 10 } });
  const [file] = await client.ask<Location[]>("definition", document, at(document, "blocks/panel"));
  expect(file!.uri).toBe(client.uriOf("blocks/panel.chalk"));
  const [link] = await client.ask<{ range: Range; target: string }[]>("documentLink", document);
  expect(wordsAt(document, link!.range)).toBe("blocks/panel.chalk");
  expect(link!.target).toBe(client.uriOf("blocks/panel.chalk"));
});

test("references and a new name reach recipes that are not open", async () => {
  const client = await start(files);
  const document = client.open("blocks/panel.chalk", block);
  const context = { includeDeclaration: true };
  const found = await client.ask<Location[]>("references", document, { ...at(document, "hem = D"), context });
  // In the block: given, in the outline, marked and allowed; in the vest: extended.
  expect(found.map(({ uri, range }) => `${uri.slice(uri.lastIndexOf("/") + 1)} ${range.start.line + 1}`)).toEqual([
    "panel.chalk 11",
    "panel.chalk 13",
    "panel.chalk 14",
    "panel.chalk 17",
    "vest.chalk 6",
  ]);
  const named = await client.ask<{ placeholder: string }>("prepareRename", document, at(document, "hem = D"));
  expect(named.placeholder).toBe("hem");
  const edit = await client.ask<WorkspaceEdit>("rename", document, { ...at(document, "hem = D"), newName: "low-edge" });
  const now = (file: string, text: string): string =>
    TextDocument.applyEdits(TextDocument.create("", "", 0, text), edit.changes![client.uriOf(file)]!);
  expect(now("blocks/panel.chalk", block)).toContain("  line low-edge = D to C\n");
  expect(now("blocks/panel.chalk", block)).toContain("  mark low-edge as hem\n");
  expect(now("vest.chalk", vest)).toContain("  extend-hem low-edge by 5 cm\n");
  await expect(client.ask("rename", document, { ...at(document, "hem = D"), newName: "side" })).rejects.toThrow(
    "side already names something here, since line 10.",
  );
});

test("a recipe that is moved in the editor is used from its new place", async () => {
  const client = await start(files);
  client.open("vest.chalk", vest);
  const moved = (oldUri: string, newUri: string): Promise<WorkspaceEdit | null> =>
    client.connection.sendRequest("workspace/willRenameFiles", { files: [{ oldUri, newUri }] });
  const file = await moved(client.uriOf("blocks/panel.chalk"), client.uriOf("basis/front panel.chalk"));
  const uri = client.uriOf("vest.chalk");
  expect(file).toEqual({ changes: { [uri]: [expect.objectContaining({ newText: '"basis/front panel.chalk"' })] } });
  const folder = await moved(client.uriOf("blocks"), client.uriOf("basis"));
  expect(folder!.changes![uri]![0]!.newText).toBe('"basis/panel.chalk"');
  expect(await moved(client.uriOf("vest.chalk"), client.uriOf("waistcoat.chalk"))).toBeNull();
});

test("outline, folds, colours, values and tidy text", async () => {
  const client = await start(files);
  const untidy = block.replace("point A = ", "point   A  =  ");
  const document = client.open("blocks/panel.chalk", untidy);
  const symbols = await client.ask<DocumentSymbol[]>("documentSymbol", document);
  const piece = symbols.find(({ name }) => name === "panel")!;
  expect(piece.children!.map(({ name }) => name)).toEqual(expect.arrayContaining(["A", "hem"]));
  expect(wordsAt(document, piece.selectionRange)).toBe("panel");
  const folds = await client.ask<{ startLine: number; endLine: number }[]>("foldingRange", document);
  expect(folds.map(({ startLine }) => startLine)).toContain(3);
  const { data } = await client.ask<{ data: number[] }>("semanticTokens/full", document);
  const { legend } = client.capabilities.semanticTokensProvider!;
  // The first word, `chalkline`, is a verb, which editors colour as a method.
  expect(data.slice(0, 3)).toEqual([0, 0, "chalkline".length]);
  expect(legend.tokenTypes[data[3]!]).toBe("method");
  expect(data.length % 5).toBe(0);
  const range = { start: { line: 0, character: 0 }, end: { line: 30, character: 0 } };
  const hints = await client.ask<InlayHint[]>("inlayHint", document, { range });
  // `line top = A to B`, and A and B are 20 cm apart.
  expect(hints.find(({ position }) => position.line === 8)?.label).toContain("20 cm");
  const edits = await client.ask<TextEdit[]>("formatting", document, { options: { tabSize: 2, insertSpaces: true } });
  expect(TextDocument.applyEdits(document, edits)).toBe(block);
});

test("actions come with their change, and one that has to be tried when it is picked", async () => {
  const client = await start(files);
  const text = vest.replace("by 5 cm", "by 5").replace("extend-hem", "mark center as fold\n  extend-hem");
  const document = client.open("vest.chalk", text);
  const ask = (words: string): Promise<CodeAction[]> =>
    client.ask("codeAction", document, { range: rangeOf(document, words), context: { diagnostics: [] } });
  const unit = (await ask("5\n")).find(({ title }) => title === "Write 5 cm")!;
  expect(TextDocument.applyEdits(document, unit.edit!.changes![document.uri]!)).toContain("hem by 5 cm\n");
  const step = (await ask("mark center as fold")).find(({ title }) => title.includes("step"))!;
  expect(step.edit).toBeUndefined();
  const done = (await client.connection.sendRequest("codeAction/resolve", step)) as CodeAction;
  expect(TextDocument.applyEdits(document, done.edit!.changes![document.uri]!)).toContain(
    "step own-step (edge center) {\n  mark center as fold\n}",
  );
});

test("characters are counted in UTF-16, and lines may end as in Windows", async () => {
  const client = await start(files);
  // The scissors are two UTF-16 units and one character.
  const text = 'chalkline 1\r\nunits cm\r\nlet wide = length("\u{1F9F5}\u{1F9F5}", wid)\r\nlet late = wide\r\n';
  const document = client.open("odd.chalk", text);
  const found = await client.findings(document.uri, (each) => each.length > 0);
  for (const { range } of found) expect(wordsAt(document, range)).not.toMatch(/[\r\n]/);
  const [given] = await client.ask<Location[]>("definition", document, at(document, "wide\r\n", 1));
  expect(given!.range).toEqual({ start: { line: 2, character: 4 }, end: { line: 2, character: 8 } });
  const odd = client.open(
    "odder.chalk",
    'chalkline 1\r\nparam a = 1 cm "\u{1F9F5}" # a\r\nlet b = "\u{1F9F5}" + nothing\r\n',
  );
  const [finding] = await client.findings(odd.uri, (each) => each.length > 0);
  // let b = "🧵" + nothing: the name begins behind 8 + 4 + 3 UTF-16 units.
  expect(finding!.range).toEqual({ start: { line: 2, character: 15 }, end: { line: 2, character: 22 } });
});

test("nothing outside of the open folder is read", async () => {
  const client = await start([
    ["inside/coat.chalk", 'chalkline 1\nuse "../secret.chalk" as secret\nuse "link.chalk" as link\n'],
    ["secret.chalk", "chalkline 1\nlet wide = 4 cm\n"],
  ]);
  // The folder that is opened is inside; the document lies in it.
  const inner = await start([["a.chalk", "chalkline 1\n"]]);
  mkdirSync(join(inner.folder, "blocks"));
  symlinkSync(join(client.folder, "secret.chalk"), join(inner.folder, "blocks/link.chalk"));
  const text =
    'chalkline 1\nuse "../secret.chalk" as secret\nuse "blocks/link.chalk" as link\nuse "/etc/passwd" as it\n';
  const document = inner.open("coat.chalk", text);
  const found = await inner.findings(document.uri, (each) => each.length > 0);
  expect(found.map(({ code }) => code)).toEqual(["use-outside", "file-outside", "use-absolute"]);
});

test("a text that was never saved, and one without an open folder, are answered too", async () => {
  const client = await start(files, false);
  const alone = client.open("vest.chalk", vest);
  expect(await client.findings(alone.uri, () => true)).toEqual([]);
  const untitled = TextDocument.create(
    "untitled:Untitled-1",
    "chalkline",
    1,
    "chalkline 1\nlet wide = 4 cm\nlet b = wide\n",
  );
  const { uri, languageId, version } = untitled;
  await client.connection.sendNotification("textDocument/didOpen", {
    textDocument: { uri, languageId, version, text: untitled.getText() },
  });
  const [given] = await client.ask<Location[]>("definition", untitled, at(untitled, "wide\n"));
  expect(given).toEqual({ uri, range: rangeOf(untitled, "wide") });
  // Neither is a file of a folder that is not there yet.
  const fresh = client.open("new/folder/coat.chalk", 'chalkline 1\nuse "none.chalk" as none\n');
  const [finding] = await client.findings(fresh.uri, (each) => each.length > 0);
  expect(finding!.code).toBe("file-missing");
});

test("a document that nobody opened is answered with nothing", async () => {
  const client = await start(files);
  const stranger = TextDocument.create("file:///nowhere/at-all.chalk", "chalkline", 1, "");
  const position = { line: 3, character: 3 };
  const range = { start: position, end: position };
  const options = { tabSize: 2, insertSpaces: true };
  for (const [method, more] of [
    ["hover", { position }],
    ["completion", { position }],
    ["signatureHelp", { position }],
    ["definition", { position }],
    ["references", { position, context: { includeDeclaration: true } }],
    ["prepareRename", { position }],
    ["rename", { position, newName: "b" }],
    ["documentSymbol", {}],
    ["foldingRange", {}],
    ["inlayHint", { range }],
    ["codeAction", { range, context: { diagnostics: [] } }],
    ["formatting", { options }],
    ["documentLink", {}],
  ] as const)
    expect(await client.ask(method, stranger, more), method).toBeNull();
  expect(await client.ask("semanticTokens/full", stranger)).toEqual({ data: [] });
});

test("broken documents, and places that are not there, never end it", { timeout: 60_000 }, async () => {
  const client = await start(files);
  const whole = recipeText("bell-sleeve.chalk");
  let document = client.open("broken.chalk", whole);
  const broken = [
    whole.replace(/[{}]/g, ""),
    whole.slice(0, whole.length * 0.6),
    whole.replaceAll('"', ""),
    whole.replaceAll("\n", "\r\n").replace(/ (?:by|to) /g, " "),
    '\u0000{{{((("',
    "",
  ];
  for (const text of broken) {
    document = client.change(document, text);
    for (let offset = 0; offset <= text.length + 70; offset += 97) {
      const position = offset <= text.length ? document.positionAt(offset) : { line: 4000, character: offset };
      const range = { start: position, end: { line: position.line + 3, character: 0 } };
      await Promise.all([
        client.ask("hover", document, { position }),
        client.ask("completion", document, { position }),
        client.ask("signatureHelp", document, { position }),
        client.ask("definition", document, { position }),
        client.ask("references", document, { position, context: { includeDeclaration: true } }),
        client.ask("codeAction", document, { range, context: { diagnostics: [] } }),
        client.ask("inlayHint", document, { range }),
      ]);
    }
    await client.ask("documentSymbol", document);
    await client.ask("foldingRange", document);
    await client.ask("semanticTokens/full", document);
    await client.ask("formatting", document, { options: { tabSize: 2, insertSpaces: true } });
  }
  document = client.change(document, `${vest}allow hem by 1 cm\n`);
  const found = await client.findings(document.uri, (each) => each.some(({ code }) => code === "step-outside"));
  expect(found.length).toBeGreaterThan(0);
});

test("a file that changes on the disk is read anew once the editor says so", async () => {
  const client = await start(files);
  const document = client.open("vest.chalk", vest);
  await client.findings(document.uri, (found) => found.length === 0);
  writeFileSync(join(client.folder, "blocks/panel.chalk"), block.replaceAll("hem", "low"));
  await client.connection.sendNotification("workspace/didChangeWatchedFiles", {
    changes: [{ uri: client.uriOf("blocks/panel.chalk"), type: 2 }],
  });
  await client.findings(document.uri, (found) => found.length > 0);
});
