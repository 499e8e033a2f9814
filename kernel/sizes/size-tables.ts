// A recipe drafted in every size of its size tables: its own, and those of recipes it uses.
import type { Evaluated, Size } from "../evaluate.ts";
import type { Circumstances, Kernel, Outcome } from "../kernel.ts";
import type { Source } from "../sources.ts";
import type { Garment } from "../working.ts";

/** One size table: the sizes that one recipe declares, in its order, and what comes of each. */
export interface SizeTable {
  /** The recipe that holds the table. */
  readonly table: string;
  readonly sizes: readonly Size[];
  readonly outcomes: readonly Outcome[];
}

/** A garment in one size. */
export interface SizedGarment {
  readonly size: string;
  /** The size that the others are seen from. */
  readonly base: boolean;
  readonly garment: Garment;
}

/** Works a recipe in each size of its size tables; none where it has no table. */
export const sizeTables = (kernel: Kernel, source: Source, circumstances: Circumstances): SizeTable[] => {
  const drafted = kernel.draft(source, circumstances);
  const bases = baseSizes(drafted);
  const sizes = [...drafted.sizes.values()].map((size) => ({ ...size, base: bases.some((base) => isOne(base, size)) }));
  const tables = [...new Set(sizes.map(({ where }) => where.file))];
  return tables.map((table) => {
    const own = sizes.filter(({ where }) => where.file === table);
    return {
      table,
      sizes: own,
      outcomes: own.map(({ name }) => kernel.work(source, { ...circumstances, size: name })),
    };
  });
};

/** The base sizes of a recipe and of all it uses: whoever uses several tables has no base of its own, and each table has. */
const baseSizes = ({ sizes, uses }: Evaluated): Size[] => [
  ...[...sizes.values()].filter(({ base }) => base),
  ...[...uses.values()].flatMap(baseSizes),
];

const isOne = (a: Size, b: Size): boolean => a.where.file === b.where.file && a.where.from === b.where.from;

/** The garments of a size table, in the order of its sizes. */
export const garmentsOf = ({ sizes, outcomes }: SizeTable): SizedGarment[] =>
  sizes.map(({ name, base }, index) => ({ size: name, base, garment: outcomes[index]!.garment }));
