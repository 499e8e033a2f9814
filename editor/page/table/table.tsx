// The cutting table: all pieces on tissue, to be moved about under the window, looked at closely and pointed at.
import { useSignalEffect } from "@preact/signals";
import { useRef } from "preact/hooks";
import type { Point } from "../../../kernel/geometry/point.ts";
import { file, held, type Pointed, picture, pointed } from "../desk.ts";
import { Grid } from "./grid.tsx";
import { HeldAgainst } from "./held-against.tsx";
import { lit } from "./lit.ts";
import { fitAll, openPart, showsBefore, showsCutting, view } from "./looks.ts";
import { Piece } from "./piece.tsx";
import { pointedAt } from "./pointed-at.ts";
import { pulling } from "./pulling.ts";
import { Rulers } from "./rulers.tsx";
import { moved, onTable, type View, zoomed } from "./view.ts";
import { Writing } from "./writing.tsx";

/** The table with everything that lies on it. */
export const Table = () => {
  const window = useRef<SVGSVGElement>(null);
  const ground = useRef<SVGGElement>(null);

  // The view changes many times a second: only one attribute and one property follow it, and no piece is drawn anew.
  useSignalEffect(() => {
    const { x, y, scale } = view.value;
    ground.current?.setAttribute("transform", `translate(${x} ${y}) scale(${scale})`);
    window.current?.style.setProperty("--pixel", `${1 / scale}px`);
  });
  useFirstFit();

  const shown = picture.value;
  const against = held.value;
  return (
    <svg ref={window} class="table" tabindex={0} role="group" aria-label="Cutting table" {...hands}>
      <Grid />
      <g ref={ground}>
        {against && shown && <HeldAgainst held={against.picture} shown={shown} />}
        {shown?.pieces.map((piece) => (
          <Piece
            key={piece.name}
            piece={piece}
            lit={lit.value}
            showsBefore={showsBefore.value}
            showsCutting={showsCutting.value}
          />
        ))}
      </g>
      <Writing />
      <Rulers />
    </svg>
  );
};

/** Fits the pieces into the window the first time that there are any of this file. */
const useFirstFit = (): void => {
  const fittedFor = useRef<string | undefined>(undefined);
  useSignalEffect(() => {
    const shown = picture.value;
    if (openPart.value.width <= 0 || shown === undefined || shown.pieces.length === 0) return;
    if (fittedFor.current === file.value) return;
    fittedFor.current = file.value;
    fitAll();
  });
};

// Pixels that the hand may tremble before a click becomes a pull.
const tremble = 4;

/** The fingers or the mouse on the table: where each is now. */
const fingers = new Map<number, Point>();
let pressed: { readonly at: Point; readonly on: Pointed | undefined; travelled: boolean } | undefined;

const here = ({ clientX: x, clientY: y }: MouseEvent): Point => ({ x, y });

const hands = {
  onWheel: (event: WheelEvent): void => {
    event.preventDefault();
    // A trackpad moves sideways and pinches with the control key held; a wheel zooms.
    if (event.deltaX !== 0 && !event.ctrlKey) view.value = moved(view.value, { x: -event.deltaX, y: -event.deltaY });
    else view.value = zoomed(view.value, 0.998 ** event.deltaY, here(event));
  },
  onPointerDown: (event: PointerEvent): void => {
    if (event.button > 1) return;
    fingers.set(event.pointerId, here(event));
    pressed = { at: here(event), on: pointedAt(event.target), travelled: fingers.size > 1 };
    if (fingers.size === 1 && pressed.on) pulling.press(pressed.on, onTable(view.value, pressed.at));
    capture(event);
  },
  onPointerMove: (event: PointerEvent): void => {
    const before = fingers.get(event.pointerId);
    if (!before) {
      pointed.value = pointedAt(event.target);
      return;
    }
    const now = here(event);
    fingers.set(event.pointerId, now);
    if (pressed && !pressed.travelled && Math.hypot(now.x - pressed.at.x, now.y - pressed.at.y) > tremble)
      pressed.travelled = true;
    if (!pressed?.travelled) return;
    if (fingers.size === 2) view.value = pinched(view.value, event.pointerId, before, now);
    else if (!pulling.pull(onTable(view.value, now)))
      view.value = moved(view.value, { x: now.x - before.x, y: now.y - before.y });
  },
  onPointerUp: (event: PointerEvent): void => {
    const { on, travelled } = pressed ?? {};
    fingers.delete(event.pointerId);
    const wasPull = pulling.release();
    if (pressed && !travelled && !wasPull) pointed.value = on;
    if (pressed && !travelled && on) pulling.click(on);
    if (fingers.size === 0) pressed = undefined;
  },
  onPointerCancel: (event: PointerEvent): void => {
    fingers.delete(event.pointerId);
    pulling.release();
    pressed = undefined;
  },
  onPointerLeave: (): void => {
    if (fingers.size === 0) pointed.value = undefined;
  },
  onKeyDown: (event: KeyboardEvent): void => {
    const next = afterKey(view.value, event.key);
    if (!next || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    view.value = next;
  },
};

const capture = (event: PointerEvent): void => {
  (event.currentTarget as Element).setPointerCapture(event.pointerId);
};

/** Two fingers move and zoom the table together. */
const pinched = (from: View, id: number, before: Point, now: Point): View => {
  const other = [...fingers].find(([finger]) => finger !== id)?.[1];
  if (!other) return from;
  const apart = (p: Point): number => Math.max(1, Math.hypot(p.x - other.x, p.y - other.y));
  return zoomed(from, apart(now) / apart(before), other);
};

const step = 60;

const afterKey = (from: View, key: string): View | undefined => {
  const { left, top, width, height } = openPart.value;
  const middle = { x: left + width / 2, y: top + height / 2 };
  switch (key) {
    case "ArrowLeft":
      return moved(from, { x: step, y: 0 });
    case "ArrowRight":
      return moved(from, { x: -step, y: 0 });
    case "ArrowUp":
      return moved(from, { x: 0, y: step });
    case "ArrowDown":
      return moved(from, { x: 0, y: -step });
    case "+":
    case "=":
      return zoomed(from, 1.25, middle);
    case "-":
      return zoomed(from, 0.8, middle);
    default:
      return undefined;
  }
};
