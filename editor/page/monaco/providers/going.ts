// Where a name was given, where it is used, and giving it another name.
import { language } from "../language.ts";
import { monaco } from "../monaco-parts.ts";
import { fileOf, type Questioner, rangeIn, stillTrue, uriOf } from "./questioner.ts";

export const goingFrom = ({ ask, file, openFile, textOf, tell }: Questioner): monaco.IDisposable[] => {
  /** A model of another recipe, for monaco to look places up in. */
  const modelOf = (name: string): monaco.editor.ITextModel | undefined => {
    const known = monaco.editor.getModel(uriOf(name));
    if (known) return known;
    const text = textOf(name);
    return text === undefined ? undefined : monaco.editor.createModel(text, language, uriOf(name));
  };
  const located = (places: readonly { file: string; from: number; to: number }[]): monaco.languages.Location[] =>
    places.flatMap((place) => {
      const model = modelOf(place.file);
      return model ? [{ uri: model.uri, range: rangeIn(model, place) }] : [];
    });
  return [
    monaco.languages.registerDefinitionProvider(language, {
      provideDefinition: async (model, position) =>
        located((await stillTrue(model, ask("definition", { offset: model.getOffsetAt(position) }))) ?? []),
    }),
    monaco.languages.registerReferenceProvider(language, {
      provideReferences: async (model, position) =>
        located((await stillTrue(model, ask("references", { offset: model.getOffsetAt(position) }))) ?? []),
    }),
    monaco.languages.registerRenameProvider(language, {
      async resolveRenameLocation(model, position) {
        const found = await stillTrue(model, ask("renamable", { offset: model.getOffsetAt(position) }));
        const nowhere = { range: new monaco.Range(1, 1, 1, 1), text: "" };
        if (!found) return { ...nowhere, rejectReason: "Nothing here can be renamed." };
        return "refused" in found
          ? { ...nowhere, rejectReason: found.refused }
          : { range: rangeIn(model, found), text: found.name };
      },
      async provideRenameEdits(model, position, name) {
        const renamed = await stillTrue(model, ask("rename", { offset: model.getOffsetAt(position), name }));
        const refused = (words: string): monaco.languages.WorkspaceEdit & monaco.languages.Rejection => {
          tell(words);
          return { edits: [], rejectReason: words };
        };
        if (!renamed) return refused("Nothing here can be renamed.");
        if ("refused" in renamed) return refused(renamed.refused);
        const elsewhere = [...new Set(renamed.edits.map((edit) => edit.file))].filter((each) => each !== file());
        // What is not on the table could not be taken back by undo.
        if (elsewhere.length > 0)
          return refused(
            `${elsewhere.join(", ")} would have to change too, and only what is on the table can. The language server renames across files.`,
          );
        return {
          edits: renamed.edits.map((edit) => ({
            resource: model.uri,
            versionId: model.getVersionId(),
            textEdit: { range: rangeIn(model, edit), text: edit.text },
          })),
        };
      },
    }),
    monaco.editor.registerEditorOpener({
      openCodeEditor(_source, resource, place) {
        const line = place && ("startLineNumber" in place ? place.startLineNumber : place.lineNumber);
        openFile(fileOf(resource), line ?? 1);
        return true;
      },
    }),
  ];
};
