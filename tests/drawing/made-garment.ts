// A small wardrobe of pieces made directly from paths, for tests of drawings.
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { cubic, type Path, reversed, straight } from "../../kernel/geometry/path.ts";
import type { Cut, Garment, Piece } from "../../kernel/working.ts";
import { at, bent, madePiece, nowhere } from "../cloth/made-piece.ts";

const neck: Path = [cubic(at(0, 0), at(44.4, 0), at(69.4, -10.6), at(74, -24.7))];
export const armscye: Path = [
  cubic(at(205.2, 18), at(193.4, 54.3), at(190, 93.3), at(190, 131.5)),
  cubic(at(190, 131.5), at(190, 194.2), at(225.8, 245), at(270, 245)),
];

/** The straight back of the trade handbook's coat block (section 3.2, R88), with its centre seam at x = -15. */
export const block: Piece = madePiece("block", [
  { name: "neck", path: [...straight(at(-15, 0), at(0, 0)), ...neck] },
  { name: "shoulder", path: bent([74, -24.7], [205.2, 18]) },
  { name: "armscye", path: armscye },
  { name: "side", path: bent([270, 245], [270, 1000]) },
  { name: "hem", path: bent([270, 1000], [-15, 1000]), role: "hem" },
  { name: "center", path: bent([-15, 1000], [-15, 0]) },
]);

/** The same back on the fold, flared at the side, with allowances and marks. */
export const back: Piece = madePiece(
  "back",
  [
    { name: "neck", path: neck, allow: 15 },
    { name: "shoulder", path: bent([74, -24.7], [205.2, 18]), allow: 15 },
    { name: "armscye", path: armscye, allow: 0 },
    { name: "side", path: bent([270, 245], [350, 1000]), allow: 15 },
    { name: "hem", path: bent([350, 1000], [0, 1000]), role: "hem", allow: 25, corners: "turned" },
    { name: "center", path: bent([0, 1000], [0, 0]), role: "fold" },
    { name: "waist", path: bent([0, 400], [280, 400]), inner: true },
  ],
  {
    source: block,
    notches: [
      { edge: "shoulder", point: at(139.6, -3.35), double: false, drawnBy: nowhere },
      { edge: "hem", point: at(175, 1000), double: true, drawnBy: nowhere },
      { edge: "armscye", point: at(190, 131.5), double: false, drawnBy: nowhere },
    ],
    drills: [{ point: at(120, 420), drawnBy: nowhere }],
    labels: [{ text: "Interline to the waist.", drawnBy: nowhere }],
  },
);

export const beltLoop: Piece = madePiece(
  "belt-loop",
  [
    { name: "top", path: bent([0, 0], [400, 0]), allow: 10 },
    { name: "right", path: bent([400, 0], [400, 30]), allow: 10 },
    { name: "bottom", path: bent([400, 30], [0, 30]), allow: 10 },
    { name: "left", path: bent([0, 30], [0, 0]), allow: 10 },
  ],
  { grain: { kind: "along", edge: "top", drawnBy: nowhere } },
);

export const cloak: Piece = madePiece(
  "cloak",
  [
    { name: "neck", path: arcSpans(at(0, 0), at(100, 0), Math.PI / 2), allow: 10 },
    { name: "front", path: bent([0, 100], [0, 700]), allow: 15 },
    { name: "hem", path: reversed(arcSpans(at(0, 0), at(700, 0), Math.PI / 2)), role: "hem", allow: 10 },
    { name: "back", path: bent([700, 0], [100, 0]), role: "fold" },
  ],
  { labels: [{ text: "Ankle length\nfor the tall ones", at: at(250, 200), drawnBy: nowhere }] },
);

export const cutOf = (piece: string, count: number, fabric = "shell"): Cut => ({
  piece,
  count,
  fabric,
  drawnBy: nowhere,
});

export const garmentOf = (pieces: readonly Piece[], cuts: readonly Cut[] = []): Garment => ({
  title: "Lobby coat, swing version",
  file: "test.chalk",
  units: "cm",
  pieces: new Map(pieces.map((piece) => [piece.name, piece])),
  fabrics: new Map(),
  seams: [],
  cuts,
  accepts: [],
  incomplete: false,
});

export const lobbyCoat: Garment = garmentOf(
  [back, beltLoop, cloak],
  [cutOf("back", 1), cutOf("back", 1, "lining"), cutOf("belt-loop", 4)],
);
