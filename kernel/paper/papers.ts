// The papers that a pattern can be printed on.

/** A kind of paper; mm, upright. */
export interface PaperKind {
  /** How commands name it. */
  readonly name: string;
  readonly title: string;
  readonly width: number;
  /** Of a roll, the longest that one file page may be. */
  readonly height: number;
  /** Tiles are put together, sheets are whole, a roll is cut off where the pattern ends. */
  readonly use: "tiles" | "sheets" | "roll";
}

/** All papers. A sizes after ISO 216:2007; Letter and Tabloid after ANSI/ASME Y14.1 (sizes A and B), from memory. */
export const papers: readonly PaperKind[] = [
  { name: "a4", title: "A4", width: 210, height: 297, use: "tiles" },
  { name: "letter", title: "Letter", width: 215.9, height: 279.4, use: "tiles" },
  { name: "a3", title: "A3", width: 297, height: 420, use: "tiles" },
  { name: "tabloid", title: "Tabloid", width: 279.4, height: 431.8, use: "tiles" },
  { name: "a1", title: "A1", width: 594, height: 841, use: "sheets" },
  { name: "a0", title: "A0", width: 841, height: 1189, use: "sheets" },
  // Viewers show nothing of a page beyond 14,400 units (5.08 m), so what is longer is split into pages of at most 5 m.
  { name: "roll-36in", title: "36 in roll", width: 914.4, height: 5000, use: "roll" },
  { name: "roll-914mm", title: "914 mm roll", width: 914, height: 5000, use: "roll" },
];

/** What no printer is asked to reach, mm at every side. */
export const margin = 10;
