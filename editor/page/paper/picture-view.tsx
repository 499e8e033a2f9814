// The picture with the points over it: clicked, dragged and zoomed by hand, or worked with a cross by the keyboard.
import { useEffect, useRef } from "preact/hooks";
import { flattened } from "../../../kernel/geometry/area.ts";
import { between, type Point } from "../../../kernel/geometry/point.ts";
import { type Homography, sentBy } from "../../paper/homography.ts";
import { type Stretch, stretchesOf, type TracedPoint } from "../../paper/traced-edges.ts";
import { inWindow, onTable } from "../table/view.ts";
import { cross, frame, keepInFrame, moveBy, moveCross, seen, showWhole, zoomAbout } from "./seen.ts";
import {
  beginMove,
  chosen,
  edgeInHand,
  faults,
  lying,
  marked,
  move,
  nextKind,
  part,
  photograph,
  pick,
  pointsInHand,
  remove,
  say,
  set,
  takeBack,
  traced,
} from "./tracing.ts";

export const PictureView = () => {
  const holder = useRef<HTMLDivElement>(null);
  const over = useRef<SVGSVGElement>(null);
  const picture = photograph.value;
  useEffect(() => {
    const element = holder.current!;
    const watch = new ResizeObserver(() => {
      const wasUnknown = frame.peek().width <= 1;
      frame.value = { width: element.clientWidth, height: element.clientHeight };
      if (wasUnknown) showWhole();
    });
    watch.observe(element);
    // Zooming must not scroll what lies around, which only a listener that is not passive can say.
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      if (event.deltaX !== 0 && !event.ctrlKey) moveBy({ x: -event.deltaX, y: -event.deltaY });
      else zoomAbout(0.998 ** event.deltaY, inFrame(event, element));
    };
    element.addEventListener("wheel", wheel, { passive: false });
    return () => {
      watch.disconnect();
      element.removeEventListener("wheel", wheel);
    };
  }, []);
  useEffect(() => {
    frame.value = { width: holder.current!.clientWidth, height: holder.current!.clientHeight };
    showWhole();
    over.current?.focus({ preventScroll: true });
  }, [picture?.address]);
  const { x, y, scale } = seen.value;
  return (
    <div ref={holder} class="paper-picture">
      {picture && (
        <img
          src={picture.address}
          alt={`Paper to be traced: ${picture.name}`}
          draggable={false}
          style={{ width: `${picture.width}px`, transform: `translate(${x}px, ${y}px) scale(${scale})` }}
        />
      )}
      <svg ref={over} tabindex={0} role="application" aria-label={`Points on the picture. ${keysInWords}`} {...hands}>
        <KnownLines />
        <Outline />
        <Points />
        <Cross />
      </svg>
    </div>
  );
};

const keysInWords =
  "Arrow keys move the cross, with Shift finely. Enter sets a point, with Shift one of the other kind. Backspace takes back. Plus and minus zoom. Tab leads to the point picked last.";

const shown = (p: Point): Point => inWindow(seen.value, p);
const pathOf = (points: readonly Point[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? "M" : "L"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");

/** The rectangle, its first side named, and the line of known length. */
const KnownLines = () => {
  const { rectangle, known } = marked.value;
  const corners = rectangle.map(shown);
  const [first, second] = corners;
  return (
    <g class="known-lines">
      {corners.length > 1 && <Cased d={pathOf(corners) + (corners.length === 4 ? "Z" : "")} kind="known" />}
      {known.length === 2 && <Cased d={pathOf(known.map(shown))} kind="known" />}
      {first && second && part.value === "straighten" && <Words at={between(first, second, 0.5)}>across</Words>}
    </g>
  );
};

/** Every stretch of the outline: as it lies on the paper once that is known, so that a curve is the curve of the recipe. */
const Outline = () => {
  const piece = traced.value;
  const back = "toPicture" in lying.value ? lying.value.toPicture : undefined;
  const outline: readonly TracedPoint[] = piece ? piece.outline : marked.value.outline;
  const stretches = stretchesOf(outline);
  const toPicture = piece ? back : undefined;
  const spot = faults.value.find((fault) => fault.spot)?.spot;
  const ring = spot && back && sentBy(back, spot);
  if (stretches.length === 0)
    return outline.length === 2 ? (
      <Cased d={pathOf(marked.value.outline.map(({ at }) => shown(at)))} kind="open" />
    ) : null;
  const isOpen = part.value === "outline" || part.value === "straighten" || part.value === "size";
  return (
    <g class="traced-lines">
      {stretches.map((stretch) => (
        <Cased
          key={stretch.index}
          d={pathOf(onPicture(stretch, toPicture).map(shown))}
          kind={stretch.edge === edgeInHand.value && !isOpen ? "in-hand" : "traced"}
        />
      ))}
      {!isOpen &&
        stretches.map((stretch) => (
          <Words key={stretch.index} at={middleOf(onPicture(stretch, toPicture).map(shown))}>
            {stretch.edge}
          </Words>
        ))}
      {ring && <circle class="fault-ring" cx={shown(ring).x} cy={shown(ring).y} r={16} />}
    </g>
  );
};

// How far the line that is shown may leave the curve, mm, or pixels where no size is known yet.
const shownWithin = 0.3;

const onPicture = (stretch: Stretch, toPicture: Homography | undefined): Point[] => {
  const line = flattened(stretch.path, shownWithin);
  // A straight edge is straight in the picture too.
  return toPicture ? line.flatMap((p) => sentBy(toPicture, p) ?? []) : line;
};

const middleOf = (line: readonly Point[]): Point =>
  line.length === 2 ? between(line[0]!, line[1]!, 0.5) : (line[Math.floor(line.length / 2)] ?? { x: 0, y: 0 });

/** A line with a pale one under it, to be seen on any picture. */
const Cased = ({ d, kind }: { readonly d: string; readonly kind: string }) => (
  <>
    <path class="casing" d={d} />
    <path class={`on-picture ${kind}`} d={d} />
  </>
);

const Words = ({ at, children }: { readonly at: Point; readonly children: string }) => (
  <text class="picture-words" x={at.x} y={at.y}>
    {children}
  </text>
);

/** The points of the part in hand; those of the outline stay in sight while its edges are named. */
const Points = () => {
  const isKnown = part.value === "straighten" || part.value === "size";
  const canMove = isKnown || part.value === "outline";
  const { outline } = marked.value;
  const tabbed = chosen.value ?? pointsInHand.value.length - 1;
  return (
    <g class="paper-points">
      {pointsInHand.value.map((at, index) => {
        const { x, y } = shown(at);
        const kind = isKnown ? "known" : outline[index]!.kind;
        const look = (
          <>
            <circle class="point-to-find" cx={x} cy={y} r={12} />
            {kind === "curve" ? (
              <circle class="point" cx={x} cy={y} r={5} />
            ) : (
              <rect class="point" x={x - 5} y={y - 5} width={10} height={10} />
            )}
          </>
        );
        const isChosen = index === chosen.value && canMove;
        return canMove ? (
          <g
            key={index}
            data-point={index}
            class={isChosen ? "chosen" : ""}
            role="button"
            tabindex={index === tabbed ? 0 : -1}
            aria-label={`Point ${index + 1}, ${kindInWords(kind)}. Arrow keys move it, Delete takes it away, Page Up and Page Down lead to its neighbors.`}
            onFocus={() => {
              if (chosen.peek() !== index) pick(index);
            }}
            onKeyDown={(event) => keyOnPoint(event, index)}
          >
            {look}
          </g>
        ) : (
          <g key={index}>{look}</g>
        );
      })}
    </g>
  );
};

const kindInWords = (kind: "known" | "corner" | "curve"): string =>
  kind === "known" ? "known" : kind === "corner" ? "a corner" : "on a curve";

const Cross = () => {
  const { x, y } = shown(cross.value);
  return <path class="cross" d={`M${x - 14} ${y}h10M${x + 4} ${y}h10M${x} ${y - 14}v10M${x} ${y + 4}v10`} />;
};

const other = (kind: TracedPoint["kind"]): TracedPoint["kind"] => (kind === "corner" ? "curve" : "corner");

// Pixels that the hand may tremble before a click becomes a drag.
const tremble = 4;

interface Press {
  readonly at: Point;
  last: Point;
  /** The point that the hand came down on. */
  readonly point: number | undefined;
  travelled: boolean;
}

let pressed: Press | undefined;

const inFrame = ({ clientX, clientY }: MouseEvent, element: Element): Point => {
  const { left, top } = element.getBoundingClientRect();
  return { x: clientX - left, y: clientY - top };
};

const pointUnder = (event: Event): number | undefined => {
  const found = (event.target as Element).closest<SVGGElement>("[data-point]")?.dataset.point;
  return found === undefined ? undefined : Number(found);
};

const hands = {
  onPointerDown: (event: PointerEvent): void => {
    if (event.button > 0 || pressed) return;
    const element = event.currentTarget as SVGSVGElement;
    const at = inFrame(event, element);
    pressed = { at, last: at, point: pointUnder(event), travelled: false };
    element.setPointerCapture(event.pointerId);
    if (pressed.point === undefined) element.focus({ preventScroll: true });
  },
  onPointerMove: (event: PointerEvent): void => {
    if (!pressed) return;
    const now = inFrame(event, event.currentTarget as Element);
    const before = pressed.last;
    if (!pressed.travelled && Math.hypot(now.x - pressed.at.x, now.y - pressed.at.y) <= tremble) return;
    if (!pressed.travelled && pressed.point !== undefined) beginMove();
    pressed.travelled = true;
    pressed.last = now;
    if (pressed.point === undefined) moveBy({ x: now.x - before.x, y: now.y - before.y });
    else moveBySeen(pressed.point, { x: now.x - before.x, y: now.y - before.y });
  },
  onPointerUp: (event: PointerEvent): void => {
    const press = pressed;
    pressed = undefined;
    if (!press || press.travelled) return;
    if (press.point !== undefined) {
      pick(press.point);
      (event.currentTarget as Element).querySelector<SVGGElement>(`[data-point="${press.point}"]`)?.focus();
      return;
    }
    cross.value = onTable(seen.peek(), press.at);
    setAtCross(event.shiftKey);
  },
  onPointerCancel: (): void => {
    pressed = undefined;
  },
  onKeyDown: (event: KeyboardEvent): void => {
    if (event.altKey) return;
    if (event.ctrlKey || event.metaKey) {
      if (event.key !== "z") return;
      takeBack();
    } else if (event.key === "Enter") setAtCross(event.shiftKey);
    else if (event.key === "Backspace") takeBack();
    else if (event.key === "+" || event.key === "=") zoomAbout(1.25, inWindow(seen.peek(), cross.peek()));
    else if (event.key === "-") zoomAbout(0.8, inWindow(seen.peek(), cross.peek()));
    else {
      const by = strideOf(event);
      if (!by) return;
      moveCross(by);
    }
    event.preventDefault();
  },
};

const setAtCross = (isOther: boolean): void => {
  const picture = photograph.peek();
  const at = cross.peek();
  if (!picture || at.x < 0 || at.y < 0 || at.x > picture.width || at.y > picture.height) return;
  set(at, isOther ? other(nextKind.peek()) : nextKind.peek());
};

/** CSS pixels that an arrow key moves by, finely with Shift. */
const strideOf = ({ key, shiftKey }: KeyboardEvent): Point | undefined => {
  const by = shiftKey ? 1 : 10;
  switch (key) {
    case "ArrowLeft":
      return { x: -by, y: 0 };
    case "ArrowRight":
      return { x: by, y: 0 };
    case "ArrowUp":
      return { x: 0, y: -by };
    case "ArrowDown":
      return { x: 0, y: by };
    default:
      return undefined;
  }
};

const moveBySeen = (index: number, by: Point): void => {
  const at = pointsInHand.peek()[index];
  const picture = photograph.peek();
  if (!at || !picture) return;
  const { scale } = seen.peek();
  move(index, {
    x: Math.min(picture.width, Math.max(0, at.x + by.x / scale)),
    y: Math.min(picture.height, Math.max(0, at.y + by.y / scale)),
  });
};

const keyOnPoint = (event: KeyboardEvent, index: number): void => {
  const count = pointsInHand.peek().length;
  const by = strideOf(event);
  const layer = (event.currentTarget as Element).parentElement;
  const go = (to: number): void => layer?.querySelector<SVGGElement>(`[data-point="${to}"]`)?.focus();
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (by) {
    // Every press is one to take back; a key that is held down is one stroke.
    if (!event.repeat) beginMove();
    moveBySeen(index, by);
    keepInFrame(pointsInHand.peek()[index]!);
  } else if (event.key === "Delete") {
    const field = layer?.closest<SVGSVGElement>("svg");
    remove(index);
    field?.focus({ preventScroll: true });
  } else if (event.key === "PageDown") go((index + 1) % count);
  else if (event.key === "PageUp") go((index + count - 1) % count);
  else if (event.key === "c" && part.peek() === "outline")
    say(index, { kind: other(marked.peek().outline[index]!.kind) });
  else if (event.key === "Enter" || event.key === " ") pick(index);
  else return;
  event.preventDefault();
  event.stopPropagation();
};
