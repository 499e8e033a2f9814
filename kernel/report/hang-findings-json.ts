// The findings of a hang as JSON data, lengths in mm; `hang --json` prints them beside the hems.
import type { HangFindings, PanelFinding, RoundFinding } from "../cloth/hang/hang-findings.ts";
import type { Json } from "./json.ts";

/** Where the fullness of every round hangs, and how far left and right differ. */
export const hangFindingsJson = ({ rounds, sides }: HangFindings): Json => ({
  rounds: rounds.map(roundJson),
  sides: sides.map(({ pieces, slack }) => ({ pieces, slack })),
});

const roundJson = ({ around, slack, folds, panels }: RoundFinding): Json => ({
  around,
  slack,
  folds,
  panels: panels.map(panelJson),
});

const panelJson = ({ piece, times, slack, share, beside, thirds, atSeams, levels, dip }: PanelFinding): Json => ({
  piece,
  times,
  slack,
  share,
  beside,
  thirds,
  atSeams: atSeams.map((each) => ({ edge: each.edge, slack: each.slack })),
  levels: levels.map((each) => ({
    share: each.share,
    down: each.down,
    flat: each.flat,
    hung: each.hung,
    slack: each.slack,
  })),
  dip: dip.most,
  raise: dip.raises.map(({ flat, at, by }) => ({ flat: [flat.x, flat.y], at, by })),
});
