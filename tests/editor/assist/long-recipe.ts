// A recipe of a thousand lines, as long as the longest that people write: coats of one block after another, each altered.

const coat = (number: number): string => `piece coat-${number} {
  let wide = 24 cm + ${number} * 1 mm
  point nape = (0 cm, 0 cm)
  point neck-point = nape right 7 cm up 2 cm
  point shoulder-tip = neck-point bearing 20 deg for 13 cm
  point underarm = (wide, 22 cm)
  point hem-side = underarm down 60 cm
  point hem-center = nape down 82 cm
  line center = nape to hem-center
  curve neck = nape to neck-point leaving right arriving up
  line shoulder = neck-point to shoulder-tip
  curve armscye = shoulder-tip to underarm leaving square-to shoulder arriving right
  line side = underarm to hem-side
  line hem = hem-side to hem-center
  outline center, neck, shoulder, armscye, side, hem
  mark center as fold
  mark hem as hem
  spread-from shoulder at 50% to hem by flare
  extend-hem hem by longer
  true-seam hem, shoulder
  solve low from 1 cm to 30 cm until length(low-line) = 12 cm {
    line low-line = nape right 5 cm to (nape right 5 cm) down low
  }
  allow neck, shoulder, armscye, side by 1.5 cm
  allow hem by 2.5 cm corners turned
}
`;

const coats = 38;

/** The text, and how many lines it has. */
export const longRecipe = `chalkline 1
recipe "Coats for the whole chorus"
units cm
measure bust-girth = 92 cm from 70 cm to 160 cm "Round the bust"
param flare  = 9 cm from 0 cm to 20 cm "opening of each slash"
param longer = 6 cm from 0 cm to 40 cm "added length"
fabric shell "gabardine" width 150 cm weight 260 gsm
${Array.from({ length: coats }, (_, index) => coat(index + 1)).join("")}${Array.from({ length: coats }, (_, index) => `cut coat-${index + 1} 1 from shell\n`).join("")}`;
