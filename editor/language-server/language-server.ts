// `chalkline language-server`: what the editor's own page can do, for any editor that speaks the language server protocol,
// over standard input and output. It has no knowledge of its own: it turns what editor/assist answers into the protocol's form.
import { fileURLToPath } from "node:url";
import {
  CodeActionKind,
  type Connection,
  createConnection,
  FileChangeType,
  type InitializeParams,
  type InitializeResult,
  MarkupKind,
  ResponseError,
  TextDocumentSyncKind,
  TextDocuments,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import { kernel, type Vocabulary } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { definition } from "../assist/definition.ts";
import { folding } from "../assist/folding.ts";
import { formatting } from "../assist/formatting.ts";
import { hover } from "../assist/hover.ts";
import { inlayValues } from "../assist/inlay-values.ts";
import { links } from "../assist/links.ts";
import { references } from "../assist/references.ts";
import { renamable, rename } from "../assist/rename.ts";
import { semanticTokens } from "../assist/semantic-tokens.ts";
import { signatureHelp } from "../assist/signature-help.ts";
import { symbols } from "../assist/symbols.ts";
import { type ActionReader, codeActionItems, resolvedAction, uriAsked } from "./code-action-items.ts";
import { completionItems } from "./completion-items.ts";
import { diagnostics } from "./diagnostics.ts";
import { documentSymbols } from "./document-symbols.ts";
import { editsForMoves } from "./moved-files.ts";
import { changeOf, documentAt, editsIn, rangeIn } from "./stretches.ts";
import { legend, tokenNumbers } from "./token-numbers.ts";
import { type WorkedDocument, workedDocuments } from "./worked-documents.ts";
import { workroom } from "./workroom.ts";

// Typing goes on for about this long between two keys, in milliseconds; findings wait for a pause.
const pause = 150;

/** The protocol's number for a request that is understood and cannot be granted. */
const requestFailed = -32803;

/** Serves one editor until it says goodbye or goes away; the exit code says whether it said goodbye first. */
export const languageServer = (
  input: NodeJS.ReadableStream,
  output: NodeJS.WritableStream,
  version: string,
  known: Vocabulary = vocabulary,
): Promise<number> => {
  const connection = createConnection(input, output);
  const documents = new TextDocuments(TextDocument);
  let folders: string[] = [];
  const room = workroom(
    () => folders,
    () => documents.all(),
  );
  const all = workedDocuments(() => kernel(known), room);
  let reader: ActionReader & { readonly snippets: boolean } = { resolves: false, showsRefused: false, snippets: false };

  connection.onInitialize((params): InitializeResult => {
    folders = foldersOf(params);
    const { codeAction, completion } = params.capabilities.textDocument ?? {};
    reader = {
      resolves: codeAction?.resolveSupport?.properties.includes("edit") === true && codeAction.dataSupport === true,
      showsRefused: codeAction?.disabledSupport === true,
      snippets: completion?.completionItem?.snippetSupport === true,
    };
    return { capabilities, serverInfo: { name: "chalkline", version } };
  });
  connection.onInitialized(() => {
    connection.workspace
      .getWorkspaceFolders()
      .then(() =>
        connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
          const gone = new Set(removed.flatMap(({ uri }) => folderAt(uri)));
          folders = [...folders.filter((folder) => !gone.has(folder)), ...added.flatMap(({ uri }) => folderAt(uri))];
          changed();
        }),
      )
      // An editor without folders says so by refusing.
      .catch(() => undefined);
  });

  const changed = tellingFindings(
    connection,
    () => documents.all(),
    (document) => diagnostics(all.of(document), room),
    () => all.changed(),
  );
  documents.onDidChangeContent(changed);
  documents.onDidSave(changed);
  connection.onDidChangeWatchedFiles(({ changes }) => {
    if (changes.some(({ type }) => type === FileChangeType.Deleted)) all.gone();
    changed();
  });
  documents.onDidClose(({ document: { uri } }) => {
    void connection.sendDiagnostics({ uri, diagnostics: [] });
    all.gone();
    changed();
  });

  /** Asks about an open document; about any other there is nothing to say. */
  const asked = <T>(uri: string, answer: (open: WorkedDocument) => T): T | null => {
    const document = documents.get(uri);
    return document ? answer(all.of(document)) : null;
  };
  const othersThan = ({ place }: WorkedDocument) => room.recipesAround(place).filter(({ file }) => file !== place.file);

  connection.onHover(({ textDocument: { uri }, position }) =>
    asked(uri, ({ document, worked }) => {
      const found = hover(worked, document.offsetAt(position));
      if (!found) return null;
      const contents = { kind: MarkupKind.Markdown, value: found.markdown };
      return { contents, range: rangeIn(document, found.from, found.to) };
    }),
  );
  connection.onCompletion(({ textDocument: { uri }, position }) =>
    asked(uri, (open) => completionItems(open, open.document.offsetAt(position), room, reader.snippets)),
  );
  connection.onSignatureHelp(({ textDocument: { uri }, position }) =>
    asked(uri, ({ document, worked }) => {
      const help = signatureHelp(worked, document.offsetAt(position));
      if (!help) return null;
      return {
        signatures: help.signatures.map(({ label, documentation, slots }) => ({
          label,
          documentation: { kind: MarkupKind.Markdown, value: documentation },
          parameters: slots.map(({ from, to, note }) => ({
            label: [from, to] as [number, number],
            documentation: note,
          })),
        })),
        activeSignature: help.active,
        ...(help.activeSlot !== undefined && { activeParameter: help.activeSlot }),
      };
    }),
  );
  connection.onDefinition(({ textDocument: { uri }, position }) =>
    asked(uri, (open) =>
      definition(open.worked, open.document.offsetAt(position)).map(({ file, from, to }) => {
        const there = documentAt(room, open, file);
        return { uri: there.uri, range: rangeIn(there, from, to) };
      }),
    ),
  );
  connection.onReferences(({ textDocument: { uri }, position, context }) =>
    asked(uri, (open) =>
      references(open.worked, open.document.offsetAt(position), othersThan(open))
        .filter(({ isGiven }) => context.includeDeclaration || !isGiven)
        .map(({ file, from, to }) => {
          const there = documentAt(room, open, file);
          return { uri: there.uri, range: rangeIn(there, from, to) };
        }),
    ),
  );
  connection.onPrepareRename(({ textDocument: { uri }, position }) =>
    asked(uri, ({ document, worked }) => {
      const found = renamable(worked, document.offsetAt(position));
      if ("refused" in found) return new ResponseError(requestFailed, found.refused);
      return { range: rangeIn(document, found.from, found.to), placeholder: found.name };
    }),
  );
  connection.onRenameRequest(({ textDocument: { uri }, position, newName }) =>
    asked(uri, (open) => {
      const done = rename(open.worked, open.document.offsetAt(position), newName, othersThan(open));
      if ("refused" in done) return new ResponseError(requestFailed, done.refused);
      return changeOf(done.edits, (file) => documentAt(room, open, file));
    }),
  );
  connection.workspace.onWillRenameFiles(({ files }) => editsForMoves(files, room));
  connection.onDocumentSymbol(({ textDocument: { uri } }) =>
    asked(uri, ({ document, worked }) => documentSymbols(document, symbols(worked))),
  );
  connection.onFoldingRanges(({ textDocument: { uri } }) =>
    asked(uri, ({ worked }) =>
      folding(worked).map(({ fromLine, toLine, kind }) => ({
        startLine: fromLine - 1,
        endLine: toLine - 1,
        ...(kind === "comments" && { kind: "comment" }),
      })),
    ),
  );
  connection.languages.semanticTokens.on(({ textDocument: { uri } }) => ({
    data: asked(uri, ({ document, worked }) => tokenNumbers(document, semanticTokens(worked))) ?? [],
  }));
  connection.languages.inlayHint.on(({ textDocument: { uri }, range: { start, end } }) =>
    asked(uri, ({ document, worked }) =>
      inlayValues(worked, start.line + 1, end.line + 1).map(({ at, text }) => ({
        position: document.positionAt(at),
        label: text,
        paddingLeft: true,
      })),
    ),
  );
  connection.onCodeAction(({ textDocument: { uri }, range, context: { only } }) =>
    asked(uri, (open) => codeActionItems(open, range, only, room, reader)),
  );
  connection.onCodeActionResolve((item) => {
    const uri = uriAsked(item);
    return (uri === undefined ? null : asked(uri, (open) => resolvedAction(open, item, room))) ?? item;
  });
  connection.onDocumentFormatting(({ textDocument: { uri } }) =>
    asked(uri, ({ document, worked }) => {
      const done = formatting(worked);
      if (!("refused" in done)) return editsIn(document, done.edits);
      connection.console.info(done.refused);
      return null;
    }),
  );
  connection.onDocumentLinks(({ textDocument: { uri } }) =>
    asked(uri, ({ document, place, worked }) =>
      links(worked).map(({ from, to, file }) => ({
        range: rangeIn(document, from, to),
        target: room.uriOf(place.root, file),
      })),
    ),
  );

  let isTold = false;
  connection.onShutdown(() => {
    isTold = true;
  });
  documents.listen(connection);
  connection.listen();
  return new Promise((resolve) => {
    connection.onExit(() => resolve(isTold ? 0 : 1));
  });
};

const recipesOnly = {
  filters: [
    { scheme: "file", pattern: { glob: "**/*.chalk" } },
    { scheme: "file", pattern: { glob: "**", matches: "folder" as const } },
  ],
};

const capabilities: InitializeResult["capabilities"] = {
  textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
  hoverProvider: true,
  completionProvider: { triggerCharacters: [" ", ".", '"', "/", "("] },
  signatureHelpProvider: { triggerCharacters: [" ", "(", ","] },
  definitionProvider: true,
  referencesProvider: true,
  renameProvider: { prepareProvider: true },
  documentSymbolProvider: true,
  foldingRangeProvider: true,
  semanticTokensProvider: { legend, full: true },
  inlayHintProvider: true,
  codeActionProvider: {
    codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorExtract, CodeActionKind.RefactorRewrite],
    resolveProvider: true,
  },
  documentFormattingProvider: true,
  documentLinkProvider: {},
  workspace: {
    workspaceFolders: { supported: true, changeNotifications: true },
    fileOperations: { willRename: recipesOnly },
  },
};

const foldersOf = ({ workspaceFolders, rootUri }: InitializeParams): string[] => {
  const uris = workspaceFolders?.map(({ uri }) => uri) ?? (rootUri ? [rootUri] : []);
  return uris.flatMap(folderAt);
};

const folderAt = (uri: string): string[] => {
  try {
    // Without the / that some editors end a folder with.
    return [fileURLToPath(uri).replace(/(?<=.)[/\\]$/, "")];
  } catch {
    return [];
  }
};

/**
 * Tells the findings of all open documents once nothing has changed for a moment. Each is worked in a turn of its own, so that
 * questions are answered in between, and a newer change ends the round.
 */
const tellingFindings = (
  connection: Connection,
  documents: () => readonly TextDocument[],
  found: (document: TextDocument) => ReturnType<typeof diagnostics>,
  forget: () => void,
): (() => void) => {
  let waiting: NodeJS.Timeout | undefined;
  let round = 0;
  const tell = (left: readonly TextDocument[], mine: number): void => {
    const [document, ...rest] = left;
    if (!document || mine !== round) return;
    const { uri, version } = document;
    try {
      void connection.sendDiagnostics({ uri, version, diagnostics: found(document) });
    } catch (error) {
      // A fault of ours in one document: the editor is told, and the others are served on.
      connection.console.error(`Chalkline itself failed on ${uri}: ${error instanceof Error ? error.message : error}`);
    }
    setImmediate(tell, rest, mine);
  };
  return () => {
    forget();
    round += 1;
    clearTimeout(waiting);
    waiting = setTimeout(() => tell(documents(), round), pause);
  };
};
