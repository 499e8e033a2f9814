// Versions of the file on the table to hold the drawing against: as it was opened, as it was saved, and as it stood whenever the
// hand paused while writing it.
import { effect, signal } from "@preact/signals";
import { file, text } from "../desk.ts";

export interface Version {
  readonly name: string;
  readonly text: string;
}

/** Versions of the file on the table, the newest first. */
export const versions = signal<readonly Version[]>([]);

// A pause of this length, in ms, ends a thought; older versions than these are forgotten.
const pause = 4000;
const mostVersions = 60;

/** Notes versions from now on. */
export const noteVersions = (): void => {
  let of = "";
  let timer: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const [name, now] = [file.value, text.value];
    clearTimeout(timer);
    if (name !== of) {
      of = name;
      versions.value = [{ name: "as it was opened", text: now }];
      return;
    }
    timer = setTimeout(() => note(`at ${clock()}`, now), pause);
  });
};

/** Keeps a version under a name. */
export const note = (name: string, content: string): void => {
  const known = versions.peek();
  if (known[0]?.text === content && !name.startsWith("as ")) return;
  versions.value = [{ name, text: content }, ...known].slice(0, mostVersions);
};

/** The time of day, as the version's name. */
export const clock = (): string => new Date().toTimeString().slice(0, 8);
