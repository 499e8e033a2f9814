// What a page says of a measure that is nothing: the same, whichever side of 0 the rounding has left it on.
import { expect, test } from "vitest";
import { pageOf } from "./page.ts";
import { measured } from "./worked-page.ts";

const page = pageOf(`
\`\`\`recipe
chalkline 1
units mm
\`\`\`
`);

test.each([
  ["0 - 0.01 mm", "0.0 mm"],
  ["(0 - 0.1 mm) * 10 mm", "0.0 cm2"],
  ["0 - 0.001 deg", "0.00 deg"],
  ["0 - 0.01 gsm", "0.0 gsm"],
  ["0 - 0.00001", "0"],
  ["(0 - 0.01 mm, 0 - 0.01 mm)", "(0.0, 0.0) mm"],
  ["0 - 0.06 mm", "-0.1 mm"],
  ["(0 - 1 mm) * 6 mm", "-0.1 cm2"],
  ["0 - 0.01 deg", "-0.01 deg"],
  ["0 - 10 mm", "-10.0 mm"],
])("%s reads %s", (what, value) => {
  expect(measured([what], page, page.cases[0]!)).toEqual([value]);
});
