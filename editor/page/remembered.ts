// A choice of the user's that the browser keeps from visit to visit, where it may.
import { effect, type Signal, signal } from "@preact/signals";

/** A signal that begins with what was chosen last time. */
export const remembered = <T extends boolean | number | string>(name: string, standard: T): Signal<Widened<T>> => {
  const chosen = signal(read(name, standard as unknown as Widened<T>));
  effect(() => {
    const { value } = chosen;
    try {
      localStorage.setItem(`chalkline-${name}`, JSON.stringify(value));
    } catch {
      // A browser that keeps nothing still shows everything.
    }
  });
  return chosen;
};

/** A choice may come to differ from the one it began with. */
type Widened<T> = T extends boolean ? boolean : T extends number ? number : string;

const read = <T>(name: string, standard: T): T => {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(`chalkline-${name}`) ?? "null");
    return typeof kept === typeof standard ? (kept as T) : standard;
  } catch {
    return standard;
  }
};
