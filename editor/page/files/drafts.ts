// Drafts: what was typed and not saved, kept by the browser every second, so that neither a crash nor a closed window loses it.
import { createStore, del, get, set } from "idb-keyval";

/** A text that differs from what was saved when it was typed. */
export interface Draft {
  readonly file: string;
  readonly text: string;
  /** The saved text that it was typed over. */
  readonly over: string;
}

// A browser that keeps nothing still lets everything else work.
const store = (() => {
  try {
    return createStore("chalkline-drafts", "drafts");
  } catch {
    return undefined;
  }
})();

/** Keeps a draft, or forgets it when it says what was saved. */
export const keepDraft = async (home: string, draft: Draft): Promise<boolean> => {
  if (!store) return false;
  try {
    if (draft.text === draft.over) await del(`${home}/${draft.file}`, store);
    else await set(`${home}/${draft.file}`, draft, store);
    return true;
  } catch {
    return false;
  }
};

/** The draft of a file, if one was kept. */
export const draftOf = async (home: string, file: string): Promise<Draft | undefined> => {
  try {
    return store && (await get<Draft>(`${home}/${file}`, store));
  } catch {
    return undefined;
  }
};
