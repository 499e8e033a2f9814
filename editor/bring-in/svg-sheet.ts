// An SVG file as a sheet: every line that is drawn, true to size, with what its class or id says it is. Nothing in it runs,
// nothing is fetched, and whatever is no line is told as left out.
import { bounds } from "../../kernel/geometry/bounds.ts";
import type { Units } from "../../kernel/working.ts";
import { type Affine, after, movedBy, scaled, sentBy, shifted } from "./affine.ts";
import { drawingLimits } from "./drawing-limits.ts";
import { Refused } from "./refused.ts";
import { type Meaning, type Sheet, SheetInHand } from "./sheet.ts";
import { boxOf, intoBox } from "./svg-box.ts";
import { pixelsInInch, svgLength } from "./svg-length.ts";
import { lengthOf, type Room, svgShape } from "./svg-shapes.ts";
import { svgTransform } from "./svg-transform.ts";
import { type SvgElement, svgTree } from "./svg-tree.ts";
import { pieceInId, toldByName } from "./told-by-name.ts";

/** Reads an SVG; `unit` is how many mm one unit of a drawing without a size of its own is, where that was said. */
export const svgSheet = (text: string, unit: number | undefined): Sheet => {
  const root = svgTree(text);
  const walk = new SvgWalk(root);
  return walk.whole(root, unit);
};

/** What an element takes over from those around it. */
interface Around extends Room {
  readonly matrix: Affine;
  readonly means: Meaning | "aside" | undefined;
  readonly called: string | undefined;
  readonly group: string;
  /** Whether lines are the outlines of letters where they say which. */
  readonly isLettering: boolean;
  /** The ids that `use` is drawing. */
  readonly used: readonly string[];
  /** The line of the outermost `use`, at which what it draws again stands in the drawing. */
  readonly usedAt: number | undefined;
}

class SvgWalk {
  private readonly sheet = new SheetInHand();
  private readonly byId = new Map<string, SvgElement>();
  private walked = 0;
  private groups = 0;

  constructor(root: SvgElement) {
    const rest = [root];
    for (let element = rest.pop(); element; element = rest.pop()) {
      const id = element.attributes.get("id");
      if (id !== undefined && !this.byId.has(id)) this.byId.set(id, element);
      rest.push(...element.children);
    }
  }

  whole(root: SvgElement, unit: number | undefined): Sheet {
    const { matrix, width, height, units } = this.paper(root, unit);
    this.inside(root, {
      matrix,
      means: undefined,
      called: undefined,
      isLettering: false,
      group: "0",
      width,
      height,
      used: [],
      usedAt: undefined,
    });
    return this.sheet.finished(units);
  }

  /** How the outermost element lies on the sheet (W3C SVG 2, 8.2 and 8.6). */
  private paper(
    root: SvgElement,
    unit: number | undefined,
  ): { matrix: Affine; width: number | undefined; height: number | undefined; units: Units | undefined } {
    const box = boxOf(root);
    const [width, height] = ["width", "height"].map((name) => {
      const length = svgLength(root.attributes.get(name) ?? "", undefined);
      return length && length.value > 0 ? length : undefined;
    });
    const units = width?.unit === "in" || height?.unit === "in" ? "in" : undefined;
    const pixel = 25.4 / pixelsInInch;
    if (box && (width || height)) {
      const across = width ?? { value: (height!.value * box.width) / box.height, unit: height!.unit };
      const down = height ?? { value: (width!.value * box.height) / box.width, unit: width!.unit };
      const fitted = intoBox(box, { width: across.value, height: down.value }, root);
      if (across.unit === "" || across.unit === "px") this.saySize(unit);
      const pixels = isRelative(across.unit) && unit !== undefined ? unit : pixel;
      return { matrix: after(scaled(pixels, pixels), fitted), width: box.width, height: box.height, units };
    }
    this.saySize(unit);
    const pixels = unit ?? pixel;
    return {
      matrix: scaled(pixels, pixels),
      width: box?.width ?? width?.value,
      height: box?.height ?? height?.value,
      units,
    };
  }

  private saySize(unit: number | undefined): void {
    if (unit === undefined)
      this.sheet.notes.push(
        "The drawing does not say how large it is: a pixel is taken as 1/96 in. Where that is wrong, --units or --scale puts it right.",
      );
  }

  private inside(element: SvgElement, around: Around): void {
    this.groups += 1;
    const group = String(this.groups);
    for (const child of element.children) this.element(child, { ...around, group });
  }

  private element(element: SvgElement, around: Around): void {
    const { name, attributes, line } = element;
    this.walked += 1;
    if (this.walked > drawingLimits.elements)
      throw new Refused(
        `The file draws more than ${drawingLimits.elements} elements, those drawn again with it.`,
        element,
      );
    if (name === "" || silent.has(name)) return;
    if (isHidden(attributes)) {
      this.sheet.leaveOut("hidden elements", line);
      return;
    }
    const what = unread.get(name);
    if (what !== undefined) {
      this.sheet.leaveOut(what, line);
      return;
    }
    const style = attributes.get("style") ?? "";
    const move = svgTransform(attributes.get("transform") ?? "");
    if (move === undefined || /(?:^|;)\s*(?:transform|translate|rotate|scale|offset)[\w-]*\s*:/.test(style)) {
      this.sheet.leaveOut("elements with a transform that cannot be read", line);
      return;
    }
    const own = toldIn(attributes);
    const here: Around = {
      ...around,
      matrix: after(around.matrix, move),
      means: around.means === "aside" ? "aside" : (own ?? around.means),
      called: calledIn(attributes) ?? around.called,
      isLettering: around.isLettering || classesOf(attributes).includes("text"),
    };
    switch (name) {
      case "g":
      case "a": {
        this.inside(element, here);
        return;
      }
      case "svg": {
        this.nested(element, here);
        return;
      }
      case "use": {
        this.use(element, here);
        return;
      }
      case "text": {
        this.text(element, here);
        return;
      }
      default: {
        this.shape(element, here);
        return;
      }
    }
  }

  /** A drawing in a drawing has a box of its own. */
  private nested(element: SvgElement, around: Around): void {
    const [x, y] = [lengthOf(element, "x", around.width, 0), lengthOf(element, "y", around.height, 0)];
    const width = lengthOf(element, "width", around.width, around.width);
    const height = lengthOf(element, "height", around.height, around.height);
    const box = boxOf(element);
    if (width === 0 || height === 0) return;
    const placed = after(around.matrix, shifted(x ?? 0, y ?? 0));
    if (!box) {
      this.inside(element, { ...around, matrix: placed, width, height });
      return;
    }
    if (width === undefined || height === undefined) {
      this.sheet.leaveOut("nested drawings of unknown size", element.line);
      return;
    }
    const matrix = after(placed, intoBox(box, { width, height }, element));
    this.inside(element, { ...around, matrix, width: box.width, height: box.height });
  }

  /** Draws another element again; only one of the same file, and never itself. */
  private use(element: SvgElement, around: Around): void {
    const href = (element.attributes.get("href") ?? element.attributes.get("xlink:href") ?? "").trim();
    const id = href.startsWith("#") ? href.slice(1) : undefined;
    if (id === undefined) {
      this.sheet.leaveOut("references to outside of the file", element.line);
      return;
    }
    const target = this.byId.get(id);
    if (!target) {
      this.sheet.leaveOut("references to what is not in the file", element.line);
      return;
    }
    if (around.used.includes(id)) throw new Refused(`The element “${id}” is drawn again inside itself.`, element);
    if (around.used.length >= drawingLimits.placedInPlaced)
      throw new Refused(`Elements are drawn again more than ${drawingLimits.placedInPlaced} deep.`, element);
    const [x, y] = [lengthOf(element, "x", around.width, 0), lengthOf(element, "y", around.height, 0)];
    const placed = {
      ...around,
      matrix: after(around.matrix, shifted(x ?? 0, y ?? 0)),
      used: [...around.used, id],
      usedAt: around.usedAt ?? element.line,
    };
    if (target.name === "symbol" || target.name === "svg") {
      const sizes = ["width", "height"].flatMap((name) => {
        const value = element.attributes.get(name);
        return value === undefined ? [] : [[name, value] as const];
      });
      this.nested({ ...target, attributes: new Map([...target.attributes, ...sizes]) }, placed);
      return;
    }
    this.groups += 1;
    this.element(target, { ...placed, group: String(this.groups) });
  }

  private text(element: SvgElement, around: Around): void {
    const holder = element.attributes.has("x")
      ? element
      : (element.children.find(({ name }) => name === "tspan") ?? element);
    const [x, y] = ["x", "y"].map(
      (name) => svgLength(firstOf(holder.attributes.get(name) ?? "0"), undefined)?.value ?? 0,
    );
    if (around.means === "aside") return;
    const at = sentBy(around.matrix, { x: x!, y: y! });
    this.sheet.write({ text: element.words, at, group: around.group, isRemark: false, line: element.line });
  }

  private shape(element: SvgElement, around: Around): void {
    if (around.means === "aside") return;
    const read = svgShape(element, around);
    if (read === undefined || "leftOut" in read) {
      this.sheet.leaveOut(read?.leftOut ?? `elements that are no lines (${element.name.slice(0, 40)})`, element.line);
      return;
    }
    if (read.brokenAt !== undefined)
      this.sheet.notes.push(
        `Line ${element.line}: this path cannot be read from character ${read.brokenAt} on, and is drawn up to there.`,
      );
    const { group, means, called, matrix, usedAt } = around;
    const line = usedAt ?? element.line;
    const words = element.attributes.get("aria-label") ?? "";
    if (around.isLettering && words.trim() !== "" && read.paths.length > 0) {
      const { left, top, right, bottom } = bounds(read.paths.map((path) => movedBy(matrix, path)));
      const at = { x: (left + right) / 2, y: (top + bottom) / 2 };
      this.sheet.write({ text: words, at, group, isRemark: false, line });
      return;
    }
    for (const path of read.paths)
      this.sheet.line({ path: movedBy(matrix, path), means, group, called, isMeasured: false, line });
  }
}

/** What has no lines and is missed by nobody. */
const silent: ReadonlySet<string> = new Set([
  "title",
  "desc",
  "metadata",
  "defs",
  "symbol",
  "clipPath",
  "mask",
  "pattern",
  "marker",
  "linearGradient",
  "radialGradient",
  "filter",
  "view",
  "tspan",
]);

/** What is told as left out, in words. */
const unread: ReadonlyMap<string, string> = new Map([
  ["script", "scripts, which are never run"],
  ["style", "style sheets, which are not read"],
  ["image", "pictures"],
  ["foreignObject", "pages inside the drawing"],
  ["switch", "choices between drawings"],
  ...["animate", "animateTransform", "animateMotion", "set"].map((name) => [name, "movements"] as const),
]);

const isHidden = (attributes: ReadonlyMap<string, string>): boolean =>
  attributes.get("display") === "none" ||
  ["hidden", "collapse"].includes(attributes.get("visibility") ?? "") ||
  /(?:^|;)\s*(?:display\s*:\s*none|visibility\s*:\s*(?:hidden|collapse))\b/.test(attributes.get("style") ?? "");

const classesOf = (attributes: ReadonlyMap<string, string>): string[] => (attributes.get("class") ?? "").split(/\s+/);

const toldIn = (attributes: ReadonlyMap<string, string>): Meaning | "aside" | undefined => {
  const names = [...classesOf(attributes), attributes.get("id") ?? ""];
  for (const name of names) {
    const told = toldByName(name);
    if (told !== undefined) return told;
  }
  return undefined;
};

const calledIn = (attributes: ReadonlyMap<string, string>): string | undefined => {
  const id = attributes.get("id");
  if (id === undefined) return undefined;
  const piece = pieceInId(id);
  // Names that a program numbered through tell nothing, and neither do those of layers.
  return piece ?? (/^[a-zA-Z]{0,9}[-_]?\d[\w.-]*$|^layer/i.test(id) || toldByName(id) !== undefined ? undefined : id);
};

const isRelative = (unit: string): boolean => unit === "" || unit === "px" || unit === "%";

const firstOf = (written: string): string => written.trim().split(/[\s,]+/, 1)[0] ?? "0";
