// Every target, in the order in which a recipe goes through the program.
import type { Target } from "./target.ts";
import { asking } from "./targets/asking.ts";
import { comparing } from "./targets/comparing.ts";
import { exportingAll } from "./targets/exporting.ts";
import { hanging } from "./targets/hanging.ts";
import { knocking, serving } from "./targets/knocking.ts";
import { languageServing } from "./targets/language-serving.ts";
import { laying } from "./targets/laying.ts";
import { measuring } from "./targets/measuring.ts";
import { nesting } from "./targets/nesting.ts";
import { printing } from "./targets/printing.ts";
import { reading } from "./targets/reading.ts";
import { checking, explaining, stressing } from "./targets/reporting.ts";
import { mending, renaming } from "./targets/rewriting.ts";
import { tidying } from "./targets/tidying.ts";
import { tracingAll } from "./targets/tracing.ts";
import { working } from "./targets/working.ts";
import { workingAnew } from "./targets/working-anew.ts";
import { carding, chalking } from "./targets/written-sheets.ts";

export const allTargets = (): readonly Target[] => [
  reading,
  tidying,
  working,
  workingAnew,
  ...exportingAll,
  printing("a4"),
  printing("roll-914mm"),
  comparing,
  hanging,
  measuring,
  checking,
  explaining,
  stressing,
  carding,
  chalking,
  laying,
  nesting,
  asking,
  renaming,
  mending,
  languageServing(),
  knocking,
  serving(),
  ...tracingAll,
];
