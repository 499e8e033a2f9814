// A check, declared once: it looks at a finished garment and judges; it never changes anything.
import type { Garment, Judgement } from "./working.ts";

export interface Check {
  /** Written name, kebab-case; recipes use it in `accept`, and it is the code of the finding. */
  readonly name: string;
  readonly since: string;
  /** One sentence: what is true of a good garment. */
  readonly title: string;
  /** One or two sentences: what goes wrong at the sewing machine or on the body otherwise. */
  readonly why: string;
  /** Two whole small recipes; `passes` must come out clean, `fails` must give exactly this check's finding. */
  readonly passes: string;
  readonly fails: string;
  judge(garment: Garment): Iterable<Judgement>;
}

/** Declares a check; see any file in `checks/`. */
export const defineCheck = (check: Check): Check => check;
