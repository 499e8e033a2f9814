// The text of the recipe: a plain field that is there at once, and the full editor in its place as soon as it has loaded.
import { useEffect, useRef } from "preact/hooks";
import { lineOf, lineStarts, lineStretch, sourceText } from "../../../grammar/source.ts";
import { edited } from "../../assist/text-edit.ts";
import { cursorLine, failure, hold, text, typed } from "../desk.ts";
import { fullEditor } from "../monaco/full-editor.ts";
import type { TextHolder } from "../text-holder.ts";

export const RecipeText = () => {
  const plain = useRef<HTMLTextAreaElement>(null);
  const full = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const field = plain.current!;
    field.value = text.peek();
    field.setSelectionRange(0, 0);
    hold(plainHolder(field));
    fullEditor(full.current!, field).catch(() => {
      // The plain field does everything but answer questions about the text.
      failure.value = "The full editor could not be loaded; the recipe can be written in the plain field.";
    });
  }, []);
  return (
    <div class="recipe-text">
      <textarea
        ref={plain}
        aria-label="Recipe text"
        spellcheck={false}
        autocomplete="off"
        onInput={({ currentTarget: field }) => typed(field.value)}
        onSelect={({ currentTarget: field }) => {
          cursorLine.value = lineAt(field.value, field.selectionStart);
        }}
      />
      <div ref={full} class="full-editor" />
    </div>
  );
};

const lineAt = (content: string, offset: number): number => lineOf(lineStarts(content), offset);

/** The plain field keeps no strokes: what the page changes in it is undone by whoever made the change. */
const plainHolder = (field: HTMLTextAreaElement): TextHolder => ({
  lay(_name, content) {
    field.value = content;
    field.setSelectionRange(0, 0);
  },
  edit(parts) {
    field.value = edited(field.value, parts);
    typed(field.value);
  },
  goTo(place) {
    const { from, to } = "line" in place ? lineStretch(sourceText(field.value), place.line) : place;
    field.focus();
    field.setSelectionRange(from, to);
  },
});
