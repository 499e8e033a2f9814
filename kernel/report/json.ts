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
    : entriesOf(value).map(([key, each]) => `${scalar(key)}: ${written(each, inner)}`);
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
  return JSON.stringify(value).replace(steering, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`);
};

// What JSON lets stand though a terminal would follow it, or a page take it for the end of a script: written as a number, it is
// the same text to whoever reads JSON.
const steering = /[\u007f-\u009f\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]|<(?=[/!])/g;

const isArray = (value: Json & object): value is readonly Json[] => Array.isArray(value);

const entriesOf = (value: ReadonlyMap<string, Json> | { readonly [key: string]: Json }): [string, Json][] =>
  value instanceof Map ? [...value] : Object.entries(value);
