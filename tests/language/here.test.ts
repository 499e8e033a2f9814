// Working down to a spot of the text: what a line written there would see.
import { describe, expect, test } from "vitest";
import { kernel } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";

const chalk = kernel(vocabulary);

/** The text without its mark `|`, worked down to where it stood. */
const upTo = (marked: string) => {
  const offset = marked.indexOf("|");
  const text = marked.replace("|", "");
  return chalk.workUpTo({ file: "test.chalk", text }, offset);
};

const namesAt = (marked: string): Map<string, string> =>
  new Map(upTo(marked).here.names.map(({ name, kind }) => [name, kind]));

const head = "chalkline 1\nunits cm\nlet deep = 30 cm\n";

test("names of the lines above are there, with what they stand for, and none of those below", () => {
  const { here } = upTo(`${head}let half = deep / 2\n|let later = 1\n`);
  expect(here.piece).toBeUndefined();
  expect(here.names.map(({ name, kind }) => [name, kind])).toEqual([
    ["deep", "length"],
    ["half", "length"],
  ]);
  expect(here.names[1]!.value).toEqual({ kind: "length", value: 150 });
});

const piece = (body: string): string => `${head}piece panel {\n${body}}\nlet after = 1\n`;

describe("in a piece", () => {
  test("its edges and places are there as the lines above have left them, and so is its own name", () => {
    const { here } = upTo(piece("  point A = (0, 0)\n  line top = A to (20 cm, 0)\n|  line side = A to (0, deep)\n"));
    expect([...here.piece!.edges.keys()]).toEqual(["top"]);
    expect(here.names.map(({ name, kind }) => [name, kind])).toEqual([
      ["top", "edge"],
      ["A", "place"],
      ["panel", "piece"],
      ["deep", "length"],
    ]);
  });

  test("the end of its block still lies in it, and what stands behind its } does not", () => {
    const line = "  line top = (0, 0) to (20 cm, 0)\n";
    expect(namesAt(piece(`${line}|`)).get("top")).toBe("edge");
    expect(namesAt(piece(`${line}  |\n  # nothing more\n`)).get("top")).toBe("edge");
    const behind = namesAt(piece(line).replace("}\n", "}|\n"));
    expect(behind.get("top")).toBeUndefined();
    expect(behind.get("panel")).toBe("piece");
    expect(namesAt(`${head}piece panel {\n${line}|`).get("top")).toBe("edge");
  });

  test("a spot within a line lets that line be worked", () => {
    expect(namesAt(piece("  line top = (0, 0) to| (20 cm, 0)\n  let a = 1\n")).get("top")).toBe("edge");
  });
});

test("a repeat is left in its first round, and a solve in its first trial", () => {
  const { here } = upTo(`${head}repeat 3 as round {\n  let twice = 2 * round\n|}\n`);
  expect(here.names.find(({ name }) => name === "twice")!.value).toEqual({ kind: "number", value: 2 });
  const solved = namesAt(
    piece("  solve h from 1 cm to 50 cm until length(a) = deep {\n    line a = (0, 0) to (0, h)\n|  }\n"),
  );
  expect([solved.get("h"), solved.get("a")]).toEqual(["length", "edge"]);
});

test("a branch that is not taken is passed over", () => {
  expect([...namesAt(`${head}if deep > 1 m {\n  let a = 1\n|}\nlet b = 2\n`).keys()]).toEqual(["deep"]);
  expect(namesAt(`${head}if deep > 1 m {\n  let a = 1\n} else {\n  let b = 2\n|}\n`).get("b")).toBe("number");
});

test("names of lines that failed are not there, and what was wrong is told", () => {
  const { here, diagnostics } = upTo(`${head}let wrong = nothing\n|`);
  expect(here.names.map(({ name }) => name)).toEqual(["deep"]);
  expect(diagnostics.map(({ code }) => code)).toEqual(["name-unknown"]);
});

test("nothing below the spot is worked or found", () => {
  const { garment, diagnostics } = upTo(`${head}|let wrong = nothing\npiece panel { }\n`);
  expect(diagnostics).toEqual([]);
  expect([...garment.pieces.keys()]).toEqual([]);
});

test("in a size it is that size's body", () => {
  const text = `chalkline 1
units cm
measure chest = 92 cm
let half = chest / 2
size large {
  chest = 100 cm
}
`;
  const offset = text.indexOf("size");
  const { here } = chalk.workUpTo({ file: "test.chalk", text }, offset, { size: "large" });
  expect(here.names.find(({ name }) => name === "half")!.value).toEqual({ kind: "length", value: 500 });
});
