// What the path of a `use` line means, and how one is written, reckoned in names alone: no file system is asked. Names of files
// have / between their parts.

/** The file that a path leads to from a file's folder; undefined where it climbs out of all folders. */
export const fileAt = (from: string, path: string): string | undefined => {
  const parts = from.split("/").slice(0, -1);
  for (const part of path.split("/")) {
    if (part === "" || part === ".") continue;
    if (part !== "..") parts.push(part);
    else if (parts.pop() === undefined) return undefined;
  }
  return parts.join("/");
};

/** The way from one file's folder to another file: "../blocks/raglan.chalk". */
export const pathTo = (from: string, to: string): string => {
  const [here, there] = [from.split("/").slice(0, -1), to.split("/")];
  let shared = 0;
  while (shared < here.length && shared < there.length - 1 && here[shared] === there[shared]) shared += 1;
  return [...here.slice(shared).map(() => ".."), ...there.slice(shared)].join("/");
};
