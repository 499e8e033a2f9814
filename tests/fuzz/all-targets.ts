// Every target, in the order in which a recipe goes through the program.
import type { Target } from "./target.ts";
import { comparing } from "./targets/comparing.ts";
import { exportingAll } from "./targets/exporting.ts";
import { hanging } from "./targets/hanging.ts";
import { knocking, serving } from "./targets/knocking.ts";
import { measuring } from "./targets/measuring.ts";
import { printing } from "./targets/printing.ts";
import { reading } from "./targets/reading.ts";
import { tidying } from "./targets/tidying.ts";
import { working } from "./targets/working.ts";

export const allTargets = (): readonly Target[] => [
  reading,
  tidying,
  working,
  ...exportingAll,
  printing("a4"),
  printing("roll-914mm"),
  comparing,
  hanging,
  measuring,
  knocking,
  serving(),
];
