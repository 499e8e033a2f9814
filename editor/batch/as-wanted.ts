// Reads data that came from elsewhere, part by part: each part has to be of the kind that is wanted, and no larger than it may be.
import { batchLimits } from "./batch-limits.ts";

/** That something is not of the form that is wanted. */
export class NotAsWanted extends Error {}

/** The parts of an object by name; none is ever looked up on the object itself. */
export const partsOf = (value: unknown): ReadonlyMap<string, unknown> => {
  if (typeof value !== "object" || value === null || Array.isArray(value)) throw new NotAsWanted("an object is wanted");
  return new Map(Object.entries(value));
};

export const listOf = <Part>(value: unknown, most: number, part: (value: unknown) => Part): Part[] => {
  if (!Array.isArray(value)) throw new NotAsWanted("a list is wanted");
  if (value.length > most) throw new NotAsWanted(`a list holds more than ${most}`);
  return value.map((each) => part(each));
};

export const textOf = (value: unknown, most: number = batchLimits.letters): string => {
  if (typeof value !== "string") throw new NotAsWanted("a text is wanted");
  if (value.length > most) throw new NotAsWanted(`a text is longer than ${most} letters`);
  return value;
};

export const oneOf = <Word extends string>(value: unknown, words: readonly Word[]): Word => {
  const found = words.find((word) => word === value);
  if (found === undefined) throw new NotAsWanted(`one of ${words.join(", ")} is wanted`);
  return found;
};

/** A whole number from 0 on. */
export const wholeOf = (value: unknown): number => {
  if (typeof value !== "number" || !Number.isSafeInteger(value) || value < 0)
    throw new NotAsWanted("a whole number is wanted");
  return value;
};

export const numberOf = (value: unknown): number => {
  if (typeof value !== "number" || !Number.isFinite(value)) throw new NotAsWanted("a number is wanted");
  return value;
};

export const orNull = <Part>(value: unknown, part: (value: unknown) => Part): Part | null =>
  value === null ? null : part(value);

/** JSON of at most so many letters. */
export const dataIn = (text: string, most: number): unknown => {
  if (text.length > most) throw new NotAsWanted(`it is longer than ${most} letters`);
  try {
    return JSON.parse(text);
  } catch {
    throw new NotAsWanted("it is not well formed");
  }
};
