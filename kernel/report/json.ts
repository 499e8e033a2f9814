// JSON text out of plain data. Names that people gave are keys of a Map and never of an object.

export type Json =
  | string
  | number
  | boolean
  | null
  | readonly Json[]
  | ReadonlyMap<string, Json>
  | { readonly [key: string]: Json };

/** The value as JSON, indented, what is short enough on one line; numbers at full precision. */
export const jsonText = (value: Json): string => `${written(value, "")}\n`;

const lineWidth = 100;

const written = (value: Json, indent: string): string => {
  if (value === null || typeof value !== "object") return scalar(value);
  const inner = `${indent}  `;
  const isList = isArray(value);
  const parts = isList
    ? value.map((each) => written(each, inner))
    : entriesOf(value).map(([key, each]) => `${JSON.stringify(key)}: ${written(each, inner)}`);
  const [open, close] = isList ? ["[", "]"] : ["{", "}"];
  if (parts.length === 0) return open + close;
  const gap = isList ? "" : " ";
  const short = `${open}${gap}${parts.join(", ")}${gap}${close}`;
  if (indent.length + short.length <= lineWidth && !short.includes("\n")) return short;
  return `${open}\n${parts.map((part) => inner + part).join(",\n")}\n${indent}${close}`;
};

const scalar = (value: string | number | boolean | null): string => {
  if (typeof value === "number" && !Number.isFinite(value))
    throw new Error("a report holds a number that is not finite");
  return JSON.stringify(value);
};

const isArray = (value: Json & object): value is readonly Json[] => Array.isArray(value);

const entriesOf = (value: ReadonlyMap<string, Json> | { readonly [key: string]: Json }): [string, Json][] =>
  value instanceof Map ? [...value] : Object.entries(value);
