// In which part of its width the slack of a hanging hem lies: in its thirds, and beside the seams at its two ends.
import { walked } from "../../outline.ts";
import type { HungHem } from "./hung-hem.ts";
import type { Slack } from "./slack.ts";

/** The slack, mm, that hangs no further across than `to` and as far as `from` at least. */
export const slackBetween = ({ places }: Slack, from: number, to: number): number =>
  places.reduce((sum, { hung, slack }) => (hung.x >= from && hung.x < to ? sum + slack : sum), 0);

/** The slack in the left, the middle and the right third of the width that a hem takes up, mm. */
export const slackInThirds = (hem: Slack): readonly [number, number, number] => {
  const { left, right } = reachOf(hem);
  const [first, second] = [left + (right - left) / 3, right - (right - left) / 3];
  return [
    slackBetween(hem, Number.NEGATIVE_INFINITY, first),
    slackBetween(hem, first, second),
    slackBetween(hem, second, Number.POSITIVE_INFINITY),
  ];
};

/** The names of the edges at the left and the right end of a hem as it hangs. */
export const besideHem = ({ piece, holding, hem }: HungHem): readonly [string, string] => {
  const walk = walked(piece);
  const at = walk.findIndex(({ edge }) => edge.name === holding.hem.edge.name);
  const before = walk[(at + walk.length - 1) % walk.length]!.edge.name;
  const after = walk[(at + 1) % walk.length]!.edge.name;
  return hem.places.at(-1)!.hung.x >= hem.places[0]!.hung.x ? [before, after] : [after, before];
};

/** The slack that hangs at a seam. */
export interface SlackAtSeam {
  readonly edge: string;
  /** In mm. */
  readonly slack: number;
}

/** How much of its slack hangs in the outer part of a hem, beside each of the seams at its ends. */
export const slackAtSeams = (hung: HungHem): SlackAtSeam[] => {
  const { piece, hem } = hung;
  const { left, right } = reachOf(hem);
  const band = (right - left) * outerPart;
  const [atLeft, atRight] = besideHem(hung);
  return [
    { edge: atLeft, slack: slackBetween(hem, Number.NEGATIVE_INFINITY, left + band) },
    { edge: atRight, slack: slackBetween(hem, right - band, Number.POSITIVE_INFINITY) },
  ].filter(({ edge }) => piece.edges.get(edge)!.role === "seam");
};

// Half of an outer third: a fold that begins nearer than this to the seam falls over it. Common practice, no source.
const outerPart = 1 / 6;

const reachOf = ({ places }: Slack): { readonly left: number; readonly right: number } => {
  const across = places.map(({ hung }) => hung.x);
  return { left: Math.min(...across), right: Math.max(...across) };
};
