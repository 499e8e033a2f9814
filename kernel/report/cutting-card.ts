// The cutting card of a garment as plain data: all that a workroom is told on one page. Lengths in mm.
import { cautionsFor } from "../drawing/cautions.ts";
import type { Remarks } from "../drawing/remarks.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { isHidden } from "../hidden-names.ts";
import type { Outcome } from "../kernel.ts";
import { walked } from "../outline.ts";
import { tellStep, timesInGarment } from "../record.ts";
import { sewnLengthOf } from "../sewn.ts";
import { isScalar } from "../value.ts";
import type { Fabric, Garment, Piece, Role, Units } from "../working.ts";
import { valueInWords } from "./amounts.ts";
import { cutWays } from "./cut-ways.ts";
import { type MeasuredSeam, measuredSeams } from "./measured-seam.ts";
import { toldValues } from "./told-values.ts";

export interface CuttingCard {
  readonly title: string;
  readonly units: Units;
  /** Why it must not be cut; not there where nothing forbids it. */
  readonly unfit?: string;
  /** The recipe's own fields: by whom, for whom, notes. */
  readonly fields: readonly CardField[];
  /** Size, body and design choices, in words. */
  readonly choices: readonly string[];
  /** The body measures it was drafted to, in words. */
  readonly body: readonly CardField[];
  readonly version?: string;
  readonly cloths: readonly CardCloth[];
  readonly pieces: readonly CardPiece[];
  /** In the order of the recipe. */
  readonly seams: readonly MeasuredSeam[];
  readonly steps: readonly CardStep[];
  readonly measures: readonly CardMeasure[];
  readonly cautions: readonly string[];
}

export interface CardField {
  readonly name: string;
  readonly text: string;
}

export interface CardCloth {
  readonly name: string;
  readonly title: string;
  /** mm. */
  readonly width?: number;
  /** g/m2. */
  readonly weight?: number;
  readonly oneWay: boolean;
}

export interface CardPiece {
  readonly name: string;
  /** "1 of shell, on the fold"; none for a piece that is not cut. */
  readonly cuts: readonly string[];
  /** What the recipe writes on it. */
  readonly labels: readonly string[];
}

/** What a step altered, in words. */
export interface CardStep {
  /** Empty for a step of the garment. */
  readonly piece: string;
  readonly words: string;
}

export interface CardMeasure {
  readonly piece: string;
  readonly edge: string;
  readonly role: Role;
  /** As sewn. */
  readonly sewn: number;
  /** As cut along the sewing line, where darts, pleats or gathers make that another length. */
  readonly cut?: number;
  readonly allowance?: number;
  /** How often this edge comes in the garment. */
  readonly times: number;
}

/** The card of a worked recipe, with what is remarked of how it was drafted. */
export const cuttingCard = (outcome: Outcome, { unfit, choices, version }: Remarks): CuttingCard => {
  const { garment, fields } = outcome;
  const pieces = piecesToCut(garment);
  return {
    title: garment.title === "" ? garment.file : garment.title,
    units: garment.units,
    ...(unfit !== undefined && { unfit }),
    fields: [...fields].map(([name, text]) => ({ name, text })),
    choices,
    body: bodyOf(outcome),
    ...(version !== undefined && { version }),
    cloths: [...garment.fabrics.values()].map(clothOf),
    pieces: pieces.map(({ name, labels }) => ({
      name,
      cuts: cutWays(garment, name),
      labels: labels.map(({ text }) => text),
    })),
    seams: measuredSeams(outcome),
    // Allowances stand among the measures.
    steps: outcome.records
      .filter(({ step }) => step !== "allow")
      .map((record) => ({ piece: record.piece, words: tellStep(record, garment) }))
      .filter(({ words }) => words !== ""),
    measures: pieces.flatMap((piece) => measuresOf(piece, garment)),
    cautions: cautionsFor(garment),
  };
};

/** The pieces that the recipe says to cut; all of them where it says nothing of that. */
const piecesToCut = ({ pieces, cuts }: Garment): Piece[] =>
  [...pieces.values()].filter(({ name }) => cuts.length === 0 || cuts.some(({ piece }) => piece === name));

const bodyOf = (outcome: Outcome): CardField[] =>
  [...toldValues(outcome)].flatMap(([name, { kind, value }]) => {
    const text = kind === "measure" && isScalar(value) ? valueInWords(value, outcome.garment.units) : undefined;
    return text === undefined ? [] : [{ name, text }];
  });

const clothOf = ({ name, title, width, weight, oneWay }: Fabric): CardCloth => ({
  name,
  title,
  ...(width !== undefined && { width }),
  ...(weight !== undefined && { weight }),
  oneWay,
});

// Nothing is sewn or measured along a fold.
const measuresOf = (piece: Piece, garment: Garment): CardMeasure[] =>
  walked(piece)
    .filter(({ edge }) => edge.role !== "fold" && !isHidden(edge.name))
    .map(({ edge: { name, role, path } }) => {
      const sewn = sewnLengthOf(piece, name);
      const cut = pathLength(path);
      const allowance = piece.allowances.get(name);
      return {
        piece: piece.name,
        edge: name,
        role,
        sewn,
        ...(Math.abs(cut - sewn) > tellable && { cut }),
        ...(allowance && { allowance: allowance.width }),
        times: timesInGarment(piece.name, garment),
      };
    });

// Lengths that differ by less than this many mm read the same.
const tellable = 0.005;
