// The version of a recipe: the standard's own examples for the hash, node's hash as a second opinion, and what is hashed.
import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { recipeVersion } from "../kernel/recipe-version.ts";
import { sha256 } from "../kernel/sha-256.ts";
import { chalkline } from "./worked-recipe.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

describe("SHA-256", () => {
  // NIST, Cryptographic Standards and Guidelines, "SHA256" example values (one block, two blocks); the empty message is in
  // the test vectors of the Secure Hash Algorithm Validation System (SHAVS).
  test.each([
    ["", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
    ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
    [
      "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ],
  ])("of %j is the standard's", (text, wanted) => {
    expect(sha256(bytes(text))).toBe(wanted);
  });

  test("of any bytes is what node makes of them", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (some) => {
        expect(sha256(some)).toBe(createHash("sha256").update(some).digest("hex"));
      }),
    );
  });
});

describe("the version", () => {
  const files = new Map([
    ["block.chalk", 'chalkline 1\nrecipe "Block"\nuse "deep.chalk" as deep\n'],
    ["deep.chalk", 'chalkline 1\nrecipe "Deep"\n'],
    ["other.chalk", 'chalkline 1\nrecipe "Other"\nuse "deep.chalk" as deep\n'],
  ]);
  const text = 'chalkline 1\nrecipe "Coat"\nuse "block.chalk" as block\nuse "other.chalk" as other\n';
  const versionOf = (own: string, known: ReadonlyMap<string, string> = files): string =>
    recipeVersion(
      chalkline.work(
        { file: "coat.chalk", text: own },
        { sources: { read: (path) => ({ file: path, text: known.get(path)! }) } },
      ),
    );

  test("begins the hash of the recipe with all that it uses behind it, each once, in the order of use", () => {
    const all = [text, files.get("block.chalk"), files.get("deep.chalk"), files.get("other.chalk")].join("");
    expect(versionOf(text)).toBe(createHash("sha256").update(all).digest("hex").slice(0, 7));
  });

  test("of a recipe that stands alone is that of its text, in whatever letters", () => {
    const alone = 'chalkline 1\nrecipe "Ärmel, 前" # no date\n';
    expect(versionOf(alone)).toBe(createHash("sha256").update(alone).digest("hex").slice(0, 7));
  });

  test("changes with the recipe, a comment of it, and a recipe it uses", () => {
    const changed = new Map(files).set("deep.chalk", `${files.get("deep.chalk")}# deeper\n`);
    const versions = [versionOf(text), versionOf(`${text}# new\n`), versionOf(text, changed)];
    expect(new Set(versions).size).toBe(3);
  });
});
