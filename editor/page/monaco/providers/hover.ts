// What the line under the hand did, and what the word under it is.
import { language } from "../language.ts";
import { monaco } from "../monaco-parts.ts";
import { type Questioner, rangeIn, stillTrue } from "./questioner.ts";

export const hoverFrom = ({ ask }: Questioner): monaco.IDisposable =>
  monaco.languages.registerHoverProvider(language, {
    async provideHover(model, position) {
      const found = await stillTrue(model, ask("hover", { offset: model.getOffsetAt(position) }));
      // No HTML and no links that could run anything: what a recipe says is text.
      return (
        found && {
          range: rangeIn(model, found),
          contents: [{ value: found.markdown, isTrusted: false, supportHtml: false }],
        }
      );
    },
  });
