// What release 2000 of DXF wants around the entities of a drawing: header, tables, the two spaces, the dictionaries. Only what
// its reference asks for is written, and every handle is the same in every run.
import type { Bounds } from "../geometry/bounds.ts";
import { real, section, spot, spotInSpace, type Tag, variable } from "./dxf-tags.ts";

/** A layer and how its lines look. */
export interface Layer {
  readonly name: string;
  readonly color: number;
  readonly dashes: readonly number[];
  /** Width of the pen in hundredths of a mm, one of those that the format knows. */
  readonly weight: number;
}

/** Gives the next free handle. */
export type Handle = () => string;

/** Handles in the order in which they are asked for, behind those that are always the same. */
export const handles = (): Handle => {
  let last = 0xff;
  return () => {
    last += 1;
    return last.toString(16).toUpperCase();
  };
};

/** A whole file around these entities, whose layers are listed; layer 0 is always there. */
export const framed = (entities: readonly Tag[], paper: Bounds, layers: readonly Layer[], handle: Handle): Tag[] => [
  ...section("HEADER", header(paper)),
  ...section("CLASSES", []),
  ...section("TABLES", tables(layers, paper, handle)),
  ...section("BLOCKS", [
    ...spaceBlock("*Model_Space", modelSpace, handle),
    ...spaceBlock("*Paper_Space", paperSpace, handle),
  ]),
  ...section("ENTITIES", entities),
  ...section("OBJECTS", [
    ...dictionary(root, "0"),
    [3, "ACAD_GROUP"],
    [350, groupsOfObjects],
    ...dictionary(groupsOfObjects, root),
  ]),
  [0, "EOF"],
];

/** The first tags of an entity on a layer. */
export const entity = (type: string, layer: string, handle: Handle): Tag[] => [
  ...object(type, handle(), modelSpace),
  [100, "AcDbEntity"],
  [8, layer],
];

const modelSpace = "1F";
const paperSpace = "1E";
const root = "C";
const groupsOfObjects = "D";

const header = ({ left, top, right, bottom }: Bounds): Tag[] => [
  ...variable("$ACADVER", [1, "AC1015"]),
  ...variable("$DWGCODEPAGE", [3, "ANSI_1252"]),
  ...variable("$INSBASE", ...spotInSpace(10, { x: 0, y: 0 })),
  ...variable("$EXTMIN", ...spotInSpace(10, { x: left, y: bottom })),
  ...variable("$EXTMAX", ...spotInSpace(10, { x: right, y: top })),
  ...variable("$LTSCALE", [40, "1.0"]),
  ...variable("$HANDSEED", [5, "FFFFFF"]),
  // Both, as programs differ in which of the two they ask (millimetres; metric).
  ...variable("$INSUNITS", [70, "4"]),
  ...variable("$MEASUREMENT", [70, "1"]),
];

const dictionary = (handle: string, owner: string): Tag[] => [
  ...object("DICTIONARY", handle, owner),
  [100, "AcDbDictionary"],
  [281, "1"],
];

const object = (type: string, handle: string, owner: string): Tag[] => [
  [0, type],
  [5, handle],
  [330, owner],
];

const tables = (layers: readonly Layer[], paper: Bounds, handle: Handle): Tag[] => {
  const patterns = [...new Map(layers.map(({ dashes }) => [lineTypeName(dashes), dashes])).values()].filter(
    (dashes) => dashes.length > 0,
  );
  return [
    ...table("VPORT", [(owner) => view(paper, owner, handle)], handle),
    ...table(
      "LTYPE",
      [
        ...[[], ...patterns].map((dashes) => (owner: string) => lineType(lineTypeName(dashes), dashes, owner, handle)),
        ...["BYBLOCK", "BYLAYER"].map((name) => (owner: string) => lineType(name, [], owner, handle)),
      ],
      handle,
    ),
    ...table(
      "LAYER",
      [plainLayer, ...layers].map((layer) => (owner) => layerEntry(layer, owner, handle)),
      handle,
    ),
    ...table("STYLE", [(owner) => textStyle(owner, handle)], handle),
    ...table("VIEW", [], handle),
    ...table("UCS", [], handle),
    ...table(
      "APPID",
      [(owner) => record("APPID", "AcDbRegAppTableRecord", handle(), owner, "ACAD", [70, "0"])],
      handle,
    ),
    ...table("DIMSTYLE", [(owner) => dimensionStyle(owner, handle)], handle),
    ...table(
      "BLOCK_RECORD",
      [
        (owner) => record("BLOCK_RECORD", "AcDbBlockTableRecord", modelSpace, owner, "*Model_Space"),
        (owner) => record("BLOCK_RECORD", "AcDbBlockTableRecord", paperSpace, owner, "*Paper_Space"),
      ],
      handle,
    ),
  ];
};

const plainLayer: Layer = { name: "0", color: 7, dashes: [], weight: 25 };

const table = (name: string, entries: readonly ((owner: string) => Tag[])[], handle: Handle): Tag[] => {
  const own = handle();
  return [
    [0, "TABLE"],
    [2, name],
    [5, own],
    [330, "0"],
    [100, "AcDbSymbolTable"],
    [70, String(entries.length)],
    ...(name === "DIMSTYLE" ? [[100, "AcDbDimStyleTable"] as const] : []),
    ...entries.flatMap((entry) => entry(own)),
    [0, "ENDTAB"],
  ];
};

const record = (
  type: string,
  kind: string,
  handle: string,
  owner: string,
  name: string,
  ...tags: readonly Tag[]
): Tag[] => [...object(type, handle, owner), [100, "AcDbSymbolTableRecord"], [100, kind], [2, name], ...tags];

/** A line type is named after its dashes: D9_2P5 is a dash of 9 mm and a gap of 2.5 mm. */
const lineTypeName = (dashes: readonly number[]): string =>
  dashes.length === 0 ? "CONTINUOUS" : `D${dashes.map((part) => String(part).replace(".", "P")).join("_")}`;

const lineType = (name: string, dashes: readonly number[], owner: string, handle: Handle): Tag[] =>
  record(
    "LTYPE",
    "AcDbLinetypeTableRecord",
    handle(),
    owner,
    name,
    [70, "0"],
    [3, ""],
    [72, "65"],
    [73, String(dashes.length)],
    [40, real(dashes.reduce((sum, part) => sum + part, 0))],
    // Gaps are negative, and no part holds a shape.
    ...dashes.flatMap((part, index): Tag[] => [
      [49, real(index % 2 === 0 ? part : -part)],
      [74, "0"],
    ]),
  );

const layerEntry = ({ name, color, dashes, weight }: Layer, owner: string, handle: Handle): Tag[] =>
  record(
    "LAYER",
    "AcDbLayerTableRecord",
    handle(),
    owner,
    name,
    [70, "0"],
    [62, String(color)],
    [6, lineTypeName(dashes)],
    [370, String(weight)],
  );

/** What is seen when the file is opened: the whole paper. */
const view = ({ left, top, right, bottom }: Bounds, owner: string, handle: Handle): Tag[] =>
  record(
    "VPORT",
    "AcDbViewportTableRecord",
    handle(),
    owner,
    "*ACTIVE",
    [70, "0"],
    ...spot(10, { x: 0, y: 0 }),
    ...spot(11, { x: 1, y: -1 }),
    ...spot(12, { x: (left + right) / 2, y: (top + bottom) / 2 }),
    [40, real(bottom - top)],
    [41, real((right - left) / (bottom - top))],
  );

/** Nothing is dimensioned, but programs want a style for it; alone among the tables its handle stands under 105. */
const dimensionStyle = (owner: string, handle: Handle): Tag[] =>
  record("DIMSTYLE", "AcDbDimStyleTableRecord", handle(), owner, "STANDARD", [70, "0"]).map(([code, value]) => [
    code === 5 ? 105 : code,
    value,
  ]);

const textStyle = (owner: string, handle: Handle): Tag[] =>
  record(
    "STYLE",
    "AcDbTextStyleTableRecord",
    handle(),
    owner,
    "STANDARD",
    [70, "0"],
    [40, "0.0"],
    [41, "1.0"],
    [50, "0.0"],
    [71, "0"],
    [42, "2.5"],
    [3, "txt"],
    [4, ""],
  );

const spaceBlock = (name: string, owner: string, handle: Handle): Tag[] => {
  const inPaper: Tag[] = owner === paperSpace ? [[67, "1"]] : [];
  return [
    ...object("BLOCK", handle(), owner),
    [100, "AcDbEntity"],
    ...inPaper,
    [8, "0"],
    [100, "AcDbBlockBegin"],
    [2, name],
    [70, "0"],
    ...spotInSpace(10, { x: 0, y: 0 }),
    [3, name],
    [1, ""],
    ...object("ENDBLK", handle(), owner),
    [100, "AcDbEntity"],
    ...inPaper,
    [8, "0"],
    [100, "AcDbBlockEnd"],
  ];
};
