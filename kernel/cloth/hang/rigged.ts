// What the pictures of a hanging garment are made of, as plain data: each piece as a mesh with the places where the formula hangs
// it, the same for the pieces they were made from, and the rounds they make.
import type { Garment } from "../../working.ts";
import { columnsByFormula } from "./columns.ts";
import { stiffnessOf } from "./fabric-stiffness.ts";
import type { ColumnsByPiece, RoundPlan } from "./figures.ts";
import { wavelengthOf } from "./folds.ts";
import { fine, type Hanger, hangers, stationsOf } from "./hanger.ts";
import { hangerMesh } from "./hanger-mesh.ts";
import type { Mesh } from "./mesh.ts";
import { roundsOf } from "./rounds.ts";
import type { HungPlace } from "./slack.ts";
import { straightOf } from "./straight-of.ts";

/** A garment rigged for hanging. */
export interface Rigged {
  readonly columns: ColumnsByPiece;
  readonly straight: ColumnsByPiece;
  readonly rounds: readonly RoundPlan[];
}

/** Rigs a garment; `hip` is the girth of the body in mm where it is known. */
export const rigged = (garment: Garment, hip?: number): Rigged => {
  const hanging = hangers(garment);
  const columns = new Map(hanging.map((hanger) => [hanger.piece.name, columnsOf(hanger)]));
  const byName = new Map(hanging.map((hanger) => [hanger.piece.name, hanger]));
  const straight = hangers(straightened(garment)).map((hanger) => [hanger.piece.name, columnsOf(hanger)] as const);
  return {
    columns,
    straight: new Map(straight),
    rounds: roundsOf(hanging, garment).map(({ turns, around }) => ({
      turns,
      around,
      wavelength: wavelengthAround(
        turns.map(({ piece }) => byName.get(piece)!),
        columns,
        garment,
      ),
      ...(hip !== undefined && around === "body" && { hip }),
    })),
  };
};

/** The meshes of a rigged garment's pieces, to be settled. */
export const meshesOf = (garment: Garment): ReadonlyMap<string, Mesh> =>
  new Map(hangers(garment).map((hanger) => [hanger.piece.name, hangerMesh(hanger)]));

const columnsOf = (hanger: Hanger): HungPlace[][] => columnsByFormula(stationsOf(hanger, fine));

/** The stiffest cloth and the longest hang decide for the round. */
const wavelengthAround = (round: readonly Hanger[], columns: ColumnsByPiece, garment: Garment): number =>
  Math.max(
    ...round.map(({ piece }) => {
      const lengths = columns.get(piece.name)!.map((column) => column.at(-1)!.hung.y - column[0]!.hung.y);
      return wavelengthOf(stiffnessOf(piece.name, garment).bendingLength, Math.max(0, ...lengths));
    }),
  );

/** The garment with every piece as it was before any alteration. */
const straightened = (garment: Garment): Garment => ({
  ...garment,
  pieces: new Map([...garment.pieces].map(([name, piece]) => [name, { ...straightOf(piece), name }])),
});
