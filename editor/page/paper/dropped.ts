// Pictures that are dropped on the table.
import { failure } from "../desk.ts";
import { begin } from "./tracing.ts";

/** Takes pictures dropped on the table or on the card of an earlier one; the browser would leave the page for them. */
export const takeDropped = (): void => {
  addEventListener("dragover", (event) => {
    if (isOverTable(event) && event.dataTransfer?.types.includes("Files")) event.preventDefault();
  });
  addEventListener("drop", (event) => {
    const files = [...(event.dataTransfer?.files ?? [])];
    if (!isOverTable(event) || files.length === 0) return;
    event.preventDefault();
    const picture = files.find(({ type }) => type.startsWith("image/"));
    if (picture) void begin(picture);
    else
      failure.value = `${files[0]!.name} is no picture. A photograph or scan of a pattern piece can be dropped on the table.`;
  });
};

const isOverTable = ({ target }: DragEvent): boolean =>
  target instanceof Element && target.closest(".table, .paper-card") !== null;
