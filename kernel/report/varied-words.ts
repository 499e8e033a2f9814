// The range that cloth was looked at over, in words.
import { type Varied, variedInWords } from "../cloth/lay/varied.ts";
import type { Units } from "../working.ts";

/** "flare from 0 cm to 20 cm by 2 cm, as far as the recipe lets it go". */
export const rangeInWords = (varied: Varied, step: number, units: Units): string => {
  const [least, most, by] = [varied.least, varied.most, step].map((value) => variedInWords(varied, value, units));
  return `${varied.name} from ${least} to ${most} by ${by}${why[varied.range]}`;
};

const why: Readonly<Record<Varied["range"], string>> = {
  stated: ", as far as the recipe lets it go",
  asked: "",
  chosen: " (the recipe states no range, so this one was chosen)",
};
