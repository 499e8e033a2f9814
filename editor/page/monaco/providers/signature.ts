// The forms of the line at the cursor, with the slot that the cursor is in.
import { language } from "../language.ts";
import { monaco } from "../monaco-parts.ts";
import type { Questioner } from "./questioner.ts";

export const signatureFrom = ({ ask }: Questioner): monaco.IDisposable =>
  monaco.languages.registerSignatureHelpProvider(language, {
    signatureHelpTriggerCharacters: [" ", "(", ","],
    async provideSignatureHelp(model, position) {
      const help = await ask("signatureHelp", { offset: model.getOffsetAt(position) });
      if (!help) return undefined;
      return {
        dispose: () => {},
        value: {
          activeSignature: help.active,
          activeParameter: help.activeSlot ?? -1,
          signatures: help.signatures.map(({ label, documentation, slots }) => ({
            label,
            documentation: { value: documentation },
            parameters: slots.map(({ from, to, note }) => ({
              label: [from, to] as [number, number],
              documentation: note,
            })),
          })),
        },
      };
    },
  });
