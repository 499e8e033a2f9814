// A piece of any size settles within some seconds, for its mesh gets coarser where it is larger than any garment.
import { expect, test } from "vitest";
import { meshesOf } from "../../kernel/cloth/hang/rigged.ts";
import { workedText } from "../worked-recipe.ts";

const particlesOf = (long: string): number => {
  const { garment } = workedText(`chalkline 1
recipe "Lobby coat"
units cm
use "blocks/straight-coat.chalk" as straight { coat-length = ${long} }
piece front = straight.front {
}
`);
  return meshesOf(garment).get("front")!.flat.length;
};

test("a coat has a row every 60 mm, and one as long as a street fewer than a thousand particles", () => {
  const coat = particlesOf("100 cm");
  // About 29 cm of hem at 40 mm, and about 80 cm of cloth at 60 mm.
  expect(coat).toBeGreaterThan(7 * 13);
  expect(coat).toBeLessThan(9 * 20);
  const street = particlesOf("75 yd");
  expect(street).toBeGreaterThan(200);
  expect(street).toBeLessThan(1000);
});
