// Words in a DXF file: whatever a recipe says, one line of ASCII that no reader takes for anything but words.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dxfNames, dxfText } from "../../kernel/export/dxf-text.ts";

describe("a text", () => {
  test("of plain letters stays as it is", () => {
    expect(dxfText("CUT 2 SHELL, 1 PAIR")).toBe("CUT 2 SHELL, 1 PAIR");
  });

  test("loses every control, and cannot begin a tag of its own", () => {
    const controls = Array.from({ length: 32 }, (_, code) => String.fromCharCode(code)).join("");
    expect(dxfText(`a${controls}b\u007f\u0085c\u2028d`)).toBe("a  bcd");
    expect(dxfText("hem\n  0\nEOF\r\n  0\nSECTION")).toBe("hem   0 EOF   0 SECTION");
  });

  test('writes other letters as \\U+ and four digits (DXF reference, "About group code value types")', () => {
    expect(dxfText("Ärmel 前")).toBe("\\U+00C4rmel \\U+524D");
    // The escape has four digits, and U+1F9F5 has five.
    expect(dxfText("🧵")).toBe("\\U+FFFD");
  });

  test("keeps signs that would begin a code: \\U+0041, %%d, ^J (DXF reference, TEXT and control characters)", () => {
    expect(dxfText("\\U+0041")).toBe("\\U+005CU+0041");
    expect(dxfText("50%%d")).toBe("50% %d");
    expect(dxfText("50 % of 8 %")).toBe("50 % of 8 %");
    expect(dxfText("a \\ b\\P")).toBe("a \\ b\\P");
    expect(dxfText("a^Jb")).toBe("a^ Jb");
  });

  test("is cut where release 12 stops reading, never inside a letter, and says so", () => {
    const text = dxfText("ä".repeat(10_000));
    expect(text.length).toBeLessThanOrEqual(250);
    expect(text).toMatch(/^(?:\\U\+00E4)+\.\.\.$/);
    expect(text.length).toBeGreaterThan(240);
    expect(dxfText("x".repeat(250))).toBe("x".repeat(250));
    expect(dxfText("x".repeat(251))).toBe(`${"x".repeat(247)}...`);
  });

  test("is printable ASCII whatever it was", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 400 }), (text) => {
        expect(dxfText(text)).toMatch(/^[ -~]{0,250}$/);
      }),
    );
  });
});

describe("names", () => {
  test("are capitals, digits, hyphens and underscores, 31 at most, and no two alike", () => {
    const names = ["back", "Back", "Ärmel 1", "Ürmel 1", "a".repeat(40), `${"a".repeat(40)}b`, "", "前", "../x"];
    const given = dxfNames(names);
    expect([...given.keys()]).toEqual(names);
    for (const name of given.values()) expect(name).toMatch(/^[A-Z0-9_-]{1,31}$/);
    expect(new Set(given.values()).size).toBe(names.length);
    expect(given.get("back")).toBe("BACK");
    expect(given.get("Back")).toBe("BACK_2");
  });

  test("are found for whatever names", () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.string({ unit: "binary" })), (names) => {
        const given = [...dxfNames(names).values()];
        expect(new Set(given).size).toBe(names.length);
        for (const name of given) expect(name).toMatch(/^[A-Z0-9_-]{1,31}$/);
      }),
    );
  });
});
