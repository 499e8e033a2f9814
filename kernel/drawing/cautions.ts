// The words of caution on a sheet (handbook of the trade, section 11): what goes for all cutting and sewing, and what this
// garment asks for by its names, its cloth and its width. Whom it is made for is not known, so each says for whom it counts.
import { buttonholeNumber } from "../buttonhole-number.ts";
import { bounds } from "../geometry/bounds.ts";
import { boundary } from "../outline.ts";
import type { Garment } from "../working.ts";

/** The cautions that a garment asks for, each a line or two by itself. */
export const cautionsFor = (garment: Garment): string[] => [
  "Take care: keep fingers clear of shears and cutters, cut away from yourself, close blades you put down, count your pins. Iron: try it on a scrap first. Machine: tie back hair and loose sleeves, stop it to thread.",
  ...cautions.filter(({ isAskedFor }) => isAskedFor(garment)).map(({ words }) => words),
];

interface Caution {
  readonly words: string;
  readonly isAskedFor: (garment: Garment) => boolean;
}

/** Whether a word stands in the garment's title or in the name or a label of a piece. */
const speaksOf =
  (word: RegExp) =>
  ({ title, pieces }: Garment): boolean =>
    [title, ...[...pieces.values()].flatMap(({ name, labels }) => [name, ...labels.map(({ text }) => text)])].some(
      (text) => word.test(text),
    );

const isOfCloth =
  (word: RegExp) =>
  ({ fabrics }: Garment): boolean =>
    [...fabrics.values()].some(({ name, title }) => word.test(name) || word.test(title));

// Sleeves wider than this, in mm, reach into a flame before the hand does (handbook of the trade, section 11).
const wideSleeve = 500;

const hasWideSleeve = ({ pieces }: Garment): boolean =>
  [...pieces.values()].some((piece) => {
    const loop = /\bsleeve/i.test(piece.name) ? boundary(piece) : undefined;
    if (!loop) return false;
    const { left, right } = bounds([loop]);
    return right - left > wideSleeve;
  });

const hasButtonholes = ({ pieces }: Garment): boolean =>
  [...pieces.values()].some(({ edges }) => [...edges.keys()].some((name) => buttonholeNumber(name) !== undefined));

const cautions: readonly Caution[] = [
  {
    words:
      "Capes and cloaks catch. For a child close the neck with hook-and-loop or a snap that comes open, and tie no cord.",
    isAskedFor: speaksOf(/\b(?:cape|cloak|mantle|scarf|scarves)s?\b/i),
  },
  {
    words:
      "Cords, ties and hoods: for children to 14 years, none at hood or neck; see 16 CFR 1120 and EN 14682 in their current editions.",
    isAskedFor: speaksOf(/\b(?:cord|drawcord|drawstring|tie|sash|hood|casing)s?\b/i),
  },
  {
    words: "Nightwear for children: see 16 CFR 1615 and 1616 and EN 14878 on fire, in their current editions.",
    isAskedFor: speaksOf(/\b(?:night\w*|pyjamas?|pajamas?|sleepwear|sleepsuit)\b/i),
  },
  {
    words: "Brushed and sheer cloth burns fast: keep it from open flame; 16 CFR 1610 says how cloth is tested.",
    isAskedFor: isOfCloth(
      /\b(?:brushed|flannel\w*|fleece|velvet\w*|sheer|chiffon|organza|organdy|voile|tulle|net|gauze)\b/i,
    ),
  },
  { words: "Wide sleeves: keep them from open flame and from machines.", isAskedFor: hasWideSleeve },
  {
    words:
      "Buttons and other small parts can choke a child under 3 years: sew them fast, or choose none (16 CFR 1501).",
    isAskedFor: hasButtonholes,
  },
];
