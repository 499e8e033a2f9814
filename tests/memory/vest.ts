// What is worked on all day: a small vest, and the block that it takes its panel from. Small, so that twenty thousand edits take
// minutes.
import type { FileText } from "../../editor/page/worker/spoken.ts";

export const block: FileText = {
  file: "blocks/panel.chalk",
  text: `chalkline 1
units cm
param long = 30 cm from 10 cm to 60 cm "from top to hem"
piece panel {
  point A = (0 cm, 0 cm)
  point B = A right 20 cm
  point C = B down long
  point D = A down long
  line top = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline top, side, hem, center
  mark hem as hem
  grain along center
  allow top, side, center by 1 cm
  allow hem by 2 cm
}
`,
};

export const vest: FileText = {
  file: "ushers-vest.chalk",
  text: `chalkline 1
units cm
use "blocks/panel.chalk" as block { long = 40 cm }
fabric felt "felt" width 90 cm
piece back = block.panel {
  extend-hem hem by 5 cm
}
cut back 2 from felt
`,
};
