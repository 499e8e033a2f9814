// The cloth that a garment needs over the values of a param.
import type { Diagnostic } from "../../../grammar/diagnostic.ts";
import type { Outcome } from "../../kernel.ts";
import type { PackTask } from "../../packing/pack-task.ts";
import type { Layout } from "../../packing/strip.ts";
import { lengthIn } from "../../units.ts";
import type { Units } from "../../working.ts";
import { clothStrip, refuseFaults } from "./cloth-strip.ts";
import { clothsToLay } from "./cloth-to-lay.ts";
import type { Effort } from "./efforts.ts";
import type { Asked, LaidCloth, Lay } from "./lay-of.ts";
import { failuresOf } from "./obstacle.ts";
import type { Varied } from "./varied.ts";

/** One value, mm, radians or a plain number, and how everything lies at it; nothing is laid of a recipe that fails. */
export interface ClothAt {
  readonly value: number;
  readonly lay: Lay;
  readonly failures: readonly Diagnostic[];
}

export interface OverValues {
  readonly varied: Varied;
  readonly step: number;
  readonly effort: Effort["name"];
  readonly rows: readonly ClothAt[];
  /** Somebody stopped it before the last value. */
  readonly isStopped: boolean;
}

/** What of a worked garment is to be packed, one strip a cloth, and how the layouts of all of them make a lay. */
export interface LayTasks {
  readonly tasks: readonly PackTask[];
  readonly layOf: (layouts: readonly Layout[]) => Lay;
}

/** The strips of a worked garment; none of a recipe that fails. */
export const layTasks = (outcome: Pick<Outcome, "findings" | "garment">, asked: Asked): LayTasks => {
  const cloths = failuresOf(outcome).length > 0 ? [] : clothsToLay(outcome.garment, asked);
  const none = cloths.flatMap((each) => ("because" in each ? [each] : []));
  const strips = cloths.flatMap((each) => ("because" in each ? [] : [clothStrip(outcome.garment, each, asked)]));
  const layOf = (layouts: readonly Layout[]): Lay => ({
    cloths: strips.map(({ strip, clothOf }, i) => {
      refuseFaults(strip, layouts[i]!);
      return clothOf(layouts[i]!);
    }),
    none,
  });
  return { tasks: strips, layOf };
};

/** A cloth at a value; undefined where it is not laid there. */
export interface ClothPoint {
  readonly value: number;
  readonly cloth: LaidCloth | undefined;
  /** Why there is no length to buy, a sentence each; empty where there is one. */
  readonly because: readonly string[];
}

/** The cloths of all values by name and title, in the order in which they are first met. */
export const clothsOver = ({
  rows,
}: Pick<OverValues, "rows">): { readonly fabric: string; readonly title: string }[] => {
  const titles = new Map<string, string>();
  for (const { lay } of rows) {
    for (const { fabric, title } of lay.cloths) titles.set(fabric, title);
  }
  return [...titles].map(([fabric, title]) => ({ fabric, title }));
};

/** One cloth at every value. */
export const pointsOf = ({ rows }: Pick<OverValues, "rows">, fabric: string, units: Units): ClothPoint[] =>
  rows.map(({ value, lay, failures }) => {
    const cloth = lay.cloths.find((each) => each.fabric === fabric);
    const none = lay.none.find((each) => each.fabric === fabric);
    return {
      value,
      cloth,
      because: [
        ...failures.map(({ where, message }) => `${where.file}:${where.line}: ${message}`),
        ...(cloth?.tooWide ?? []).map(
          ({ piece, width, usable }) => `${piece} is ${lengthIn(width - usable, units)} too wide for it.`,
        ),
        ...(cloth?.notLaid ?? []).map(({ because }) => because),
        ...(none ? [none.because] : []),
      ],
    };
  });
