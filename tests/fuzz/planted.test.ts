// The harness can fail: parts of the program with a fault planted in each are found at fault, with a short recipe that shows it.
import { describe, expect, test } from "vitest";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node";
import { rename } from "../../editor/assist/rename.ts";
import { broughtIn } from "../../editor/bring-in/brought-in.ts";
import { turnedAway } from "../../editor/server/doors.ts";
import { tidy } from "../../grammar/print.ts";
import { layOf } from "../../kernel/cloth/lay/lay-of.ts";
import { formats } from "../../kernel/export/formats.ts";
import { type Fault, faultsOn } from "./faults.ts";
import { recipesToTry, textsToTry } from "./recipes-to-try.ts";
import { plainRecipe, seedRecipes } from "./seed-recipes.ts";
import { Broken, type Target } from "./target.ts";
import { comparing } from "./targets/comparing.ts";
import { exporting } from "./targets/exporting.ts";
import { knockingAt } from "./targets/knocking.ts";
import { languageServingBy } from "./targets/language-serving.ts";
import { laying, layingBy } from "./targets/laying.ts";
import { liesWithin, reading } from "./targets/reading.ts";
import { mending, mendingBy, renaming, renamingBy } from "./targets/rewriting.ts";
import { tidyingBy } from "./targets/tidying.ts";
import { tracingAll, tracingBy } from "./targets/tracing.ts";
import { workingAnew, workingAnewAfter } from "./targets/working-anew.ts";
import { chalkline, workedOnce } from "./worked-once.ts";

const svg = formats.find(({ name }) => name === "svg")!;
const laser = formats.find(({ name }) => name === "laser")!;

const [, traceDxf] = tracingAll;

/** A target that fails where `bad` holds of the recipe, and is the real one elsewhere. */
const failingWhere = (target: Target, bad: (text: string) => boolean): Target => ({
  name: target.name,
  run(subject) {
    if (bad(subject.text)) throw new TypeError("Cannot read properties of undefined (reading 'image')");
    return target.run(subject);
  },
});

/** The faults that spoiled recipes and whole ones bring out of a target. */
const found = async (target: Target, count = 60): Promise<Fault[]> => {
  const whole = seedRecipes.slice(0, 4).map((from) => ({ text: from.text, from }));
  return faultsOn([target], [...recipesToTry(count, 3), ...whole], new Set());
};

const what = (faults: readonly Fault[]): string[] => faults.map(({ key }) => key);

describe("found", () => {
  test("a parser that throws on two closing braces, with nothing but those", async () => {
    const faults = await found(
      failingWhere(reading, (text) => /\}\s*\}/.test(text)),
      100,
    );
    expect(faults).toHaveLength(1);
    expect(faults[0]!.text.replace(/\s/g, "")).toBe("}}");
  });

  test("a finding that lies behind the end of the text", async () => {
    const target: Target = {
      name: "read",
      run({ text }) {
        for (const finding of chalkline.parse({ file: "fuzz.chalk", text }).diagnostics)
          liesWithin({ ...finding, where: { ...finding.where, to: text.length + 1 } }, text);
      },
    };
    expect(what(await found(target))).toEqual(["read: a finding lies outside the text"]);
  });

  test("a finding that is told of the next line", async () => {
    const target: Target = {
      name: "read",
      run({ text }) {
        for (const finding of chalkline.parse({ file: "fuzz.chalk", text }).diagnostics)
          liesWithin({ ...finding, where: { ...finding.where, line: finding.where.line + 1 } }, text);
      },
    };
    expect(what(await found(target))).toEqual(["read: a finding is told of another line"]);
  });

  test("an exporter that writes NaN right behind a letter", async () => {
    const write = (drawing: Parameters<typeof svg.write>[0]): string =>
      svg.write(drawing).replace(/ d="M[-\d.]+/, ' d="MNaN');
    expect(what(await found(exporting({ ...svg, write }), 5))).toEqual(["write svg: svg: NaN is written"]);
  });

  test("an exporter that does not escape names", async () => {
    const write = (drawing: Parameters<typeof svg.write>[0]): string => svg.write(drawing).replaceAll("&lt;", "<");
    const marked = recipesToTry(2500, 3)
      .filter(({ text }) => /recipe "[^"\n]*<script>/.test(text))
      .slice(0, 2);
    expect(marked).not.toEqual([]);
    expect(what(await faultsOn([exporting({ ...svg, write })], marked, new Set()))).toEqual([
      "write svg: the SVG is no XML",
    ]);
  });

  test("an exporter that loses the last line of a file", async () => {
    const write = (drawing: Parameters<typeof laser.write>[0]): string =>
      laser.write(drawing).trimEnd().split("\n").slice(0, -1).join("\n");
    expect(what(await found(exporting({ ...laser, write }), 3))).toEqual(["write laser: the DXF has half a tag"]);
  });

  test("a tidy that drops a comment", async () => {
    const target = tidyingBy((tree, forms) => tidy({ ...tree, comments: tree.comments.slice(1) }, forms));
    expect(what(await found(target))).toEqual(["tidy: tidying loses or moves a comment"]);
  });

  test("a tidy that never comes to rest", async () => {
    const target = tidyingBy(
      (tree, forms) =>
        `\n${tree.text.startsWith("\n\n\n") ? "" : tree.text && "\n"}${tidy(tree, forms)}${"\n".repeat(tree.text.length)}`,
    );
    expect(what(await found(target))).toEqual(["tidy: tidying twice changes more"]);
  });

  test("a tidy that changes a number", async () => {
    const target = tidyingBy((tree, forms) => tidy(tree, forms).replace(/\b38 cm/, "83 cm"));
    expect(what(await found(target, 200))).toContain("tidy: tidying changes what is said");
  });

  test("doors that let every host in", async () => {
    const target = knockingAt((knock, house) => turnedAway({ ...knock, host: house.hosts[0] }, house));
    expect(what(await found(target, 3))).toEqual(["knock: a request for another server is let in"]);
  });

  test("doors that ask no token", async () => {
    const target = knockingAt((knock, house) => turnedAway({ ...knock, authorization: "Bearer right" }, house));
    expect(what(await found(target, 3))).toEqual(["knock: a request without the token is let in"]);
  });

  test("a lay that puts a piece over the selvedge", async () => {
    const target = layingBy((garment, asked) => {
      const search = layOf(garment, asked);
      for (;;) {
        const { done, value } = search.next();
        if (!done) continue;
        const cloths = value.cloths.map((cloth) => ({
          ...cloth,
          placements: cloth.placements.map((each) => ({
            ...each,
            outline: each.outline.map(({ x, y }) => ({ x, y: y + 9000 })),
          })),
        }));
        return { ...value, cloths };
      }
    });
    const cape = [{ text: plainRecipe.text, from: plainRecipe }];
    expect(what(await faultsOn([target], cape, new Set()))).toEqual(["lay: a piece lies beside the cloth"]);
  });

  test("a rename that forgets one place", async () => {
    const target = renamingBy((...asked) => {
      const done = rename(...asked);
      return "refused" in done ? done : { edits: done.edits.slice(0, Math.max(1, done.edits.length - 1)) };
    });
    expect(what(await found(target))).toEqual(["rename: renaming and renaming back changes the text"]);
  });

  test("a mending that changes nothing", async () => {
    const faults = await found(mendingBy((text) => text));
    expect(what(faults)).toEqual(["mend: what a finding proposes does not mend it"]);
  });

  test("a kernel that remembers an older text of the recipe", async () => {
    const target = workingAnewAfter((text) => workedOnce(text.replace(/(\d+) cm/, "$17 cm")));
    expect(what(await found(target, 10))).toEqual(["work anew: a kernel that remembers says otherwise"]);
  });

  const drawings = textsToTry(100, 3).filter(({ kind }) => kind === "dxf");

  test("a reader of DXF that throws, with little more than what it throws at", async () => {
    const target = tracingBy("dxf", (text, ...more) => {
      if (/^VERTEX$/m.test(text)) throw new RangeError("Invalid array length");
      return broughtIn(text, ...more);
    });
    const [fault] = await faultsOn([target], drawings, new Set());
    expect(fault!.text.trim()).toBe("VERTEX");
  });

  test("a reader of DXF that loses a piece", async () => {
    const target = tracingBy("dxf", (...asked) => {
      const made = broughtIn(...asked);
      return "problem" in made ? made : { ...made, pieces: made.pieces.slice(1) };
    });
    expect(what(await faultsOn([target], drawings, new Set()))).toEqual([
      "trace dxf: a traced piece is not in the recipe",
    ]);
  });

  test("a language server that fails when it is asked for a word", async () => {
    const target = languageServingBy((input, output) => {
      const server = createMessageConnection(new StreamMessageReader(input), new StreamMessageWriter(output));
      server.onRequest("initialize", () => ({ capabilities: {} }));
      server.onRequest((method: string) => {
        if (method === "textDocument/hover") throw new Error("offset is undefined");
        return null;
      });
      server.listen();
      return new Promise(() => {});
    });
    expect(what(await found(target, 1))).toEqual(["language server: textDocument/hover is answered with a fault"]);
    await target.end?.();
  });

  test("a comparison that throws where a piece is gone", async () => {
    const hasLost = ({ text, from }: { text: string; from: { text: string } }): boolean =>
      workedOnce(text).garment.pieces.size < workedOnce(from.text).garment.pieces.size;
    const target: Target = {
      name: comparing.name,
      run(subject) {
        if (hasLost(subject)) throw new Broken("a piece is gone");
        comparing.run(subject);
      },
    };
    expect(what(await faultsOn([target], recipesToTry(30, 3), new Set()))).toEqual(["compare: a piece is gone"]);
  });
});

test("what is not at fault is not found: the same targets as they are", async () => {
  const text = plainRecipe.text;
  const sound: Target[] = [
    reading,
    tidyingBy(tidy),
    exporting(svg),
    exporting(laser),
    knockingAt(turnedAway),
    comparing,
  ];
  sound.push(laying, renaming, mending, workingAnew);
  expect(await faultsOn(sound, [{ text, from: plainRecipe }], new Set())).toEqual([]);
  const [drawing] = textsToTry(100, 3).filter(({ kind }) => kind === "dxf");
  expect(await faultsOn([traceDxf!], [drawing!], new Set())).toEqual([]);
});
