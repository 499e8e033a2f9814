// A print as a PDF file: the spread pattern once, as a form that every page shows a part of; layers for sizes and for kinds of
// line; lettering that looks the same everywhere. Written through the low-level objects of a library, because only they reach
// layers, viewer preferences and fonts of one's own. No date and no chance: the same print gives the same bytes.
import { type PDFContext, type PDFDict, PDFDocument, PDFHexString, PDFName, type PDFRef } from "@cantoo/pdf-lib";
import { type Group, type Stroke, type StrokeKind, strokeKinds, type Text } from "../drawing/drawing.ts";
import { fittedDashes, type LineStyle, sizesIn, styleOf } from "../drawing/line-style.ts";
import { extentOf } from "../drawing/paper.ts";
import { number, place } from "../export/path-data.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { sameSpot } from "../geometry/point.ts";
import { cos, sin } from "../geometry/trig.ts";
import type { Lettering } from "../lettering/lettering.ts";
import { quiet } from "../lettering/readable.ts";
import { sha256 } from "../sha-256.ts";
import type { Page, Print } from "./page.ts";
import { type PdfLetters, pdfLetters } from "./pdf-letters.ts";

/** The PDF of a print. */
export const pdf = async (print: Print, lettering: Lettering): Promise<Uint8Array> => {
  const file = await PDFDocument.create({ updateMetadata: false });
  const { context, catalog } = file;
  const texts = [...print.groups, ...print.pages, ...print.pages.flatMap(({ groups = [] }) => groups)].flatMap(
    (each) => each.texts,
  );
  const letters = pdfLetters(context, texts, lettering);
  const layers = layersOf(context, print);
  const form = formOf(context, print, letters, layers);
  const fonts = fontsOf(context, letters);
  const sizes = sizesOf(print.groups);
  const contents = print.pages.map((page) => contentOf(page, letters, sizes));
  for (const [index, page] of print.pages.entries()) {
    const leaf = file.addPage([points(page.width), points(page.height)]).node;
    leaf.set(PDFName.of("Contents"), context.register(context.flateStream(contents[index]!)));
    leaf.set(PDFName.of("Resources"), context.obj({ Font: fonts, XObject: { [formName]: form.ref } }));
  }
  catalog.set(PDFName.of("Lang"), PDFHexString.fromText("en"));
  // Readers that honor it open their print dialog at actual size; the squares tell of those that do not.
  catalog.set(PDFName.of("ViewerPreferences"), context.obj({ PrintScaling: "None", DisplayDocTitle: true }));
  catalog.set(PDFName.of("PageLabels"), pageLabels(context, print.pages));
  catalog.set(PDFName.of("OCProperties"), layerPanel(context, layers));
  context.trailerInfo.Info = context.register(context.obj({ Title: PDFHexString.fromText(print.title) }));
  const seal = sha256(new TextEncoder().encode([print.title, form.content, ...contents].join("\n"))).slice(0, 32);
  context.trailerInfo.ID = context.obj([PDFHexString.of(seal), PDFHexString.of(seal)]);
  return file.save({ addDefaultPage: false, updateFieldAppearances: false });
};

// 72 points to the inch (ISO 32000-1, 8.3.2.3).
const points = (millimetres: number): number => Number(((millimetres * 72) / 25.4).toFixed(4));

const formName = "Pattern";

/** The layers of a print in the order of the panel: its sizes, then kinds of line. */
type Layers = ReadonlyMap<string, PDFRef>;

const kindLayers = ["Cutting lines", "Sewing lines", "Marks", "Labels", "Before"] as const;

type KindLayer = (typeof kindLayers)[number];

// What was before lies under all that is, and comes last in the panel, for it is wanted least.
const fromBelow: readonly KindLayer[] = ["Before", "Cutting lines", "Sewing lines", "Marks", "Labels"];

const layerOf = (kind: StrokeKind): KindLayer => {
  if (kind === "before") return "Before";
  if (kind === "cutting-line") return "Cutting lines";
  return kind === "sewing-line" || kind === "hem-line" ? "Sewing lines" : "Marks";
};

const layersOf = (context: PDFContext, { groups }: Print): Layers =>
  new Map(
    [...sizesOf(groups).map(sizeLayer), ...kindLayers].map((name) => [
      name,
      context.register(context.obj({ Type: "OCG", Name: PDFHexString.fromText(name) })),
    ]),
  );

const sizesOf = (groups: readonly Group[]): string[] => sizesIn({ groups });

const sizeLayer = (size: string): string => `Size ${size}`;

const layerPanel = (context: PDFContext, layers: Layers): PDFDict => {
  const all = [...layers.values()];
  return context.obj({
    OCGs: all,
    D: { Name: PDFHexString.fromText("Pattern"), BaseState: "ON", ON: all, Order: all },
  });
};

/** What is named in content: the layers, by their place in the panel. */
const layerNames = (layers: Layers): ReadonlyMap<string, string> =>
  new Map([...layers.keys()].map((name, index) => [name, `L${index + 1}`]));

const formOf = (
  context: PDFContext,
  { groups }: Print,
  letters: PdfLetters,
  layers: Layers,
): { readonly ref: PDFRef; readonly content: string } => {
  const names = layerNames(layers);
  const sizes = sizesOf(groups);
  const within = (layer: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : [`/OC /${names.get(layer)!} BDC`, ...lines, "EMC"];
  const content = groups
    .flatMap((group) => {
      const lines = fromBelow.flatMap((layer) =>
        within(layer, layer === "Labels" ? textLines(group.texts, letters) : strokeLines(group, layer, sizes)),
      );
      return group.size === undefined ? lines : within(sizeLayer(group.size), lines);
    })
    .join("\n");
  const { left, top, right, bottom } = extentOf(groups);
  const properties = context.obj({});
  for (const [layer, ref] of layers) properties.set(PDFName.of(names.get(layer)!), ref);
  const stream = context.flateStream(content, {
    Type: "XObject",
    Subtype: "Form",
    BBox: [left - rim, top - rim, right + rim, bottom + rim].map((each) => Math.round(each)),
    Resources: { Font: fontsOf(context, letters), Properties: properties },
  });
  return { ref: context.register(stream), content };
};

// Room around the form for the width of its lines, mm.
const rim = 5;

const fontsOf = (context: PDFContext, { fonts }: PdfLetters): PDFDict => {
  const dictionary = context.obj({});
  for (const [name, ref] of fonts) dictionary.set(PDFName.of(name), ref);
  return dictionary;
};

/** A page: millimetres, y down, from its upper left corner; its window on the pattern, and what is its own. */
const contentOf = (
  { width, height, window: part, strokes, texts, groups = [] }: Page,
  letters: PdfLetters,
  sizes: readonly string[],
): string => {
  const unit = 72 / 25.4;
  const shown = part
    ? [
        "q",
        rectangleOf(part),
        "W n",
        `${number(part.scale)} 0 0 ${number(part.scale)} ${place({
          x: part.at.x - part.of.left * part.scale,
          y: part.at.y - part.of.top * part.scale,
        })} cm`,
        `/${formName} Do`,
        "Q",
      ]
    : [];
  const own = [{ strokes, size: undefined }, ...groups].flatMap((each) =>
    strokeKinds.flatMap((kind) => penLines(kind, each.strokes, each.size, sizes)),
  );
  const allTexts = [...texts, ...groups.flatMap((group) => group.texts)];
  return [
    "q",
    `${unit.toFixed(9)} 0 0 ${(-unit).toFixed(9)} 0 ${number(points(height))} cm`,
    `0 0 ${number(width)} ${number(height)} re W n`,
    ...shown,
    ...own,
    ...allTexts.flatMap((text) => whiteUnder(text, letters)),
    ...textLines(allTexts, letters),
    "Q",
  ].join("\n");
};

/** A white ground under words of the page itself, which stand where lines of the pattern may run. */
const whiteUnder = ({ text, at, size, turn, align, weight }: Text, letters: PdfLetters): string[] => {
  const width = letters.width(text, weight) * size;
  if (width === 0) return [];
  const left = { start: 0, middle: -width / 2, end: -width }[align];
  const [along, down] = [cos(turn), sin(turn)];
  const box = `${number(left - size / 4)} ${number(-0.85 * size)} ${number(width + size / 2)} ${number(1.1 * size)} re f`;
  return ["q", "1 g", `${number(along)} ${number(down)} ${number(-down)} ${number(along)} ${place(at)} cm`, box, "Q"];
};

const rectangleOf = ({ of, at, scale }: NonNullable<Page["window"]>): string =>
  `${place(at)} ${number((of.right - of.left) * scale)} ${number((of.bottom - of.top) * scale)} re`;

const strokeLines = ({ strokes, size }: Group, layer: string, sizes: readonly string[]): string[] =>
  strokeKinds.flatMap((kind) => (layerOf(kind) === layer ? penLines(kind, strokes, size, sizes) : []));

/** All strokes of a kind: the pen, then every line. */
const penLines = (
  kind: StrokeKind,
  strokes: readonly Stroke[],
  size: string | undefined,
  sizes: readonly string[],
): string[] => {
  const own = strokes.filter((stroke) => stroke.kind === kind);
  if (own.length === 0) return [];
  const style = styleOf(kind, size, sizes);
  return ["q", penOf(kind, style), ...own.flatMap(({ path }) => lineOf(path, style)), "Q"];
};

const penOf = (kind: StrokeKind, { width, ink, filled }: LineStyle): string => {
  const grey = ink === "black" ? "0" : "0.54";
  if (filled) return `${grey} g`;
  return `${grey} G ${number(width)} w ${kind === "cutting-line" ? 1 : 0} J 1 j`;
};

const lineOf = (path: Path, { dashes, filled }: LineStyle): string[] => {
  const fitted = dashes.length === 0 ? [] : fittedDashes(dashes, pathLength(path));
  const closes = path.length > 1 && sameSpot(startOf(path), endOf(path));
  return [
    ...(filled || dashes.length === 0 ? [] : [`[${fitted.map(number).join(" ")}] 0 d`]),
    `${place(startOf(path))} m`,
    ...path.map((span) =>
      span.kind === "line"
        ? `${place(span.end)} l`
        : `${place(span.startHandle)} ${place(span.endHandle)} ${place(span.end)} c`,
    ),
    ...(closes ? ["h"] : []),
    filled ? "f" : "S",
  ];
};

const textLines = (texts: readonly Text[], letters: PdfLetters): string[] =>
  texts.flatMap(({ text, at, size, turn, align, weight }) => {
    const runs = letters.runs(text, weight);
    if (runs.length === 0) return [];
    const share = { start: 0, middle: 0.5, end: 1 }[align];
    const back = letters.width(text, weight) * size * share;
    const [along, down] = [cos(turn), sin(turn)];
    const from = { x: at.x - along * back, y: at.y - down * back };
    // The page runs down and letters stand up, so their upward axis is turned over once more.
    const matrix = [along * size, down * size, down * size, -along * size].map((each) => number(each)).join(" ");
    return [
      // Readers put slanted letters together badly, so each text is told whole as well (ISO 32000-1, 14.9.4).
      `/Span <</ActualText ${PDFHexString.fromText(quiet(text)).toString()}>> BDC`,
      "BT",
      `${matrix} ${place(from)} Tm`,
      ...runs.flatMap(({ font, codes }) => [`/${font} 1 Tf`, `<${codes}> Tj`]),
      "ET",
      "EMC",
    ];
  });

const pageLabels = (context: PDFContext, pages: readonly Page[]): PDFDict =>
  context.obj({ Nums: pages.flatMap(({ name }, index) => [index, context.obj({ P: PDFHexString.fromText(name) })]) });
