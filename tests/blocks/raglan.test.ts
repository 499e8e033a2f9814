// The raglan block against its coat: what the handbook asks of a raglan (3.5): where its lines start, how the shoulders lie on
// the cap, equal pairs, and a neck that is unchanged.
import { describe, expect, test } from "vitest";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { grainDirection } from "../../kernel/grain-direction.ts";
import { raglanSleeve } from "../../kernel/steps/raglan-sleeve.ts";
import { apart, pathOf } from "../alterations/made-piece.ts";
import { lengthOf, placeOf, workedRecipe, workedText } from "../worked-recipe.ts";

const raglan = workedRecipe("blocks/raglan.chalk");
const piece = (name: string) => raglan.garment.pieces.get(name)!;
const sides = ["back", "front"] as const;

describe("the raglan of R88", () => {
  test("comes out clean", () => expect(raglan.findings).toEqual([]));

  test.each(sides)("%s: the raglan edges of body and sleeve are equal, and so are the runs under the arm", (side) => {
    expect(lengthOf(raglan, `${side}-sleeve`, "raglan")).toBeCloseTo(lengthOf(raglan, side, "raglan"), 6);
    expect(lengthOf(raglan, `${side}-sleeve`, "cap")).toBeCloseTo(lengthOf(raglan, side, "armscye"), 3);
  });

  // Handbook, worked example 3.2: the coat's necks are 81.84 and, with 20 of wrap, 139.63.
  test("the neck is as it was", () => {
    expect(lengthOf(raglan, "back", "neck") + lengthOf(raglan, "back-sleeve", "neck")).toBeCloseTo(81.84, 1);
    expect(lengthOf(raglan, "front", "neck") + lengthOf(raglan, "front-sleeve", "neck")).toBeCloseTo(139.63, 1);
  });

  // Handbook 3.5, step 1: 25 to 35 from the neck point along the back neck, 35 to 50 along the front.
  test("the raglan line starts at the customary places", () => {
    expect(lengthOf(raglan, "back-sleeve", "neck")).toBeCloseTo(30, 6);
    expect(lengthOf(raglan, "front-sleeve", "neck")).toBeCloseTo(40, 6);
  });

  // Handbook 3.5, step 3: touching at the notches, tips about 10 above the cap top.
  test("the shoulder pieces touch the cap at the pitch, a third of the armhole up", () => {
    const cap = pathOf(piece("whole-sleeve"), "cap");
    const [back, front] = [lengthOf(raglan, "whole-back", "armscye"), lengthOf(raglan, "whole-front", "armscye")];
    expect(apart(placeOf(raglan, "back-sleeve", "pitch"), pointAt(cap, back / 3))).toBeLessThan(1e-6);
    expect(apart(placeOf(raglan, "front-sleeve", "pitch"), pointAt(cap, pathLength(cap) - front / 3))).toBeLessThan(
      1e-6,
    );
  });

  test("the shoulder tips lie 10 above the top of the cap in the mean, and each within 6 of that", () => {
    const top = placeOf(raglan, "whole-sleeve", "crown").y;
    const above = sides.map((side) => top - placeOf(raglan, `${side}-sleeve`, "shoulder-tip").y);
    expect((above[0]! + above[1]!) / 2).toBeCloseTo(10, 0);
    for (const each of above) expect(Math.abs(each - 10)).toBeLessThan(6);
  });

  test("the shoulders have kept their shape, and are notched at their tips", () => {
    for (const side of sides) {
      const [tip, neckPoint, pitch] = ["shoulder-tip", "neck-point", "pitch"].map((place) =>
        placeOf(raglan, `${side}-sleeve`, place),
      );
      const [tipWas, neckPointWas, pitchWas] = ["shoulder-tip", "neck-point", "pitch"].map((place) =>
        placeOf(raglan, `whole-${side}`, place),
      );
      expect(apart(tip!, neckPoint!)).toBeCloseTo(apart(tipWas!, neckPointWas!), 6);
      expect(apart(pitch!, neckPoint!)).toBeCloseTo(apart(pitchWas!, neckPointWas!), 6);
      const notched = piece(`${side}-sleeve`).notches.filter(({ edge }) => edge === "overarm");
      expect(notched).toHaveLength(1);
      expect(apart(notched[0]!.point, tip!)).toBeLessThan(1e-9);
    }
  });

  // Two fifths of the way up, where no part can be sewn in upside down.
  test.each(sides)("%s: the raglan seam is notched alike on body and sleeve, off its middle", (side) => {
    for (const name of [side, `${side}-sleeve`]) {
      const [notch, ...others] = piece(name).notches.filter(({ edge }) => edge === "raglan");
      expect(others).toEqual([]);
      const raglanLine = pathOf(piece(name), "raglan");
      expect(nearest(raglanLine, notch!.point).at / pathLength(raglanLine)).toBeCloseTo(0.4, 6);
    }
  });

  test("the overarm seam closes without ease, and never swings beyond the middle of the sleeve", () => {
    const [back, front] = sides.map((side) => pathOf(piece(`${side}-sleeve`), "overarm")) as [never, never];
    expect(pathLength(back)).toBeCloseTo(pathLength(front), 6);
    const [top, wrist] = ["crown", "wrist-middle"].map((place) => placeOf(raglan, "whole-sleeve", place));
    // How far to the right of the middle a point lies, the wrist being below.
    const aside = ({ x, y }: { x: number; y: number }): number =>
      x - top!.x - ((wrist!.x - top!.x) * (y - top!.y)) / (wrist!.y - top!.y);
    for (let share = 0; share <= 1; share += 1 / 64) {
      expect(aside(pointAt(back, share * pathLength(back)))).toBeLessThan(1e-6);
      expect(aside(pointAt(front, share * pathLength(front)))).toBeGreaterThan(-1e-6);
    }
  });

  // Down from the middle between underarm and middle of the sleeve to the middle of its own wrist (common practice, no source).
  test("each half hangs by its own middle", () => {
    const wrist = placeOf(raglan, "whole-sleeve", "wrist-middle");
    const crown = placeOf(raglan, "whole-sleeve", "crown");
    for (const side of sides) {
      const underarm = placeOf(raglan, "whole-sleeve", `${side}-underarm`);
      const end = placeOf(raglan, "whole-sleeve", `wrist-${side}`);
      // The middle leans by less than a degree, so its foot from the underarm lies level with that.
      const foot = crown.x + ((wrist.x - crown.x) * (underarm.y - crown.y)) / (wrist.y - crown.y);
      const run = (end.x + wrist.x) / 2 - (underarm.x + foot) / 2;
      const { x, y } = grainDirection(piece(`${side}-sleeve`))!;
      expect(x / y).toBeCloseTo(run / (wrist.y - underarm.y), 1);
    }
  });

  test.each(["B80", "B92", "B104", "misses-00", "misses-20"])("is clean in size %s", (size) => {
    expect(workedRecipe("blocks/raglan.chalk", { size }).findings).toEqual([]);
  });
});

describe.each(["raglan-stage-cloak", "lobby-coat-belt", "lobby-coat-collar", "uneven-jacket"])("%s", (name) => {
  test("comes out clean", () => expect(workedRecipe(`${name}.chalk`).findings).toEqual([]));
});

// The fitted bodice has no notch at the pitch, the sleeve a double one behind and a single one in front; its back shoulder is
// 8 longer than its front, eased.
test("of a fitted bodice the pitch is notched as the sleeve is, and the back eased onto the front over the shoulder", () => {
  const fitted = workedText(`chalkline 1
units cm
use "blocks/fitted-bodice.chalk" as fit
use "blocks/set-in-sleeve.chalk" as set-in { armhole-back = length(fit.back.armscye), armhole-front = length(fit.front.armscye) }
piece whole-back = fit.back {
  line raglan = armscye at end - length(armscye) / 3 to neck at end - 3 cm
}
piece whole-front = fit.front {
  line raglan = armscye at end - length(armscye) / 3 to neck at end - 4 cm
}
piece whole-sleeve = set-in.sleeve {
  line middle = crown to wrist-middle
}
raglan-sleeve back, front, back-sleeve, front-sleeve = whole-sleeve.cap with turned(whole-back.armscye), whole-front.armscye along whole-back.raglan, whole-front.raglan over whole-sleeve.middle reach 11 cm
seam turned(back.raglan), back.armscye with turned(back-sleeve.raglan), turned(back-sleeve.cap)
seam turned(front.raglan), front.armscye with turned(front-sleeve.raglan), front-sleeve.cap`);
  const doubles = ["back", "front"].map((name) =>
    fitted.garment.pieces
      .get(name)!
      .notches.filter(({ edge }) => edge === "armscye")
      .map(({ double }) => double),
  );
  expect(doubles).toEqual([[true], [false]]);
  expect(fitted.findings.filter(({ code }) => code === "seam-notches")).toEqual([]);
  expect(lengthOf(fitted, "back-sleeve", "overarm") - lengthOf(fitted, "front-sleeve", "overarm")).toBeCloseTo(8, 6);
});

test("the cap is notched where only the bodice was", () => {
  const at = "raglan-sleeve back,";
  const [before, after] = raglanSleeve.example.split(at) as [string, string];
  const notched = before.replace(
    "piece bodice-front",
    "piece bodice-notched = bodice-back {\n  notch armhole at 35% double\n}\n$&",
  );
  const { garment, findings } = workedText(`${notched}${at}${after.replaceAll("bodice-back.", "bodice-notched.")}`);
  expect(findings).toEqual([]);
  const onCap = garment.pieces.get("sleeve")!.notches.filter(({ edge }) => edge === "back-cap");
  expect(onCap.map(({ double }) => double)).toEqual([true]);
});

// The raglan is slashed open in the middle of its length; trued there, it still meets the neck as it did.
test.each(["B80", "B84", "B104", "misses-00", "misses-20"])("raglan-stage-cloak is clean in size %s", (size) => {
  expect(workedRecipe("raglan-stage-cloak.chalk", { size }).findings).toEqual([]);
});

test("the uneven jacket has a left and a right of everything, each by its own measures", () => {
  const jacket = workedRecipe("uneven-jacket.chalk");
  const judged = jacket.judgements.filter(({ check }) => check === "mirrored-pairs");
  expect(judged.map(({ verdict }) => verdict)).toEqual(Array(6).fill("pass"));
  // 12.6 and 12 cm of shoulder.
  expect(lengthOf(jacket, "left-back", "shoulder") - lengthOf(jacket, "right-back", "shoulder")).toBeCloseTo(6, 6);
});
