// DXF as it stands in the file: group codes and values by turns, gathered into sections, entities and blocks (DXF reference,
// "About the DXF format"). No meaning yet, and no recursion.
import { drawingLimits } from "./drawing-limits.ts";
import { Refused } from "./refused.ts";

/** A group code and its value. */
export interface DxfTag {
  readonly code: number;
  readonly value: string;
  /** The line of the value, counted from 1. */
  readonly line: number;
}

/** A thing that begins with a group code 0. */
export interface DxfEntity {
  readonly type: string;
  readonly tags: readonly DxfTag[];
  /** The VERTEX entities of a POLYLINE. */
  readonly vertices: readonly DxfEntity[];
  readonly line: number;
}

export interface DxfBlock {
  readonly head: DxfEntity;
  readonly entities: readonly DxfEntity[];
}

export interface DxfFile {
  /** Header variables by their names, each with its first value. */
  readonly header: ReadonlyMap<string, DxfTag>;
  readonly layers: readonly DxfEntity[];
  /** Of two blocks with one name the first counts. */
  readonly blocks: ReadonlyMap<string, DxfBlock>;
  readonly entities: readonly DxfEntity[];
  /** Whether the file goes on to its end mark. */
  readonly isWhole: boolean;
}

/** Reads the tags of a file; a line that cannot be a group code is refused. */
export const dxfFile = (text: string): DxfFile => {
  const header = new Map<string, DxfTag>();
  const layers: DxfEntity[] = [];
  const blocks = new Map<string, DxfBlock>();
  const entities: DxfEntity[] = [];
  let section = "";
  let isWhole = false;
  let variable = "";
  let count = 0;
  let block: { head: DxfEntity; entities: DxfEntity[] } | undefined;
  let polyline: { vertices: DxfEntity[] } | undefined;
  let tags: DxfTag[] = [];
  let begun: DxfTag | undefined;

  const finish = (): void => {
    if (!begun) return;
    const vertices: DxfEntity[] = [];
    const entity: DxfEntity = { type: begun.value.toUpperCase(), tags, vertices, line: begun.line };
    begun = undefined;
    const { type } = entity;
    if (type === "SECTION") section = textOf(entity, 2).toUpperCase();
    if (type === "ENDSEC") section = "";
    if (structure.has(type)) return;
    count += 1;
    if (count > drawingLimits.elements)
      throw new Refused(`The file holds more than ${drawingLimits.elements} entities.`, { line: entity.line });
    if (section === "TABLES" && type === "LAYER") layers.push(entity);
    if (section !== "BLOCKS" && section !== "ENTITIES") return;
    if (type === "BLOCK") block = { head: entity, entities: [] };
    else if (type === "ENDBLK") {
      if (block && !blocks.has(textOf(block.head, 2))) blocks.set(textOf(block.head, 2), block);
      block = undefined;
    } else if (type === "VERTEX" && polyline) polyline.vertices.push(entity);
    else if (type === "SEQEND") polyline = undefined;
    else {
      polyline = type === "POLYLINE" ? { vertices } : undefined;
      if (section === "ENTITIES") entities.push(entity);
      else block?.entities.push(entity);
    }
  };

  for (const tag of tagsIn(text)) {
    if (tag.code === 0) {
      finish();
      if (tag.value.toUpperCase() === "EOF") {
        isWhole = true;
        break;
      }
      begun = tag;
      tags = [];
    } else if (section === "HEADER" || (begun?.value === "SECTION" && tags[0]?.value === "HEADER")) {
      if (tag.code === 9) variable = tag.value.toUpperCase();
      else if (!header.has(variable)) header.set(variable, tag);
    } else if (tag.code !== 999) tags.push(tag);
  }
  // What stands behind the last whole entity of a file that breaks off is not to be trusted.
  return { header, layers, blocks, entities, isWhole };
};

/** The first value under a group code; empty where there is none. */
export const textOf = ({ tags }: Pick<DxfEntity, "tags">, code: number): string =>
  tags.find((tag) => tag.code === code)?.value ?? "";

/** The first number under a group code, or what stands for it; a value that is no number is refused. */
export const numberOf = (entity: DxfEntity, code: number, otherwise: number): number => {
  const tag = entity.tags.find((each) => each.code === code);
  return tag === undefined ? otherwise : numberIn(tag, entity.type);
};

/** Every number under a group code, in order. */
export const numbersOf = (entity: DxfEntity, code: number): number[] =>
  entity.tags.flatMap((tag) => (tag.code === code ? [numberIn(tag, entity.type)] : []));

/** The number of a tag. */
export const numberIn = ({ code, value, line }: DxfTag, type: string): number => {
  const number = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/.test(value) ? Number(value) : Number.NaN;
  if (!Number.isFinite(number))
    throw new Refused(`Group code ${code} of ${type} has to be a number, and here stands “${value.slice(0, 40)}”.`, {
      line,
    });
  return number;
};

/** Marks of the file's own order, which are no entities. */
const structure: ReadonlySet<string> = new Set(["SECTION", "ENDSEC", "TABLE", "ENDTAB"]);

function* tagsIn(text: string): Generator<DxfTag> {
  let at = 0;
  let line = 0;
  const next = (): string | undefined => {
    if (at >= text.length) return undefined;
    const end = text.indexOf("\n", at);
    const found = text.slice(at, end < 0 ? text.length : end);
    at = end < 0 ? text.length : end + 1;
    line += 1;
    return found.endsWith("\r") ? found.slice(0, -1) : found;
  };
  for (let count = 1; ; count += 1) {
    const code = next();
    if (code === undefined || (code.trim() === "" && at >= text.length)) return;
    if (!/^\s*-?\d{1,5}\s*$/.test(code)) {
      const what = `A group code, a whole number, has to stand here, and it says “${code.trim().slice(0, 40)}”.`;
      throw new Refused(count === 1 ? `This is no DXF file. ${what}` : what, { line });
    }
    const value = next();
    if (value === undefined) return;
    if (count > drawingLimits.tags)
      throw new Refused(`The file has more than ${drawingLimits.tags} group codes.`, { line });
    // Blanks belong to a text only.
    yield { code: Number(code), value: Number(code) === 1 || Number(code) === 3 ? value : value.trim(), line };
  }
}
