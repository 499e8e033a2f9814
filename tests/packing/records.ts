// Strip packing problems of the literature with their record layouts (arXiv:2509.13329, Table 3, and what it cites). They are not
// ours to keep: read where the folder of shared data lies beside the checkout, and left out anywhere else.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { toRadians } from "../../kernel/geometry/trig.ts";
import type { Layout, Strip } from "../../kernel/packing/strip.ts";

export interface Problem {
  readonly name: string;
  readonly strip: Strip;
  readonly bestKnown: { readonly length: number; readonly utilisationPercent: number };
  /** The record layout, and the strip it was made in, which some solvers make a hair wider. */
  readonly record: { readonly strip: Strip; readonly layout: Layout };
}

interface Stored {
  readonly name: string;
  readonly stripHeight: number;
  readonly bestKnown: Problem["bestKnown"] & { readonly stripHeightUsed: number };
  readonly items: readonly {
    readonly demand: number;
    readonly allowedRotationsDeg: readonly number[];
    readonly outline: readonly (readonly [number, number])[];
  }[];
}

interface StoredLayout {
  readonly stripHeight: number;
  readonly length: number;
  readonly placements: readonly {
    readonly item: number;
    readonly rotationDeg: number;
    readonly x: number;
    readonly y: number;
  }[];
}

const folder = new URL("../../../shared/data/strip-packing/", import.meta.url);

/** All of them, by name; none where the data is not there. */
export const problems = (): Problem[] =>
  (existsSync(folder) ? readdirSync(folder) : [])
    .filter((file) => file.endsWith(".json"))
    .sort()
    .map((file) => problemOf(read<Stored>(file), read<StoredLayout>(`layouts/${file}`)));

const read = <Kind>(file: string): Kind => JSON.parse(readFileSync(new URL(file, folder), "utf8")) as Kind;

const problemOf = ({ name, stripHeight, bestKnown, items }: Stored, record: StoredLayout): Problem => {
  const shapes = items.map(({ outline, allowedRotationsDeg, demand }) => ({
    outline: outline.map(([x, y]) => ({ x, y })),
    turns: allowedRotationsDeg.map(toRadians),
    count: demand,
  }));
  const placements = record.placements.map(({ item, rotationDeg, x, y }) => ({
    shape: item,
    turn: toRadians(rotationDeg),
    by: { x, y },
  }));
  return {
    name,
    strip: { width: stripHeight, shapes },
    bestKnown,
    record: {
      strip: { width: record.stripHeight, shapes },
      layout: { length: record.length, placements },
    },
  };
};
