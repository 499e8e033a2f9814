// A DXF file as a sheet: lines true to size, blocks where they are placed, y turned down the page; layers after ASTM D6673 where
// the file has pieces in blocks (layer numbers from memory, handbook of the trade 9.2).
import type { Path } from "../../kernel/geometry/path.ts";
import { toRadians } from "../../kernel/geometry/trig.ts";
import { millimetresIn } from "../../kernel/units.ts";
import type { Units } from "../../kernel/working.ts";
import { type Affine, after, movedBy, scaled, sentBy, shifted, turned } from "./affine.ts";
import { drawingLimits } from "./drawing-limits.ts";
import { dxfLine, facingOf, spotOf } from "./dxf-lines.ts";
import { type DxfBlock, type DxfEntity, type DxfFile, dxfFile, numberIn, numberOf, textOf } from "./dxf-tags.ts";
import { dxfManyWords, dxfWords } from "./dxf-words.ts";
import { Refused } from "./refused.ts";
import { type Meaning, type Sheet, SheetInHand } from "./sheet.ts";
import { toldByName } from "./told-by-name.ts";

/** Reads a DXF; `unit` is how many mm one unit of a file without units of its own is, where that was said. */
export const dxfSheet = (text: string, unit: number | undefined): Sheet => {
  const file = dxfFile(text);
  const walk = new DxfWalk(file);
  return walk.whole(unit);
};

/** What an entity takes over from the block it is in. */
interface Around {
  readonly matrix: Affine;
  readonly group: string;
  readonly called: string | undefined;
  /** The layer that the block was placed on. */
  readonly layer: string;
  /** The names of the blocks being placed. */
  readonly placed: readonly string[];
}

class DxfWalk {
  private readonly file: DxfFile;
  private readonly sheet = new SheetInHand();
  private readonly hiddenLayers: ReadonlySet<string>;
  private readonly isOfPieces: boolean;
  private walked = 0;
  private groups = 0;

  constructor(file: DxfFile) {
    this.file = file;
    this.hiddenLayers = new Set(
      file.layers
        .filter((layer) => (numberOf(layer, 70, 0) & 1) === 1 || numberOf(layer, 62, 7) < 0)
        .map((layer) => textOf(layer, 2)),
    );
    this.isOfPieces = [...file.blocks.values()].some(isPiece);
  }

  whole(unit: number | undefined): Sheet {
    const { file, sheet } = this;
    if (!file.isWhole)
      sheet.notes.push("The file breaks off before its end mark (EOF); what was being drawn there is missing.");
    const said = this.unitSaid();
    if (said === undefined && unit === undefined)
      sheet.notes.push(
        "The file does not say its units: 1 is taken as 1 mm. Where that is wrong, --units puts it right.",
      );
    const millimetres = said?.millimetres ?? unit ?? 1;
    // DXF draws y up, and a pattern down the body.
    const matrix = scaled(millimetres, -millimetres);
    const top: Around = { matrix, group: "", called: undefined, layer: "0", placed: [] };
    for (const entity of file.entities) this.entity(entity, top);
    this.unplaced(top);
    return sheet.finished(said?.units);
  }

  /** Blocks that nothing places are drawn where they were made, if the file places none. */
  private unplaced(top: Around): void {
    if (this.file.entities.some(({ type }) => type === "INSERT")) return;
    for (const [name, block] of this.file.blocks)
      if (!name.startsWith("*") && isPiece(block)) this.block(name, block, top);
  }

  private unitSaid(): { readonly millimetres: number; readonly units: Units | undefined } | undefined {
    const { header } = this.file;
    const insert = header.get("$INSUNITS");
    const one = insert && insertUnits.get(numberIn(insert, "$INSUNITS"));
    if (one) return one;
    for (const { value } of this.texts()) {
      const words = /^units:\s*(metric|english)/i.exec(value)?.[1]?.toLowerCase();
      if (words !== undefined) return words === "metric" ? metric : inches;
    }
    const measurement = header.get("$MEASUREMENT");
    if (measurement) return numberIn(measurement, "$MEASUREMENT") === 1 ? metric : inches;
    return undefined;
  }

  private *texts(): Generator<{ value: string }> {
    const all = [this.file.entities, ...[...this.file.blocks.values()].map(({ entities }) => entities)];
    for (const entities of all)
      for (const entity of entities) if (entity.type === "TEXT") yield { value: textOf(entity, 1).trim() };
  }

  private entity(entity: DxfEntity, around: Around): void {
    const { type, line } = entity;
    this.walked += 1;
    if (this.walked > drawingLimits.elements)
      throw new Refused(`The file draws more than ${drawingLimits.elements} entities, those placed again with it.`, {
        line,
      });
    const own = textOf(entity, 8);
    const layer = own === "" || own === "0" ? around.layer : own;
    if (numberOf(entity, 60, 0) === 1 || this.hiddenLayers.has(layer)) {
      this.sheet.leaveOut("hidden entities", line);
      return;
    }
    if (numberOf(entity, 67, 0) === 1) {
      this.sheet.leaveOut("entities of page layouts", line);
      return;
    }
    if (type === "INSERT") {
      this.insert(entity, { ...around, layer });
      return;
    }
    if (type === "TEXT" || type === "MTEXT") {
      this.words(entity, around);
      return;
    }
    if (type === "ATTDEF" || type === "VIEWPORT") return;
    const meaning = this.meaningOf(layer);
    if (meaning === "aside") return;
    if (meaning === "unread") {
      this.sheet.leaveOut(`lines of layer ${layer}`, line);
      return;
    }
    if (type === "POINT") {
      const at = sentBy(around.matrix, spotOf(entity));
      const means = meaning === "text" ? undefined : meaning;
      this.sheet.spot({ at, means, group: around.group, called: undefined, line });
      return;
    }
    if (meaning === "turn" || meaning === "curve" || meaning === "text") return;
    const read = dxfLine(entity);
    if (read === undefined) {
      this.sheet.leaveOut(`${type.slice(0, 40)} entities, which are no lines`, line);
      return;
    }
    if ("leftOut" in read) {
      this.sheet.leaveOut(read.leftOut, line);
      return;
    }
    const path: Path = movedBy(around.matrix, read.path);
    this.sheet.line({ path, means: meaning, ...groupOf(around), isMeasured: read.isMeasured === true, line });
  }

  private meaningOf(layer: string): Meaning | "turn" | "curve" | "text" | "unread" | "aside" | undefined {
    if (!this.isOfPieces) return toldByName(layer);
    return pieceLayers.get(layer) ?? (/^\d+$/.test(layer) && layer !== "0" ? "unread" : toldByName(layer));
  }

  private insert(entity: DxfEntity, around: Around): void {
    const { line } = entity;
    const name = textOf(entity, 2);
    const block = this.file.blocks.get(name);
    if (!block) {
      this.sheet.leaveOut("blocks that the file does not hold", line);
      return;
    }
    if (around.placed.includes(name))
      throw new Refused(`The block “${shown(name)}” is placed inside itself.`, { line });
    if (around.placed.length >= drawingLimits.placedInPlaced)
      throw new Refused(`Blocks are placed more than ${drawingLimits.placedInPlaced} deep in one another.`, { line });
    const facing = facingOf(entity);
    if (facing === "away") {
      this.sheet.leaveOut("blocks that do not lie flat on the page", line);
      return;
    }
    const base = spotOf(block.head);
    const at = spotOf(entity);
    const [columns, rows] = [numberOf(entity, 70, 1), numberOf(entity, 71, 1)].map((n) => Math.max(1, Math.trunc(n)));
    if (columns! * rows! > drawingLimits.elements)
      throw new Refused(`A block is placed ${columns} times ${rows} times, more than any drawing needs.`, { line });
    const lying = facing === "mirrored" ? after(around.matrix, scaled(-1, 1)) : around.matrix;
    const turn = turned(toRadians(numberOf(entity, 50, 0)));
    const grown = scaled(numberOf(entity, 41, 1), numberOf(entity, 42, 1));
    for (let row = 0; row < rows!; row += 1) {
      for (let column = 0; column < columns!; column += 1) {
        const step = shifted(column * numberOf(entity, 44, 0), row * numberOf(entity, 45, 0));
        const matrix = [shifted(at.x, at.y), turn, step, grown, shifted(-base.x, -base.y)].reduce(after, lying);
        this.block(name, block, { ...around, matrix });
      }
    }
  }

  private block(name: string, block: DxfBlock, around: Around): void {
    this.groups += 1;
    const called = pieceName(block) ?? (name === "" || name.startsWith("*") ? around.called : name);
    const inside = { ...around, group: `block ${this.groups}`, called, placed: [...around.placed, name] };
    // Counts as one itself, so that empty blocks cannot be placed without end.
    this.walked += 1;
    for (const entity of block.entities) this.entity(entity, inside);
  }

  private words(entity: DxfEntity, around: Around): void {
    const chunks = entity.tags.filter(({ code }) => code === 3 || code === 1).map(({ value }) => value);
    const text = entity.type === "MTEXT" ? dxfManyWords(chunks.join("")) : dxfWords(textOf(entity, 1));
    // What the file says of itself in words is understood elsewhere, and is no label.
    const understood =
      /^(?:piece name|size|style name|sample size|units|author|creation (?:date|time)|1 unit = 1 mm)\b/i;
    if ((this.isOfPieces || /^1 unit/.test(text)) && understood.test(text.trim())) return;
    const note = /^annotation:\s*(.*)$/i.exec(text.trim())?.[1];
    const at = sentBy(around.matrix, spotOf(entity));
    const isRemark = this.isOfPieces && around.group !== "" && /^(?:quantity|material):/i.test(text.trim());
    this.sheet.write({ text: note ?? text, at, group: around.group, isRemark, line: entity.line });
  }
}

const groupOf = ({ group, called }: Around): { readonly group: string; readonly called: string | undefined } => ({
  group,
  called,
});

/** A block is a piece after the standard where something lies on the layer of the boundary. */
const isPiece = ({ entities }: DxfBlock): boolean =>
  entities.some(
    (entity) => textOf(entity, 8) === "1" && ["POLYLINE", "LWPOLYLINE", "LINE", "ARC"].includes(entity.type),
  );

/** "Piece Name: back" and "Size: 38" in a block make back-38. */
const pieceName = ({ entities }: DxfBlock): string | undefined => {
  const said = (what: RegExp): string | undefined => {
    for (const entity of entities) {
      const found = entity.type === "TEXT" ? what.exec(dxfWords(textOf(entity, 1)).trim()) : null;
      if (found) return found[1];
    }
    return undefined;
  };
  const name = said(/^piece name:\s*(.+)$/i);
  const size = said(/^size:\s*(.+)$/i);
  return name === undefined || size === undefined ? name : `${name}-${size}`;
};

const shown = (name: string): string => name.slice(0, 60);

const pieceLayers: ReadonlyMap<string, Meaning | "turn" | "curve" | "text"> = new Map([
  ["1", "cutting"],
  ["2", "turn"],
  ["3", "curve"],
  ["4", "notch"],
  ["6", "fold"],
  ["7", "grain"],
  ["8", "inner"],
  ["11", "inner"],
  ["13", "drill"],
  ["14", "sewing"],
  ["15", "text"],
  ["80", "notch"],
  ["81", "notch"],
  ["82", "notch"],
  ["83", "notch"],
]);

const metric = { millimetres: 1, units: undefined } as const;
const inches = { millimetres: 25.4, units: "in" } as const;

/** The units of $INSUNITS by their numbers (DXF reference, "HEADER section"); those of the sky are left out. */
const insertUnits: ReadonlyMap<number, { readonly millimetres: number; readonly units: Units | undefined }> = new Map([
  [1, inches],
  [2, { millimetres: millimetresIn.get("ft")!, units: "in" }],
  [4, metric],
  [5, { millimetres: 10, units: undefined }],
  [6, { millimetres: 1000, units: undefined }],
  [10, { millimetres: millimetresIn.get("yd")!, units: "in" }],
  [14, { millimetres: 100, units: undefined }],
]);
