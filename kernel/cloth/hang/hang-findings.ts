// What the hang of a garment comes to in figures, for reports and programs: which panel carries how much of the fullness and
// where, how it grows on the way down, whether a hem dips, and whether left and right differ.
import type { Garment } from "../../working.ts";
import { type Dip, dipOf } from "./dip.ts";
import type { Folds } from "./folds.ts";
import { halvesIn } from "./halves.ts";
import { hangOf } from "./hanger.ts";
import { hemAndFolds } from "./hung.ts";
import { type HungHem, hungBefore, hungHem } from "./hung-hem.ts";
import { type RoundOfPieces, roundsOf } from "./rounds.ts";
import { type SlackAtLevel, slackAtLevels } from "./slack-at-levels.ts";
import { besideHem, type SlackAtSeam, slackAtSeams, slackInThirds } from "./slack-between.ts";

/** What one piece of a round carries of its fullness; lengths in mm. */
export interface PanelFinding {
  readonly piece: string;
  /** How often it goes round: twice where the other side has its mirror image. */
  readonly times: number;
  /** Of each. */
  readonly slack: number;
  /** What all of them carry, as a share of the slack of the round; 0 where there is none. */
  readonly share: number;
  /** The edges at the left and the right end of its hem as it hangs, and the slack in the thirds between them. */
  readonly beside: readonly [string, string];
  readonly thirds: readonly [number, number, number];
  /** Of that, what hangs over the seams at its ends. */
  readonly atSeams: readonly SlackAtSeam[];
  readonly levels: readonly SlackAtLevel[];
  /** Against the piece it was made from; against a level line where it was made from none. */
  readonly dip: Dip;
  readonly folds: Folds;
}

export interface RoundFinding {
  readonly around: RoundOfPieces["around"];
  /** Of all panels all round, mm. */
  readonly slack: number;
  /** How many folds that makes in this cloth; indicative. */
  readonly folds: number;
  readonly panels: readonly PanelFinding[];
}

/** The slack on both sides of what is drafted apart for left and right: of two pieces, or of the halves of one. */
export interface SidesFinding {
  readonly pieces: readonly string[];
  readonly slack: readonly [number, number];
}

export interface HangFindings {
  readonly rounds: readonly RoundFinding[];
  readonly sides: readonly SidesFinding[];
}

/** The figures of a garment, by the formula. */
export const hangFindings = (garment: Garment): HangFindings => {
  const hung = [...garment.pieces.values()].flatMap((piece) => hungHem(piece, hangOf(piece, garment)) ?? []);
  const byName = new Map(hung.map((each) => [each.piece.name, each]));
  return {
    rounds: roundsOf(hung, garment).map((round) => roundFinding(round, byName, garment)),
    sides: halvesIn(garment).map((halves) => ({
      pieces: ("piece" in halves ? [halves.piece] : halves.pieces).map(({ piece }) => piece.name),
      slack: halves.slack,
    })),
  };
};

const roundFinding = (
  { turns, around }: RoundOfPieces,
  byName: ReadonlyMap<string, HungHem>,
  garment: Garment,
): RoundFinding => {
  const times = new Map<string, number>();
  for (const { piece } of turns) times.set(piece, (times.get(piece) ?? 0) + 1);
  const counted = [...times].map(([name, count]) => ({ hung: byName.get(name)!, times: count }));
  const slack = counted.reduce((sum, each) => sum + each.times * each.hung.hem.slack, 0);
  const panels = counted.map((each) => panelFinding(each.hung, each.times, slack, garment));
  return { around, slack, folds: panels.reduce((sum, each) => sum + each.times * each.folds.count, 0), panels };
};

const panelFinding = (hung: HungHem, times: number, slack: number, garment: Garment): PanelFinding => {
  const { piece, hem } = hung;
  return {
    piece: piece.name,
    times,
    slack: hem.slack,
    share: slack > least ? (times * hem.slack) / slack : 0,
    beside: besideHem(hung),
    thirds: slackInThirds(hem),
    atSeams: slackAtSeams(hung),
    levels: slackAtLevels(hung),
    dip: dipOf(hung, hungBefore(hung, hangOf(piece, garment))),
    folds: hemAndFolds(hung, garment, hem.places).folds,
  };
};

// Less slack than this in a round, in mm, has no shares.
const least = 0.5;
