// Names drawn inside a block stay inside: nobody is told of them, and nobody is sent after them.
import { expect, test } from "vitest";
import { hiddenName, isHidden, plainName, shownNames, withoutHidden } from "../../kernel/hidden-names.ts";
import { drafted } from "./told.ts";

test("a hidden name is known as one, and said as the recipe wrote it", () => {
  const name = hiddenName("side-seam", 12);
  expect([isHidden(name), isHidden("side-seam")]).toEqual([true, false]);
  expect([plainName(name), plainName("side-seam")]).toEqual(["side-seam", "side-seam"]);
  expect(withoutHidden(`${name} is longer than ${hiddenName("hem", 3)}.`)).toBe("side-seam is longer than hem.");
});

const recipe = (used: string): string => `chalkline 1
piece a {
  point A = (0, 0)
  if 1 = 1 {
    point B = A right 10 cm
    line helper = A to B
  }
}
let far = ${used}
`;

test("an edge that stayed in its block is not suggested from outside", () => {
  const { garment, findings } = drafted(recipe("length(a.helpr)"));
  const piece = garment.pieces.get("a")!;
  expect([...piece.edges.keys()].map(plainName)).toEqual(["helper"]);
  expect(shownNames(piece)).toEqual(["A"]);
  expect(findings.map(({ message, hint }) => [message, hint])).toEqual([
    ["a has no edge, place or dart called helpr.", undefined],
  ]);
});
