// A drawing as SVG for cutters and projectors, which switch layers and not pieces: what is cut, what is sewn, marks and labels
// each in one group, in every size of a nest its own, and in that a group for each piece. True to size like the other.
import type { Drawing, Group, StrokeKind } from "../drawing/drawing.ts";
import { strokeKinds } from "../drawing/drawing.ts";
import { sizesIn } from "../drawing/line-style.ts";
import type { Lettering } from "../lettering/lettering.ts";
import { escaped, framed, idOf, strokeLines, textLines } from "./svg.ts";

/** The SVG of a drawing with its layers on top; 1 unit is 1 mm. With a lettering its texts are the outlines of letters. */
export const layeredSvg = (drawing: Drawing, lettering?: Lettering): string => {
  const sizes = sizesIn(drawing);
  const all = sizes.length === 0 ? [undefined] : [...sizes, undefined];
  return framed(
    drawing,
    all.flatMap((size) => layersOf(drawing, size, sizes, lettering)),
  );
};

type Layer = "before" | "cutting" | "sewing" | "marks" | "labels";

/** The layers in the order they are laid on the paper, with what is on them. */
const layers: readonly { readonly name: Layer; readonly title: string; readonly kinds: readonly StrokeKind[] }[] = [
  { name: "before", title: "As it was before", kinds: ["before"] },
  { name: "sewing", title: "Sewing lines", kinds: ["sewing-line", "hem-line"] },
  { name: "cutting", title: "Cutting lines", kinds: ["cutting-line"] },
  {
    name: "marks",
    title: "Marks",
    kinds: strokeKinds.filter(
      (kind) => !["sewing-line", "hem-line", "cutting-line", "before", "scale-square", "frame"].includes(kind),
    ),
  },
  { name: "labels", title: "Labels", kinds: ["scale-square", "frame"] },
];

const layersOf = (
  drawing: Drawing,
  size: string | undefined,
  sizes: readonly string[],
  lettering: Lettering | undefined,
): string[] =>
  layers.flatMap(({ name, title, kinds }) => {
    const id = size === undefined ? name : `${name}_size-${idOf(size)}`;
    const lines = drawing.groups
      .filter((group) => group.size === size)
      .flatMap((group) =>
        groupLines(group, id, kinds, name === "labels" ? textLines(group.texts, lettering) : [], sizes),
      );
    if (lines.length === 0) return [];
    return [
      `<g id="${id}">`,
      `<title>${escaped(size === undefined ? title : `${title}, size ${size}`)}</title>`,
      ...lines,
      "</g>",
    ];
  });

/** What a piece has on a layer, in a group of its own. */
const groupLines = (
  group: Group,
  layer: string,
  kinds: readonly StrokeKind[],
  texts: readonly string[],
  sizes: readonly string[],
): string[] => {
  const lines = [...kinds.flatMap((kind) => strokeLines(kind, group, sizes)), ...texts];
  const id = group.of === "piece" ? `piece-${idOf(group.name)}` : group.of;
  return lines.length === 0 ? [] : [`<g id="${layer}_${id}">`, ...lines, "</g>"];
};
