// When two paths count as one.
import { expect, test } from "vitest";
import { cubic, line } from "../../kernel/geometry/path.ts";
import { samePath } from "../../kernel/geometry/same-path.ts";

const p = (x: number, y: number) => ({ x, y });
const curve = cubic(p(0, 0), p(10, 0), p(20, 10), p(20, 20));

test("ends and handles may be off by as much as is said, and no more", () => {
  const shifted = cubic(p(0, 0), p(10, 0.3), p(20, 10), p(20, 20));
  expect(samePath([curve], [curve], 0)).toBe(true);
  expect(samePath([curve], [shifted], 0.3)).toBe(true);
  expect(samePath([curve], [shifted], 0.29)).toBe(false);
});

test("a path of other spans is another path, even where it runs alike", () => {
  const [whole, first, second] = [line(p(0, 0), p(20, 0)), line(p(0, 0), p(10, 0)), line(p(10, 0), p(20, 0))];
  expect(samePath([whole], [first, second], 1)).toBe(false);
  expect(samePath([line(p(0, 0), p(20, 20))], [curve], 100)).toBe(false);
  expect(samePath([whole], [line(p(20, 0), p(0, 0))], 1)).toBe(false);
});
