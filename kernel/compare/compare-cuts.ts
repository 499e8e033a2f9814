// What is cut from which cloth before and after, and the cloth itself, in words.
import { lengthIn, plainNumber } from "../units.ts";
import type { Fabric, Garment } from "../working.ts";
import type { ChangedCut } from "./comparison.ts";
import type { Naming } from "./naming.ts";

/** The pieces that are cut otherwise, and the cloths that are others, by name. */
export const changedCuts = (before: Garment, after: Garment, naming: Naming): ChangedCut[] => {
  const [was, is] = [cutsOf(before, naming), cutsOf(after, (name) => name)];
  return [...new Set([...is.keys(), ...was.keys()])].sort().flatMap((name): ChangedCut[] => {
    const [from, to] = [was.get(name) ?? null, is.get(name) ?? null];
    return from === to ? [] : [{ name, before: from, after: to }];
  });
};

const cutsOf = ({ cuts, fabrics, units }: Garment, naming: Naming): ReadonlyMap<string, string> => {
  const found = new Map<string, string>();
  for (const { piece, count, fabric } of cuts) {
    const name = naming(piece);
    const words = `cut ${count} from ${fabric}`;
    found.set(name, found.has(name) ? `${found.get(name)}, ${words}` : words);
  }
  for (const fabric of fabrics.values()) found.set(`fabric ${fabric.name}`, fabricInWords(fabric, units));
  return found;
};

const fabricInWords = (fabric: Fabric, units: Garment["units"]): string => {
  const { title, width, weight, bendingLength, shrinkLength, shrinkWidth, oneWay } = fabric;
  const length = (name: string, mm: number | undefined): string[] =>
    mm === undefined ? [] : [`${name} ${lengthIn(mm, units)}`];
  const percent = (name: string, ratio: number | undefined): string[] =>
    ratio === undefined ? [] : [`${name} ${plainNumber(ratio * 100, 2)}%`];
  return [
    `"${title}"`,
    ...length("width", width),
    ...(weight === undefined ? [] : [`weight ${plainNumber(weight, 1)} gsm`]),
    ...length("bending length", bendingLength),
    ...percent("shrinks in length", shrinkLength),
    ...percent("in width", shrinkWidth),
    ...(oneWay ? ["one way"] : []),
  ].join(", ");
};
