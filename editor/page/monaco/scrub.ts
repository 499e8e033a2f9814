// Turning a number where it stands in the text: Alt and a sideways pull with the mouse, or Alt with Page Up and Page Down.
import { monaco } from "./monaco-parts.ts";
import type { OpenedWith } from "./opened-with.ts";

// Pixels of a pull that turn a number by one of its strides.
const pixelsPerStride = 4;

/** Lets numbers of this editor be turned. */
export const scrub = (editor: monaco.editor.IStandaloneCodeEditor, { turnAt, letGo }: OpenedWith): void => {
  const offsetOf = (position: monaco.IPosition): number => editor.getModel()?.getOffsetAt(position) ?? 0;
  let pull: { readonly offset: number; readonly from: number; turned: number } | undefined;

  editor.onMouseDown(({ event, target }) => {
    if (!event.altKey || !target.position) return;
    const offset = offsetOf(target.position);
    if (!turnAt(offset, 0)) return;
    event.preventDefault();
    event.stopPropagation();
    pull = { offset, from: event.posx, turned: 0 };
    addEventListener("pointermove", onMove);
    addEventListener("pointerup", onUp, { once: true });
  });
  const onMove = ({ clientX }: PointerEvent): void => {
    if (!pull) return;
    const strides = Math.round((clientX - pull.from) / pixelsPerStride);
    if (strides !== pull.turned && turnAt(pull.offset, strides - pull.turned)) pull.turned = strides;
  };
  const onUp = (): void => {
    removeEventListener("pointermove", onMove);
    pull = undefined;
    letGo();
  };

  const byKey = (strides: number) => (): void => {
    const position = editor.getPosition();
    if (position && turnAt(offsetOf(position), strides)) letGo();
  };
  editor.addCommand(monaco.KeyMod.Alt | monaco.KeyCode.PageUp, byKey(1));
  editor.addCommand(monaco.KeyMod.Alt | monaco.KeyCode.PageDown, byKey(-1));
};
