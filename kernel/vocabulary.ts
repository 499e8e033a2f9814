// The list of steps and the list of checks, in the order the manual teaches them. The lists are the registry.
import { allowanceSaid } from "./checks/allowance-said.ts";
import { cutFrom } from "./checks/cut-from.ts";
import { fitsCloth } from "./checks/fits-cloth.ts";
import { foldSquare } from "./checks/fold-square.ts";
import { grainPresent } from "./checks/grain-present.ts";
import { hemSquare } from "./checks/hem-square.ts";
import { hingeTrued } from "./checks/hinge-trued.ts";
import { keptLength } from "./checks/kept-length.ts";
import { outlineClosed } from "./checks/outline-closed.ts";
import { outlineSimple } from "./checks/outline-simple.ts";
import { seamLength } from "./checks/seam-length.ts";
import { seamNotches } from "./checks/seam-notches.ts";
import { seamSmooth } from "./checks/seam-smooth.ts";
import type { Vocabulary } from "./kernel.ts";
import { allow } from "./steps/allow.ts";
import { arc } from "./steps/arc.ts";
import { curve } from "./steps/curve.ts";
import { cut } from "./steps/cut.ts";
import { drill } from "./steps/drill.ts";
import { extendHem } from "./steps/extend-hem.ts";
import { grain } from "./steps/grain.ts";
import { join } from "./steps/join.ts";
import { keep } from "./steps/keep.ts";
import { label } from "./steps/label.ts";
import { line } from "./steps/line.ts";
import { mark } from "./steps/mark.ts";
import { move } from "./steps/move.ts";
import { notch } from "./steps/notch.ts";
import { outline } from "./steps/outline.ts";
import { point } from "./steps/point.ts";
import { replace } from "./steps/replace.ts";
import { seam } from "./steps/seam.ts";
import { spreadFrom } from "./steps/spread-from.ts";
import { strip } from "./steps/strip.ts";
import { trueSeam } from "./steps/true-seam.ts";

export const vocabulary: Vocabulary = {
  steps: [
    point,
    line,
    curve,
    arc,
    join,
    outline,
    mark,
    spreadFrom,
    extendHem,
    trueSeam,
    strip,
    replace,
    move,
    allow,
    notch,
    grain,
    drill,
    label,
    keep,
    seam,
    cut,
  ],
  checks: [
    outlineClosed,
    outlineSimple,
    keptLength,
    seamLength,
    seamNotches,
    seamSmooth,
    hemSquare,
    foldSquare,
    hingeTrued,
    grainPresent,
    allowanceSaid,
    cutFrom,
    fitsCloth,
  ],
};
