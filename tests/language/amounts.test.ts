// Amounts in words: a finding says an area in the unit that the report says it in. Values worked out from the definition of the
// inch, 25.4 mm exactly (international yard and pound agreement, 1959).
import { expect, test } from "vitest";
import { valueInWords } from "../../kernel/report/amounts.ts";
import { scalarInWords } from "../../kernel/units.ts";
import { drafted } from "./told.ts";

const tooSmall = (units: string): string => `chalkline 1
units ${units}
piece patch {
  point A = (0, 0)
  point B = A right 12 in
  point C = B down 12 in
  point D = A down 12 in
  line top = A to B
  line right-side = B to C
  line bottom = D to C
  line left-side = A to D
  outline top, right-side, bottom, left-side
}
let cloth = area(patch)
check cloth > 20 in * 10 in
`;

// A square foot is 144 in2, and 30.48 cm squared: 929.0304 cm2. The other side is 200 in2: 1290.32 cm2.
test.each([
  ["in", "144 in2", "200 in2"],
  ["cm", "929 cm2", "1290.3 cm2"],
  ["mm", "929 cm2", "1290.3 cm2"],
])("in a recipe in %s findings and values say an area alike", (units, has, wants) => {
  const { judgements, values, garment } = drafted(tooSmall(units));
  expect(judgements.map(({ message }) => message)).toEqual([`cloth is ${has}, and has to be more than ${wants}.`]);
  expect(valueInWords(values.get("cloth")!.value, garment.units)).toBe(has);
});

test.each([
  [{ kind: "length", value: 31.75 }, "1 1/4 in"],
  [{ kind: "area", value: 25.4 * 25.4 * 1.5 }, "1.5 in2"],
  [{ kind: "angle", value: Math.PI / 6 }, "30 deg"],
  [{ kind: "weight", value: 260 }, "260 g/m2"],
  [{ kind: "number", value: 0.5 }, "0.5"],
] as const)("%o", (scalar, words) => {
  expect(scalarInWords(scalar, "in")).toBe(words);
});
