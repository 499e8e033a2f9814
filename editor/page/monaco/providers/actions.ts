// What can be done with the line or the finding at the cursor.
import { language } from "../language.ts";
import { monaco } from "../monaco-parts.ts";
import { type Questioner, rangeIn, stillTrue } from "./questioner.ts";

export const actionsFrom = ({ ask, file }: Questioner): monaco.IDisposable =>
  monaco.languages.registerCodeActionProvider(language, {
    async provideCodeActions(model, range) {
      const [from, to] = [model.getOffsetAt(range.getStartPosition()), model.getOffsetAt(range.getEndPosition())];
      const found = (await stillTrue(model, ask("codeActions", { from, to }))) ?? [];
      return {
        dispose: () => {},
        actions: found
          .filter(({ edits }) => edits.every((edit) => edit.file === file()))
          .map(({ title, kind, edits }) => ({
            title,
            kind,
            edit: {
              edits: edits.map((edit) => ({
                resource: model.uri,
                versionId: model.getVersionId(),
                textEdit: { range: rangeIn(model, edit), text: edit.text },
              })),
            },
          })),
      };
    },
  });
