// Why a file could not be written, in a sentence; any other fault is the program's own and is passed on.

/** The sentence for an error of the system. */
export const cannotWrite = (error: unknown, path: string): string => {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  if (typeof code !== "string") throw error;
  return `${path} cannot be written: ${reasons.get(code) ?? `the system says ${code}`}. Nothing there was changed.`;
};

const reasons: ReadonlyMap<string, string> = new Map([
  ["EACCES", "its permissions forbid it"],
  ["EPERM", "its permissions forbid it"],
  ["EROFS", "the disk can only be read"],
  ["ENOSPC", "the disk is full"],
  ["EDQUOT", "the disk is full"],
  ["ENOTDIR", "a file stands where a folder is needed"],
  ["EEXIST", "a file stands where a folder is needed"],
  ["EISDIR", "a folder stands where a file is needed"],
  ["ENOENT", "the folder is not there"],
  ["ENAMETOOLONG", "its name is too long"],
]);
