// What can be done with the line or the finding at the cursor. A change whose outcome shows only when the recipe is worked with it
// is tried when it is picked, and told about instead of done when it would change the garment.
import type { CodeAction } from "../../../assist/actions/code-action.ts";
import { language } from "../language.ts";
import { monaco } from "../monaco-parts.ts";
import { type Questioner, rangeIn, stillTrue } from "./questioner.ts";

/** An action of the worker's behind the one that monaco shows. */
interface Offered extends monaco.languages.CodeAction {
  readonly untried?: { readonly model: monaco.editor.ITextModel; readonly action: CodeAction };
}

export const actionsFrom = ({ ask, file, tell }: Questioner): monaco.IDisposable => {
  const editOf = (model: monaco.editor.ITextModel, { edits }: CodeAction): monaco.languages.WorkspaceEdit => ({
    edits: edits.map((edit) => ({
      resource: model.uri,
      versionId: model.getVersionId(),
      textEdit: { range: rangeIn(model, edit), text: edit.text },
    })),
  });
  const offered = (model: monaco.editor.ITextModel, action: CodeAction): Offered => {
    const { title, kind, refused, isUntried } = action;
    if (refused !== undefined) return { title, kind, disabled: refused };
    return isUntried ? { title, kind, untried: { model, action } } : { title, kind, edit: editOf(model, action) };
  };
  return monaco.languages.registerCodeActionProvider(language, {
    async provideCodeActions(model, range) {
      const [from, to] = [model.getOffsetAt(range.getStartPosition()), model.getOffsetAt(range.getEndPosition())];
      const found = (await stillTrue(model, ask("codeActions", { from, to }))) ?? [];
      return {
        dispose: () => {},
        actions: found
          .filter(({ edits }) => edits.every((edit) => edit.file === file()))
          .map((action) => offered(model, action)),
      };
    },
    async resolveCodeAction(shown: Offered) {
      if (!shown.untried) return shown;
      const { model, action } = shown.untried;
      const tried = await stillTrue(model, ask("triedAction", { action }));
      if (tried?.refused !== undefined) tell(tried.refused);
      return tried && tried.refused === undefined ? { ...shown, edit: editOf(model, tried) } : shown;
    },
  });
};
