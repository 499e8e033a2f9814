// The tags of a DXF file, read line by line as the DXF reference says: a whole number, then its value.

export type ReadTag = readonly [number, string];

/** The tags of a file; every line is seen to be what it should be, with the end at the end. */
export const tagsOf = (file: string): ReadTag[] => {
  if (!file.endsWith("  0\nEOF\n")) throw new Error("the file does not end where it should");
  const lines = file.slice(0, -1).split("\n");
  if (lines.length % 2 !== 0) throw new Error("a group code has no value");
  const tags: ReadTag[] = [];
  for (let i = 0; i < lines.length; i += 2) {
    const [code, value] = [lines[i]!, lines[i + 1]!];
    if (!/^ {0,2}\d{1,3}$/.test(code)) throw new Error(`line ${i + 1} is no group code: ${code}`);
    if (!/^[ -~]{0,255}$/.test(value)) throw new Error(`line ${i + 2} is no value: ${value}`);
    tags.push([Number(code), value]);
  }
  return tags;
};

/** The values of all tags with a group code. */
export const valuesOf = (tags: readonly ReadTag[], code: number): string[] =>
  tags.filter(([each]) => each === code).map(([, value]) => value);
