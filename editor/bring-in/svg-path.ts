// The letters of SVG's `d` as lines (W3C SVG 2, 9.3 "Path data"): all commands, absolute and relative.
import { cubic, endOf, line, type Path, startOf } from "../../kernel/geometry/path.ts";
import { between, distance, type Point } from "../../kernel/geometry/point.ts";
import { toRadians } from "../../kernel/geometry/trig.ts";
import { arcBetween } from "./circle-arc.ts";
import { drawingLimits } from "./drawing-limits.ts";

/** The lines of a `d`, one for each move, as far as it can be read, and where it cannot be read any further. */
export interface PathRead {
  readonly paths: readonly Path[];
  /** The place in the text, counted from 1, at which reading stopped. */
  readonly brokenAt: number | undefined;
}

/** Reads path data; with a fault in it the lines before the fault stand (SVG 2, 9.5.4). */
export const svgPath = (d: string): PathRead => new PathReading(d).read();

const numbersOf: ReadonlyMap<string, number> = new Map([
  ["m", 2],
  ["l", 2],
  ["h", 1],
  ["v", 1],
  ["c", 6],
  ["s", 4],
  ["q", 4],
  ["t", 2],
  ["a", 7],
  ["z", 0],
]);

class PathReading {
  private readonly d: string;
  private at = 0;
  private readonly paths: Path[] = [];
  private spans: Path[number][] = [];
  private count = 0;
  private pen: Point = { x: 0, y: 0 };
  private start: Point = { x: 0, y: 0 };
  /** The control point that `s` or `t` mirrors. */
  private mirrored: { readonly of: "c" | "q"; readonly handle: Point } | undefined;

  constructor(d: string) {
    this.d = d;
  }

  read(): PathRead {
    let before = "";
    for (;;) {
      this.skip(/[\s,]*/y);
      if (this.at >= this.d.length) return this.finished(undefined);
      const from = this.at;
      const command = this.command(before);
      const wanted = command === undefined ? undefined : numbersOf.get(command.toLowerCase());
      // The first command has to be a move.
      if (command === undefined || wanted === undefined || (before === "" && command.toLowerCase() !== "m"))
        return this.finished(from + 1);
      const values = this.values(command, wanted);
      if (values === undefined) return this.finished(this.at + 1);
      if (!this.draw(command, values)) return this.finished(from + 1);
      before = command;
    }
  }

  /** The letter that stands here, or the one before it again where numbers go on. */
  private command(before: string): string | undefined {
    const letter = this.d[this.at]!;
    if (/[a-zA-Z]/.test(letter)) {
      this.at += 1;
      return letter;
    }
    // More numbers behind a move draw lines, and behind a close none may stand.
    return before === "" || before === "z" || before === "Z"
      ? undefined
      : before === "m"
        ? "l"
        : before === "M"
          ? "L"
          : before;
  }

  private values(command: string, wanted: number): number[] | undefined {
    const isArc = command === "a" || command === "A";
    const values: number[] = [];
    for (let index = 0; index < wanted; index += 1) {
      this.skip(index === 0 ? /\s*/y : /\s*(?:,\s*)?/y);
      const found = isArc && (index === 3 || index === 4) ? this.take(/[01]/y) : this.take(numberHere);
      if (found === undefined || !Number.isFinite(Number(found))) return undefined;
      values.push(Number(found));
    }
    return values;
  }

  private take(what: RegExp): string | undefined {
    what.lastIndex = this.at;
    const found = what.exec(this.d)?.[0];
    this.at += found?.length ?? 0;
    return found;
  }

  private skip(what: RegExp): void {
    this.take(what);
  }

  /** Draws one command; false where there would be more lines than any drawing has. */
  private draw(command: string, v: readonly number[]): boolean {
    const isRelative = command >= "a";
    const base = isRelative ? this.pen : { x: 0, y: 0 };
    const spot = (i: number): Point => ({ x: base.x + v[i]!, y: base.y + v[i + 1]! });
    const letter = command.toLowerCase();
    const { pen, mirrored } = this;
    this.mirrored = undefined;
    switch (letter) {
      case "m":
        this.lift();
        this.pen = spot(0);
        this.start = this.pen;
        break;
      case "z":
        this.close();
        break;
      case "l":
        this.lineTo(spot(0));
        break;
      case "h":
        this.lineTo({ x: base.x + v[0]!, y: pen.y });
        break;
      case "v":
        this.lineTo({ x: pen.x, y: base.y + v[0]! });
        break;
      case "c":
        this.curveTo(spot(0), spot(2), spot(4));
        break;
      case "s":
        this.curveTo(mirrored?.of === "c" ? reflected(mirrored.handle, pen) : pen, spot(0), spot(2));
        break;
      case "q":
        this.bendTo(spot(0), spot(2));
        break;
      case "t":
        this.bendTo(mirrored?.of === "q" ? reflected(mirrored.handle, pen) : pen, spot(0));
        break;
      case "a": {
        const end = spot(5);
        const radii = { rx: v[0]!, ry: v[1]!, turn: toRadians(v[2]!) };
        this.add(arcBetween(pen, end, radii, v[3] === 1, v[4] === 1));
        this.pen = end;
        break;
      }
    }
    return this.count <= drawingLimits.spans;
  }

  private lineTo(end: Point): void {
    if (distance(this.pen, end) > 0) this.add([line(this.pen, end)]);
    this.pen = end;
  }

  private curveTo(first: Point, second: Point, end: Point): void {
    const points = [first, second, end];
    if (points.some((p) => distance(p, this.pen) > 0)) this.add([cubic(this.pen, first, second, end)]);
    this.pen = end;
    this.mirrored = { of: "c", handle: second };
  }

  /** A quadratic as the cubic that it is: its handles lie two thirds of the way to the one control point. */
  private bendTo(control: Point, end: Point): void {
    this.curveTo(between(this.pen, control, 2 / 3), between(end, control, 2 / 3), end);
    this.mirrored = { of: "q", handle: control };
  }

  private close(): void {
    const first = this.spans[0];
    if (first && distance(this.pen, this.start) > 0) this.add([line(this.pen, this.start)]);
    this.lift();
    this.pen = this.start;
  }

  private add(path: Path): void {
    this.count += path.length;
    this.spans.push(...path);
  }

  /** Ends the line in hand. */
  private lift(): void {
    if (this.spans.length > 0) this.paths.push(this.spans);
    this.spans = [];
  }

  private finished(brokenAt: number | undefined): PathRead {
    this.lift();
    return { paths: this.paths.filter((path) => !isDot(path)), brokenAt };
  }
}

const numberHere = /[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y;

const reflected = (handle: Point, about: Point): Point => ({ x: 2 * about.x - handle.x, y: 2 * about.y - handle.y });

const isDot = (path: Path): boolean =>
  path.length === 1 && path[0]!.kind === "line" && distance(startOf(path), endOf(path)) === 0;
