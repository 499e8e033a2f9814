// The list of steps and the list of checks, in the order the manual teaches them. The lists are the registry.
import { allowanceSaid } from "./checks/allowance-said.ts";
import { balance } from "./checks/balance.ts";
import { capEase } from "./checks/cap-ease.ts";
import { cutFrom } from "./checks/cut-from.ts";
import { dartInside } from "./checks/dart-inside.ts";
import { dartLegs } from "./checks/dart-legs.ts";
import { dartNearApex } from "./checks/dart-near-apex.ts";
import { droppedShoulderArmhole } from "./checks/dropped-shoulder-armhole.ts";
import { fitsCloth } from "./checks/fits-cloth.ts";
import { foldSquare } from "./checks/fold-square.ts";
import { fullnessAtSide } from "./checks/fullness-at-side.ts";
import { grainHang } from "./checks/grain-hang.ts";
import { grainPresent } from "./checks/grain-present.ts";
import { hemAllowanceCurve } from "./checks/hem-allowance-curve.ts";
import { hemDips } from "./checks/hem-dips.ts";
import { hemSquare } from "./checks/hem-square.ts";
import { hingeTrued } from "./checks/hinge-trued.ts";
import { keptLength } from "./checks/kept-length.ts";
import { lopSided } from "./checks/lop-sided.ts";
import { marksInside } from "./checks/marks-inside.ts";
import { mirroredPairs } from "./checks/mirrored-pairs.ts";
import { neckDepths } from "./checks/neck-depths.ts";
import { openingForWeight } from "./checks/opening-for-weight.ts";
import { outlineClosed } from "./checks/outline-closed.ts";
import { outlineSimple } from "./checks/outline-simple.ts";
import { seamLength } from "./checks/seam-length.ts";
import { seamNotches } from "./checks/seam-notches.ts";
import { seamSmooth } from "./checks/seam-smooth.ts";
import { wornOver } from "./checks/worn-over.ts";
import type { Vocabulary } from "./kernel.ts";
import { allow } from "./steps/allow.ts";
import { arc } from "./steps/arc.ts";
import { band } from "./steps/band.ts";
import { buttonholes } from "./steps/buttonholes.ts";
import { buttons } from "./steps/buttons.ts";
import { cascadeFall } from "./steps/cascade-fall.ts";
import { cascadeFront } from "./steps/cascade-front.ts";
import { closeDart } from "./steps/close-dart.ts";
import { curve } from "./steps/curve.ts";
import { cut } from "./steps/cut.ts";
import { dart } from "./steps/dart.ts";
import { dartToEase } from "./steps/dart-to-ease.ts";
import { dartToGathers } from "./steps/dart-to-gathers.ts";
import { doubleEndedDart } from "./steps/double-ended-dart.ts";
import { drawNeck } from "./steps/draw-neck.ts";
import { drill } from "./steps/drill.ts";
import { dropShoulder } from "./steps/drop-shoulder.ts";
import { extendFront } from "./steps/extend-front.ts";
import { extendHem } from "./steps/extend-hem.ts";
import { facing } from "./steps/facing.ts";
import { flareSide } from "./steps/flare-side.ts";
import { flatCollar } from "./steps/flat-collar.ts";
import { flounce } from "./steps/flounce.ts";
import { foldBackFacing } from "./steps/fold-back-facing.ts";
import { forwardShoulder } from "./steps/forward-shoulder.ts";
import { fullerArm } from "./steps/fuller-arm.ts";
import { fullerBust } from "./steps/fuller-bust.ts";
import { gather } from "./steps/gather.ts";
import { godet } from "./steps/godet.ts";
import { gore } from "./steps/gore.ts";
import { grain } from "./steps/grain.ts";
import { hang } from "./steps/hang.ts";
import { hollowBack } from "./steps/hollow-back.ts";
import { join } from "./steps/join.ts";
import { joinPieces } from "./steps/join-pieces.ts";
import { keep } from "./steps/keep.ts";
import { label } from "./steps/label.ts";
import { lay } from "./steps/lay.ts";
import { lengthenAcross } from "./steps/lengthen-across.ts";
import { line } from "./steps/line.ts";
import { lining } from "./steps/lining.ts";
import { lowerArmhole } from "./steps/lower-armhole.ts";
import { lowerNeck } from "./steps/lower-neck.ts";
import { mark } from "./steps/mark.ts";
import { mirror } from "./steps/mirror.ts";
import { move } from "./steps/move.ts";
import { moveDart } from "./steps/move-dart.ts";
import { notch } from "./steps/notch.ts";
import { outline } from "./steps/outline.ts";
import { overlap } from "./steps/overlap.ts";
import { overlapEvenly } from "./steps/overlap-evenly.ts";
import { overlapSeveral } from "./steps/overlap-several.ts";
import { pleat } from "./steps/pleat.ts";
import { pocketPlace } from "./steps/pocket-place.ts";
import { point } from "./steps/point.ts";
import { raglanSleeve } from "./steps/raglan-sleeve.ts";
import { replace } from "./steps/replace.ts";
import { roundBack } from "./steps/round-back.ts";
import { seam } from "./steps/seam.ts";
import { shortenDart } from "./steps/shorten-dart.ts";
import { slit } from "./steps/slit.ts";
import { slopeShoulder } from "./steps/slope-shoulder.ts";
import { split } from "./steps/split.ts";
import { splitDart } from "./steps/split-dart.ts";
import { spreadApart } from "./steps/spread-apart.ts";
import { spreadEvenly } from "./steps/spread-evenly.ts";
import { spreadFrom } from "./steps/spread-from.ts";
import { spreadSeveral } from "./steps/spread-several.ts";
import { squareArmhole } from "./steps/square-armhole.ts";
import { strip } from "./steps/strip.ts";
import { takeGore } from "./steps/take-gore.ts";
import { trace } from "./steps/trace.ts";
import { trueSeam } from "./steps/true-seam.ts";
import { twoPieceSleeve } from "./steps/two-piece-sleeve.ts";
import { unfold } from "./steps/unfold.ts";
import { walk } from "./steps/walk.ts";
import { wear } from "./steps/wear.ts";
import { widenNeck } from "./steps/widen-neck.ts";
import { widenShoulder } from "./steps/widen-shoulder.ts";

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
    spreadApart,
    spreadSeveral,
    spreadEvenly,
    overlap,
    overlapSeveral,
    overlapEvenly,
    takeGore,
    flareSide,
    extendHem,
    lengthenAcross,
    trueSeam,
    strip,
    replace,
    move,
    split,
    joinPieces,
    raglanSleeve,
    twoPieceSleeve,
    unfold,
    mirror,
    lay,
    trace,
    facing,
    lining,
    band,
    walk,
    buttons,
    buttonholes,
    pocketPlace,
    flatCollar,
    dart,
    doubleEndedDart,
    moveDart,
    splitDart,
    shortenDart,
    closeDart,
    dartToGathers,
    dartToEase,
    dropShoulder,
    widenShoulder,
    slopeShoulder,
    forwardShoulder,
    lowerArmhole,
    squareArmhole,
    lowerNeck,
    widenNeck,
    drawNeck,
    fullerBust,
    roundBack,
    hollowBack,
    fullerArm,
    extendFront,
    foldBackFacing,
    cascadeFront,
    cascadeFall,
    pleat,
    gather,
    slit,
    allow,
    notch,
    grain,
    drill,
    label,
    keep,
    godet,
    gore,
    flounce,
    seam,
    wear,
    hang,
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
    dartInside,
    dartLegs,
    dartNearApex,
    grainPresent,
    grainHang,
    mirroredPairs,
    marksInside,
    allowanceSaid,
    cutFrom,
    fitsCloth,
    fullnessAtSide,
    lopSided,
    hemDips,
    openingForWeight,
    hemAllowanceCurve,
    droppedShoulderArmhole,
    neckDepths,
    capEase,
    balance,
    wornOver,
  ],
};
