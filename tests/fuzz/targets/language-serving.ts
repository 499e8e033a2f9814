// The language server, spoken to as an editor does: a text is opened, changed and asked everything that the server offers, at places
// that are in it and at places that are not. It answers, or refuses in words; it never says that it failed.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough } from "node:stream";
import { pathToFileURL } from "node:url";
import {
  createMessageConnection,
  type MessageConnection,
  ResponseError,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node";
import type { CodeAction, InitializeResult } from "vscode-languageserver/node";
import { languageServer } from "../../../editor/language-server/language-server.ts";
import { dice } from "../dice.ts";
import { Broken, holds, type Target } from "../target.ts";

/** The protocol's number for a request that is understood and cannot be granted (LSP 3.17, "RequestFailed"). */
const requestFailed = -32803;

interface Spoken {
  readonly editor: MessageConnection;
  readonly folder: string;
  readonly capabilities: InitializeResult["capabilities"];
}

/** A server that is kept for all texts of a run, around what serves. */
export const languageServingBy = (server: typeof languageServer): Target => {
  let open: Promise<Spoken> | undefined;
  let complaint: string | undefined;

  const spoken = async (): Promise<Spoken> => {
    const [toServer, toEditor] = [new PassThrough(), new PassThrough()];
    // It is told to end by nobody: that would end the whole process.
    void server(toServer, toEditor, "0.0.0");
    const editor = createMessageConnection(new StreamMessageReader(toEditor), new StreamMessageWriter(toServer));
    editor.onNotification("window/logMessage", ({ message }: { message: string }) => {
      if (message.includes("failed")) complaint = message;
    });
    editor.listen();
    const folder = mkdtempSync(join(tmpdir(), "chalkline-fuzz-"));
    const { capabilities } = await editor.sendRequest<InitializeResult>("initialize", {
      processId: null,
      rootUri: null,
      workspaceFolders: [{ uri: pathToFileURL(folder).href, name: "workroom" }],
      capabilities: {
        textDocument: {
          completion: { completionItem: { snippetSupport: true } },
          codeAction: { dataSupport: true, disabledSupport: true, resolveSupport: { properties: ["edit"] } },
        },
      },
    });
    return { editor, folder, capabilities };
  };

  return {
    name: "language server",
    isDear: true,
    async run({ text }) {
      open ??= spoken();
      const { editor, folder } = await open;
      complaint = undefined;
      const uri = pathToFileURL(join(folder, "fuzz.chalk")).href;
      const roll = dice(text);
      const lines = text.split("\n").length;
      // Up to two lines below the last, and farther to the right than any line goes.
      const position = () => ({ line: roll(lines + 2), character: roll(90) });
      const asked = async (method: string, more: object): Promise<unknown> => {
        try {
          return await editor.sendRequest(method, { textDocument: { uri }, ...more });
        } catch (error) {
          if (error instanceof ResponseError && error.code === requestFailed) return undefined;
          throw new Broken(`${method} is answered with a fault`, error instanceof Error ? error.message : "");
        }
      };
      const half = text.slice(0, roll(text.length + 1));
      await editor.sendNotification("textDocument/didOpen", {
        textDocument: { uri, languageId: "chalkline", version: 1, text: half },
      });
      try {
        await everything(asked, position);
        await editor.sendNotification("textDocument/didChange", {
          textDocument: { uri, version: 2 },
          contentChanges: [{ text }],
        });
        await everything(asked, position);
        holds(complaint === undefined, "the server says that it failed", complaint);
      } finally {
        await editor.sendNotification("textDocument/didClose", { textDocument: { uri } });
      }
    },
    async end() {
      if (!open) return;
      const { editor, folder } = await open;
      editor.dispose();
      rmSync(folder, { recursive: true });
      open = undefined;
    },
  };
};

export const languageServing = (): Target => languageServingBy(languageServer);

type Ask = (method: string, more: object) => Promise<unknown>;

/** One of every kind of request. */
const everything = async (asked: Ask, position: () => object): Promise<void> => {
  const range = { start: position(), end: position() };
  const whole = ["documentSymbol", "foldingRange", "semanticTokens/full", "formatting", "documentLink"];
  for (const name of whole) await asked(`textDocument/${name}`, { options: { tabSize: 2, insertSpaces: true } });
  const here = ["hover", "completion", "signatureHelp", "definition", "prepareRename"];
  for (const name of here) await asked(`textDocument/${name}`, { position: position() });
  await asked("textDocument/references", { position: position(), context: { includeDeclaration: true } });
  await asked("textDocument/rename", { position: position(), newName: "quite-new" });
  await asked("textDocument/inlayHint", { range });
  const actions = (await asked("textDocument/codeAction", { range, context: { diagnostics: [] } })) as
    | CodeAction[]
    | undefined;
  for (const action of (actions ?? []).slice(0, 2))
    if (action.data !== undefined) await asked("codeAction/resolve", action);
};
