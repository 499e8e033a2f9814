// Lengths and values at the ends of lines, when they are wanted.
import { language } from "../language.ts";
import { monaco } from "../monaco-parts.ts";
import { type Questioner, stillTrue } from "./questioner.ts";

export const valuesFrom = ({ ask }: Questioner): monaco.IDisposable =>
  monaco.languages.registerInlayHintsProvider(language, {
    async provideInlayHints(model, range) {
      const values =
        (await stillTrue(
          model,
          ask("inlayValues", { fromLine: range.startLineNumber, toLine: range.endLineNumber }),
        )) ?? [];
      return {
        dispose: () => {},
        hints: values.map(({ at, text }) => ({ label: text, position: model.getPositionAt(at), paddingLeft: true })),
      };
    },
  });
