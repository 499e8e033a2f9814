// The half back of a coat, 300 by 1000 mm, and the same with 300 mm more hem in three places; and a back with an armhole.
import { kernel } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import type { Garment } from "../../kernel/working.ts";

const straight = `chalkline 1
units mm
piece straight {
  line shoulder = (0, 0) to (300 mm, 0)
  line side = (300 mm, 0) to (300 mm, 1000 mm)
  line hem = (0, 1000 mm) to (300 mm, 1000 mm)
  line center = (0, 0) to (0, 1000 mm)
  outline shoulder, side, hem, center
  mark hem as hem
  mark center as fold
}
`;

const armhole = `chalkline 1
units mm
piece straight {
  line neck = (0, 0) to (70 mm, -20 mm)
  line shoulder = (70 mm, -20 mm) to (200 mm, 20 mm)
  curve armhole = (200 mm, 20 mm) to (280 mm, 240 mm) through (180 mm, 150 mm) heading down leaving square-to shoulder arriving right
  line side = (280 mm, 240 mm) to (280 mm, 1000 mm)
  line hem = (0, 1000 mm) to (280 mm, 1000 mm)
  line center = (0, 0) to (0, 1000 mm)
  outline neck, shoulder, armhole, side, hem, center
  mark hem as hem
  mark center as fold
}
`;

const chalk = kernel(vocabulary);

const worked = (text: string): Garment => {
  const { garment, findings } = chalk.work({ file: "coat.chalk", text });
  const errors = findings.filter(({ severity }) => severity === "error");
  if (errors.length > 0) throw new Error(errors.map(({ message }) => message).join(" "));
  return garment;
};

const altered = (line: string): Garment =>
  worked(`${straight}piece coat = straight {\n  ${line}\n  true-seam hem\n}\n`);

/** The straight half back. */
export const straightCoat = worked(straight);

/** 300 mm more hem at the center, from a slash at 190 mm along the shoulder, and at the side. */
export const centerCoat = altered("spread-from shoulder.start to hem by 300 mm along center");
export const middleCoat = altered("spread-from shoulder at 190 mm to hem by 300 mm");
export const sideCoat = altered("spread-from shoulder.end to hem by 300 mm along side");

/** Straight, with neck, shoulder and armhole. */
export const armholeCoat = worked(armhole);
