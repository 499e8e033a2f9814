// Asks the worker about a place in monaco's model, and turns offsets into monaco's ranges.
import { monaco } from "../monaco-parts.ts";
import type { OpenedWith } from "../opened-with.ts";

export interface Questioner {
  readonly ask: OpenedWith["ask"];
  /** The file on the table. */
  file(): string;
  openFile: OpenedWith["openFile"];
  textOf: OpenedWith["textOf"];
  tell: OpenedWith["tell"];
}

/** The answer, unless the text was changed while it was worked out: its offsets would be of another text. */
export const stillTrue = async <T>(model: monaco.editor.ITextModel, answer: Promise<T>): Promise<T | undefined> => {
  const version = model.getVersionId();
  const found = await answer;
  return model.isDisposed() || model.getVersionId() !== version ? undefined : found;
};

export const rangeIn = (
  model: monaco.editor.ITextModel,
  { from, to }: { readonly from: number; readonly to: number },
): monaco.Range => {
  const [start, end] = [model.getPositionAt(from), model.getPositionAt(to)];
  return new monaco.Range(start.lineNumber, start.column, end.lineNumber, end.column);
};

/** How monaco calls a recipe. */
export const uriOf = (file: string): monaco.Uri => monaco.Uri.from({ scheme: "recipe", path: `/${file}` });
export const fileOf = (uri: monaco.Uri): string => uri.path.slice(1);
