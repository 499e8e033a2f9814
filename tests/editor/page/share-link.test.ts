// A recipe as a link: it comes back as it was, and a link that was cut off, tampered with or blown up is refused in words.
import fc from "fast-check";
import { deflateSync, strToU8 } from "fflate";
import { expect, test } from "vitest";
import { linkOf, readLink } from "../../../editor/page/files/share-link.ts";

const packed = (link: string | undefined): string => link!.slice("recipe=".length);

test("whatever is in the texts comes back", () => {
  fc.assert(
    fc.property(
      fc.array(fc.record({ file: fc.string(), text: fc.string({ unit: "grapheme" }) }), { minLength: 1, maxLength: 5 }),
      (files) => {
        const link = linkOf(files);
        expect(link).toMatch(/^recipe=[\w-]+$/);
        expect(readLink(packed(link))).toEqual(files);
      },
    ),
    { seed: 8, numRuns: 200 },
  );
});

test("a link that was cut off anywhere says so, or at least holds no half of a recipe", () => {
  const link = packed(linkOf([{ file: "coat.chalk", text: "chalkline 1\nunits cm\n".repeat(20) }]));
  for (let length = 0; length < link.length; length += 1)
    expect(readLink(link.slice(0, length))).toHaveProperty("problem");
});

test("what is no link of ours is refused", () => {
  const link = (value: unknown): string =>
    Buffer.from(deflateSync(strToU8(JSON.stringify(value)))).toString("base64url");
  for (const value of [
    null,
    3,
    {},
    [],
    [["a"]],
    [["a", 1]],
    [[1, "a"]],
    [["a", "b"], null],
    Array.from({ length: 5000 }, () => ["a", "b"]),
  ])
    expect(readLink(link(value))).toHaveProperty("problem");
  for (const text of ["", "%%%", "AAAA", "🧵"]) expect(readLink(text)).toHaveProperty("problem");
});

test("a small link that unpacks to more than any recipe is refused, and memory stays small", () => {
  const bomb = Buffer.from(deflateSync(new Uint8Array(200_000_000).fill(32), { level: 9 })).toString("base64url");
  expect(bomb.length).toBeLessThan(400_000);
  expect(readLink(bomb)).toHaveProperty("problem");
});

test("a recipe that is too long for a link gets none", () => {
  expect(
    linkOf([
      {
        file: "long.chalk",
        text: fc.sample(fc.string({ minLength: 60_000, maxLength: 60_000 }), { seed: 1, numRuns: 1 })[0]!,
      },
    ]),
  ).toBeUndefined();
});
