// What a `use` line may write between its quotes: a relative path to a .chalk file, and nothing that another program or
// another system would take for something else.
import type { Unreadable } from "../../kernel/sources.ts";
import { unreadable } from "./unreadable.ts";
import { isDevice, losesItsEnd } from "./windows-names.ts";

/** Why a written path is refused before any file is looked at; undefined when it is not. */
export const refusedPath = (path: string): Unreadable | undefined => {
  const found = rules.find(({ applies }) => applies(path));
  return found && unreadable(found.code, found.message, { hint: found.hint });
};

interface Rule {
  readonly code: string;
  readonly applies: (path: string) => boolean;
  readonly message: string;
  readonly hint: string;
}

const besideThis = "Write the path from this recipe's folder, such as blocks/straight-coat.chalk.";

// Longer ones cannot be opened on Windows (MAX_PATH, "Maximum Path Length Limitation", Microsoft Learn, from memory).
const mostLetters = 250;

// A recipe has to mean the same file on every system, so that what one of them takes for another is refused on all.
const isTakenForAnother = (part: string): boolean =>
  part !== "." && part !== ".." && (isDevice(part) || losesItsEnd(part));

const rules: readonly Rule[] = [
  {
    code: "use-sign",
    applies: (path) => /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]|["*<>?|]/u.test(path),
    message: "The path holds a sign that no file name has.",
    hint: besideThis,
  },
  {
    code: "use-drive",
    applies: (path) => /^[A-Za-z]:/.test(path),
    message:
      "The path begins with a drive letter; a recipe is found from the one that uses it, so that both can move together.",
    hint: besideThis,
  },
  {
    code: "use-backslash",
    applies: (path) => path.includes("\\"),
    message: "The path holds a backslash; folders are parted with / on every system.",
    hint: "Write / instead.",
  },
  {
    code: "use-address",
    applies: (path) => path.includes(":") || path.startsWith("//"),
    message: "The path looks like an address; recipes are read from files only, never over a network.",
    hint: besideThis,
  },
  {
    code: "use-absolute",
    applies: (path) => path.startsWith("/"),
    message:
      "The path begins at the top of the disk; a recipe is found from the one that uses it, so that both can move together.",
    hint: besideThis,
  },
  {
    code: "use-device",
    applies: (path) => path.split("/").some(isTakenForAnother),
    message: "The path holds a name that Windows gives to a device, or one that it takes for another.",
    hint: "Call the recipe something else, with no blank or point at the end of a folder's name.",
  },
  {
    code: "use-long",
    applies: (path) => path.length > mostLetters,
    message: `The path has more than ${mostLetters} letters.`,
    hint: besideThis,
  },
  {
    code: "use-ending",
    applies: (path) => !path.endsWith(".chalk"),
    message: "The path does not end in .chalk, and only recipes are used.",
    hint: "Write the name of a recipe, such as blocks/straight-coat.chalk.",
  },
];
