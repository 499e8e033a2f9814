// What a plugin finds in the kit, written out: plugins rely on each of these names, and nothing joins them unnoticed.
import { expect, test } from "vitest";
import { kit } from "../../kernel/kit.ts";

const names = (words: string): string[] => words.trim().split(/\s+/).sort();

test("the kit has these parts and no others", () => {
  expect(Object.keys(kit).sort()).toEqual(
    names(
      `phrase optional slot pieceStep garmentStep defineCheck Problem lengthIn angleInWords boundary walked geometry`,
    ),
  );
});

test("its geometry is points, paths and angles, without what the kernel measures with inside", () => {
  expect(Object.keys(kit.geometry).sort()).toEqual(
    names(`
      plus minus times between dot cross size distance sameSpot unit quarterTurn
      line cubic straight through startOf endOf startDirection endDirection reversed mapped joined corners isStraight
      pathLength pointAt directionAt splitAt part nearest feet crossings crossingsWithRay selfCrossings linesMeet
      sin cos tan asin acos atan atan2 toRadians toDegrees bearing angleOf turnBetween
    `),
  );
});

test("its slots are those of the built-in steps", () => {
  expect(Object.keys(kit.slot).sort()).toEqual(
    names(`
      name names text number numbers count weight length lengths angle lengthOrAngle direction choice role
      place places placeOnPiece placesOnPiece ownPlace waypoints corners
      edge edges ownEdge ownEdges ownEdgeOrPlace towardEdge ownDart ownDartOfAnyForm piece fabric
    `),
  );
});

test("each part of the geometry is what its name says", () => {
  const { geometry } = kit;
  // A right angle of legs 3 and 4 has the hypotenuse 5 (Euclid, Elements I.47).
  expect(geometry.distance({ x: 3, y: 0 }, { x: 0, y: 4 })).toBe(5);
  const side = geometry.straight({ x: 0, y: 0 }, { x: 0, y: 300 });
  expect(geometry.pathLength(side)).toBe(300);
  expect(geometry.pointAt(side, 75)).toEqual({ x: 0, y: 75 });
  expect(geometry.toDegrees(geometry.turnBetween({ x: 1, y: 0 }, { x: 0, y: 1 }))).toBeCloseTo(90, 9);
});
