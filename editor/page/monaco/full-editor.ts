// Loads the full editor once the first drawing is on the table, and puts it in the place of the plain field.
import { effect } from "@preact/signals";
import { ask, cursorLine, failure, file, goTo, hold, picture, pointed, shelved, typed, worked } from "../desk.ts";
import { letGo, turnAt } from "../dials/turning.ts";
import { open, save } from "../files/keeping.ts";
import { linesBehind } from "../table/lit.ts";
import { tellsValues } from "../table/looks.ts";
import { theme } from "../theme.ts";
import type { FullEditor, OpenedWith } from "./opened-with.ts";

declare const chalklineMonaco: { openEditor(opened: OpenedWith): FullEditor };

/** Puts the full editor into this element, with the field's text and cursor; where it cannot be loaded the field stays. */
export const fullEditor = async (place: HTMLElement, field: HTMLTextAreaElement): Promise<void> => {
  await firstDrawing();
  const style = Object.assign(document.createElement("link"), { rel: "stylesheet", href: "monaco.css" });
  const script = Object.assign(document.createElement("script"), { src: "monaco.js" });
  await Promise.all([added(style), added(script)]);
  const hadFocus = document.activeElement === field;
  const editor = chalklineMonaco.openEditor({
    place,
    file: file.peek(),
    text: field.value,
    cursor: field.selectionStart,
    isDark: theme.peek() === "dark",
    ask,
    typed,
    onLine: (line, isByHand) => {
      cursorLine.value = line;
      // Whichever moved last counts, the cursor or the hand.
      if (isByHand) pointed.value = undefined;
    },
    overLine: (line) => {
      pointed.value = line === undefined ? undefined : { kind: "line", line };
    },
    openFile: (name, line) => {
      void (name === file.peek() ? Promise.resolve() : open(name)).then(() => goTo({ line }));
    },
    textOf: (name) => shelved.peek().find((recipe) => recipe.file === name)?.text,
    tell: (words) => {
      failure.value = words;
    },
    turnAt,
    letGo,
    save: () => void save(),
  });
  field.hidden = true;
  hold(editor);
  if (hadFocus) editor.focus();
  effect(() => editor.tellValues(tellsValues.value));
  effect(() => editor.dye(theme.value === "dark"));
  effect(() => editor.find((worked.value?.findings ?? []).filter((finding) => finding.file === file.value)));
  effect(() => {
    const [shown, at] = [picture.value, pointed.value];
    editor.light(shown && at && at.kind !== "line" ? linesBehind(shown, at).lines : []);
  });
};

/** Settles when something has been drawn and the browser has had the time to show it. */
const firstDrawing = (): Promise<void> =>
  new Promise((resolve) => {
    const stop = effect(() => {
      if (!worked.value) return;
      requestAnimationFrame(() => setTimeout(resolve));
      queueMicrotask(() => stop());
    });
  });

const added = (element: HTMLElement): Promise<void> =>
  new Promise((resolve, reject) => {
    element.onload = () => resolve();
    element.onerror = () => reject(new Error("a part of the page could not be loaded"));
    document.head.append(element);
  });
