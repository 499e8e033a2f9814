// What is dropped on the table: drawings that become recipes, and pictures of paper to trace a piece from.
import { bringIn, isDrawing } from "../bring-in/bringing-in.ts";
import { failure } from "../desk.ts";
import { begin } from "./tracing.ts";

/** Takes what is dropped on the table or on a card that such a thing lies on; the browser would leave the page for it. */
export const takeDropped = (): void => {
  addEventListener("dragover", (event) => {
    if (isOverTable(event) && event.dataTransfer?.types.includes("Files")) event.preventDefault();
  });
  addEventListener("drop", (event) => {
    const files = [...(event.dataTransfer?.files ?? [])];
    if (!isOverTable(event) || files.length === 0) return;
    event.preventDefault();
    const picture = files.find(({ type }) => type.startsWith("image/"));
    // On the card for pictures an SVG is one as well.
    const drawn = picture && isOver(event, ".paper-card") ? undefined : files.find(isDrawing);
    if (drawn) void bringIn(drawn);
    else if (picture) void begin(picture);
    else
      failure.value = `${files[0]!.name} is neither a drawing (.svg, .dxf or .csv) nor a picture. Either can be dropped on the table: a drawing to make a recipe of, a photograph or scan of a pattern piece to trace it.`;
  });
};

const isOverTable = (event: DragEvent): boolean => isOver(event, ".table, .paper-card, .drawing-slip");

const isOver = ({ target }: DragEvent, places: string): boolean =>
  target instanceof Element && target.closest(places) !== null;
