// What a recipe accepts, and what is left of the findings then.
import { describe, expect, test } from "vitest";
import { defineCheck } from "../../kernel/check.ts";
import { foldSquare } from "../../kernel/checks/fold-square.ts";
import { hemSquare } from "../../kernel/checks/hem-square.ts";
import { keptLength } from "../../kernel/checks/kept-length.ts";
import { outlineClosed } from "../../kernel/checks/outline-closed.ts";
import { seamLength } from "../../kernel/checks/seam-length.ts";
import { seamSmooth } from "../../kernel/checks/seam-smooth.ts";
import { findingsFrom, inspect } from "../../kernel/inspect.ts";
import type { Acceptance, Garment, Piece } from "../../kernel/working.ts";
import { at, atLine, garment, marked, panel, rectangle, run, seam } from "./made-garment.ts";

const accept = (check: string, on: string, line = 70): Acceptance => ({
  check,
  on,
  because: "The hem dips on purpose.",
  drawnBy: atLine(line),
});

// Its hem slants at both ends: 45 deg at the side, 135 deg at the center.
const slanting = (more: Partial<Piece> = {}): Piece =>
  marked(panel("back", [at(0, 0), at(300, 0), at(300, 400), at(0, 100)], more), "hem", "hem");

const verdicts = (of: Garment, ...checks: Parameters<typeof inspect>[1]): string[] =>
  inspect(of, checks).map(({ check, on, verdict }) => `${check} ${on}: ${verdict}`);

describe("judging", () => {
  test("all checks are run in order, and passes are kept", () => {
    expect(verdicts(garment([slanting()]), outlineClosed, hemSquare)).toEqual([
      "outline-closed back: pass",
      "hem-square back.hem at back.side: warning",
      "hem-square back.hem at back.center: warning",
    ]);
  });
});

describe("accepting", () => {
  const judged = (on: string): string[] =>
    verdicts(garment([slanting()], { accepts: [accept("hem-square", on)] }), hemSquare);
  const both = ["hem-square back.hem at back.side: accepted", "hem-square back.hem at back.center: accepted"];

  test("on a piece waives all of it", () => {
    expect(judged("back")).toEqual(both);
  });

  test("on an edge waives what concerns that edge", () => {
    expect(judged("back.hem")).toEqual(both);
    expect(judged("back.side")).toEqual([
      "hem-square back.hem at back.side: accepted",
      "hem-square back.hem at back.center: warning",
    ]);
  });

  test("on a place waives what is judged where the edges meet", () => {
    const piece = slanting({
      places: new Map([["side-hem", { name: "side-hem", point: at(300, 400), drawnBy: atLine(9) }]]),
    });
    const of = garment([piece], { accepts: [accept("hem-square", "back.side-hem")] });
    expect(verdicts(of, hemSquare)).toEqual([
      "hem-square back.hem at back.side: accepted",
      "hem-square back.hem at back.center: warning",
    ]);
  });

  test("keeps the reason, the numbers and the place", () => {
    const [accepted] = inspect(garment([slanting()], { accepts: [accept("hem-square", "back.hem")] }), [hemSquare]);
    expect(accepted).toMatchObject({
      check: "hem-square",
      verdict: "accepted",
      because: "The hem dips on purpose.",
      found: expect.closeTo(45, 9),
      wanted: 90,
      where: { line: 13 },
    });
  });

  test("leaves passes as they are", () => {
    const half = marked(panel("back", [at(0, 0), at(300, 0), at(340, 400), at(0, 400)]), "hem", "hem");
    expect(verdicts(garment([half], { accepts: [accept("hem-square", "back")] }), hemSquare)).toEqual([
      "hem-square back.hem at back.side: accepted",
      "hem-square back.hem at back.center: pass",
    ]);
  });

  test("waives one check and no other", () => {
    const piece = slanting({ keeps: [{ edge: "side", wanted: 300, of: "block", as: false, drawnBy: atLine(40) }] });
    const of = garment([piece], { accepts: [accept("hem-square", "back")] });
    expect(verdicts(of, hemSquare, keptLength)).toEqual([...both, "kept-length back.side: error"]);
  });
});

describe("accepting on a seam", () => {
  const [front, back] = [rectangle("front", 300, 410), rectangle("back", 300, 400)];
  const sides = [seam([run(front, "side")], [run(back, "side")])];
  const judged = (on: string): string[] =>
    verdicts(garment([front, back], { seams: sides, accepts: [accept("seam-length", on)] }), seamLength);

  test.each(["front.side with back.side", "front.side", "back.side"])("by %s", (on) => {
    expect(judged(on)).toEqual(["seam-length front.side with back.side: accepted"]);
  });

  // The other piece has a say in the seam too.
  test("a piece does not waive its seams with others", () => {
    expect(judged("front")).toEqual(["seam-length front.side with back.side: error", "accept-unused front: warning"]);
  });

  test("a piece waives a seam with itself", () => {
    const sleeve = panel("sleeve", [at(0, 0), at(300, 0), at(250, 400), at(0, 400)]);
    const of = garment([sleeve], {
      seams: [seam([run(sleeve, "side")], [run(sleeve, "center")], { ease: 10 })],
      accepts: [accept("seam-length", "sleeve")],
    });
    expect(verdicts(of, seamLength)).toEqual(["seam-length sleeve.side with sleeve.center: accepted"]);
  });

  test("by the line that runs across it", () => {
    const dipping = panel("front", [at(0, 0), at(300, 0), at(300, 400), at(0, 300)]);
    const of = garment([dipping, back], {
      seams: [seam([run(dipping, "side")], [run(back, "side")])],
      accepts: [accept("seam-smooth", "front.hem")],
    });
    expect(verdicts(of, seamSmooth)).toEqual([
      "seam-smooth front.top with back.top at front.side: pass",
      "seam-smooth front.hem with back.hem at front.side: accepted",
    ]);
  });
});

describe("acceptances that waive nothing", () => {
  const unused = (of: Garment, ...checks: Parameters<typeof inspect>[1]) =>
    inspect(of, checks).filter(({ check }) => check === "accept-unused");

  test("because all is well", () => {
    const good = marked(rectangle("back", 300, 400), "hem", "hem");
    expect(unused(garment([good], { accepts: [accept("hem-square", "back.hem")] }), hemSquare)).toMatchObject([
      {
        on: "back.hem",
        verdict: "warning",
        where: { line: 70 },
        message: "This line waives hem-square on back.hem, but there is nothing to waive.",
        hint: "Take it out.",
      },
    ]);
  });

  test("because they stand on something else", () => {
    expect(unused(garment([slanting()], { accepts: [accept("hem-square", "back.top")] }), hemSquare)).toMatchObject([
      { hint: "Take it out, or write `on back.hem`, where the check does find something." },
    ]);
  });

  test("but not on a piece with a failed line", () => {
    const doubtful = slanting({ doubtful: true });
    expect(unused(garment([doubtful], { accepts: [accept("hem-square", "back.hem")] }), hemSquare)).toEqual([]);
  });

  test("two that waive the same are both of use", () => {
    const accepts = [accept("hem-square", "back"), accept("hem-square", "back.hem", 71)];
    expect(unused(garment([slanting()], { accepts }), hemSquare)).toEqual([]);
  });
});

describe("findings", () => {
  test("are the warnings and errors, with the name of the check as their code", () => {
    const of = garment(
      [slanting({ keeps: [{ edge: "side", wanted: 300, of: "block", as: false, drawnBy: atLine(40) }] })],
      {
        accepts: [accept("hem-square", "back.side"), accept("fold-square", "back", 71)],
      },
    );
    const findings = findingsFrom(inspect(of, [outlineClosed, hemSquare, foldSquare, keptLength]));
    expect(findings.map(({ code, severity, where }) => [code, severity, where.line])).toEqual([
      ["hem-square", "warning", 13],
      ["kept-length", "error", 40],
      ["accept-unused", "warning", 71],
    ]);
    expect(findings[0]).toEqual({
      code: "hem-square",
      severity: "warning",
      where: atLine(13),
      message: "The hem of back meets its center at 135 deg.",
      hint: "Square it with `true-seam hem`.",
      related: [{ where: atLine(14), message: "center is drawn here." }],
    });
  });

  test("have no empty hint and no empty list beside them", () => {
    const bare = defineCheck({
      name: "bare",
      since: "0.1",
      title: "A check of this test.",
      why: "To see what comes of a judgement without a hint.",
      passes: "",
      fails: "",
      *judge() {
        yield { on: "back", verdict: "warning", found: 1, wanted: 0, where: atLine(1), message: "One." };
      },
    });
    expect(findingsFrom(inspect(garment([]), [bare]))).toEqual([
      { code: "bare", severity: "warning", where: atLine(1), message: "One." },
    ]);
  });
});
