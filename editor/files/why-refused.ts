// Why the system, or we in its place, refused to read or write a file, in words that end a sentence: for the terminal, and for
// the page's server.
import { NotSaved, PartlySaved } from "./not-saved.ts";

/** The reason, to stand behind "cannot be written:"; undefined where it is no refusal, but a fault of the program. */
export const whyRefused = (error: unknown): string | undefined => {
  if (error instanceof NotSaved) return error.message;
  if (error instanceof PartlySaved) return whyRefused(error.cause);
  const code = systemCode(error);
  if (code === undefined) return undefined;
  if (code === "ENOENT" && error instanceof Error && "syscall" in error && error.syscall === "mkdir")
    return "no folder can be made there";
  return reasons.get(code) ?? `the system says ${code}`;
};

/** The system's own name for what went wrong; undefined for an error that is not the system's. */
export const systemCode = (error: unknown): string | undefined =>
  error instanceof Error && "code" in error && "syscall" in error && typeof error.code === "string"
    ? error.code
    : undefined;

const reasons: ReadonlyMap<string, string> = new Map([
  ["EACCES", "its permissions forbid it"],
  ["EPERM", "its permissions forbid it"],
  ["EROFS", "the disk can only be read"],
  ["ENOSPC", "the disk is full"],
  ["EDQUOT", "the disk is full"],
  ["EFBIG", "the disk takes no file as large as this"],
  ["EIO", "the disk failed"],
  ["EMFILE", "too many files are open"],
  ["ENFILE", "too many files are open"],
  ["ENOMEM", "the machine is out of memory"],
  ["ETXTBSY", "another program is using it"],
  ["EBUSY", "another program is using it"],
  ["ENOTDIR", "a file stands where a folder is needed"],
  ["EEXIST", "a file stands where a folder is needed"],
  ["EISDIR", "a folder stands where a file is needed"],
  ["ENOENT", "the folder is not there"],
  ["ELOOP", "a link there leads in a circle"],
  ["ENAMETOOLONG", "its name is too long"],
]);
