// A day's work with the language server: one recipe is typed in, what a reader of it asks is asked, and now and then another
// file is opened, renamed and closed.
import { once } from "node:events";
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node";
import { type Day, type HeapAfter, measuredProgram } from "./measured-program.ts";
import { typing } from "./typing.ts";
import { block, vest } from "./vest.ts";

/** Works the day, and tells what the server held in the course of it. */
export const languageServerDay = async (day: Day): Promise<HeapAfter[]> => {
  const { project, folder, edits, every, filesEvery, told } = day;
  for (const { file, text } of [vest, block]) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), text);
  }
  const server = measuredProgram([join(project, "dist/chalkline.js"), "language-server", "--stdio"], day);
  const connection = createMessageConnection(
    new StreamMessageReader(server.child.stdout!),
    new StreamMessageWriter(server.child.stdin!),
  );
  connection.listen();
  await connection.sendRequest("initialize", {
    processId: process.pid,
    rootUri: null,
    workspaceFolders: [{ uri: pathToFileURL(folder).href, name: "workroom" }],
    capabilities: {},
  });
  await connection.sendNotification("initialized", {});
  const uriOf = (file: string): string => pathToFileURL(join(folder, file)).href;
  const open = (uri: string, text: string): Promise<void> =>
    connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri, languageId: "chalkline", version: 1, text },
    });
  const close = (uri: string): Promise<void> =>
    connection.sendNotification("textDocument/didClose", { textDocument: { uri } });
  const ask = (what: string, uri: string, more: object = {}): Promise<unknown> =>
    connection.sendRequest(`textDocument/${what}`, { textDocument: { uri }, ...more });

  /** A file comes under a name that was never there, is asked about, gets another such name, and goes. */
  const fileComesAndGoes = async (number: number): Promise<void> => {
    const [first, then] = [uriOf(`sketch-${number}.chalk`), uriOf(`fitting-${number}.chalk`)];
    await open(first, block.text);
    await ask("documentSymbol", first);
    await connection.sendRequest("workspace/willRenameFiles", { files: [{ oldUri: first, newUri: then }] });
    await close(first);
    await open(then, block.text);
    await ask("foldingRange", then);
    await close(then);
  };

  const uri = uriOf(vest.file);
  await open(uri, vest.text);
  const held: HeapAfter[] = [];
  let edit = 0;
  for (const text of typing(vest.text, 1)) {
    edit += 1;
    void connection.sendNotification("textDocument/didChange", {
      textDocument: { uri, version: edit + 1 },
      contentChanges: [{ text }],
    });
    const position = { line: edit % vest.text.split("\n").length, character: 8 };
    const [what, more] = questions(position)[edit % 6]!;
    await ask(what, uri, more);
    if (edit % filesEvery === 0) await fileComesAndGoes(edit);
    if (edit % every === 0) {
      const after = { edits: edit, mb: await server.heap() };
      held.push(after);
      told(after);
    }
    if (edit >= edits) break;
  }
  connection.dispose();
  const gone = once(server.child, "exit");
  server.child.kill();
  await gone;
  return held;
};

const questions = (position: { line: number; character: number }): readonly (readonly [string, object])[] => [
  ["documentSymbol", {}],
  ["hover", { position }],
  ["completion", { position }],
  ["semanticTokens/full", {}],
  ["inlayHint", { range: { start: { line: 0, character: 0 }, end: position } }],
  ["references", { position, context: { includeDeclaration: true } }],
];
