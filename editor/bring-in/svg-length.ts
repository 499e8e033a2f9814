// Lengths as SVG writes them (CSS Values and Units 3, 6.2 "Absolute lengths").

/** A length with the unit it was written in. */
export interface SvgLength {
  /** In user units, which are CSS pixels where nothing else is said: 96 to the inch. */
  readonly value: number;
  readonly unit: string;
}

/** The length; `whole` is what 100 % are. Undefined where it cannot be read. */
export const svgLength = (written: string, whole: number | undefined): SvgLength | undefined => {
  const found = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)\s*([a-zA-Z]*|%)$/.exec(written.trim());
  if (!found) return undefined;
  const unit = found[2]!.toLowerCase();
  const one = unit === "%" ? (whole === undefined ? undefined : whole / 100) : pixelsIn.get(unit);
  const value = Number(found[1]) * (one ?? Number.NaN);
  return Number.isFinite(value) ? { value, unit } : undefined;
};

/** CSS pixels in an inch, and so user units of a drawing that says nothing else. */
export const pixelsInInch = 96;

const pixelsIn: ReadonlyMap<string, number> = new Map([
  ["", 1],
  ["px", 1],
  ["in", pixelsInInch],
  ["cm", pixelsInInch / 2.54],
  ["mm", pixelsInInch / 25.4],
  ["q", pixelsInInch / 101.6],
  ["pt", pixelsInInch / 72],
  ["pc", pixelsInInch / 6],
]);
