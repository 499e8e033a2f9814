// One picture of a hung garment, drawn on a canvas: while the cloth settles there is a new one many times a second.
import { useLayoutEffect, useRef } from "preact/hooks";
import type { Shape } from "../../../kernel/cloth/hang/elevation.ts";
import type { Figure } from "../../../kernel/cloth/hang/figures.ts";
import { boxOf, figureInWords, figureTitle, greyOf } from "../../../kernel/cloth/hang/hang-svg.ts";
import type { Point } from "../../../kernel/geometry/point.ts";
import type { Units } from "../../../kernel/working.ts";

/** A figure at so many pixels to the millimetre, in a box that holds it as it settles. */
export const FigureView = (props: { readonly figure: Figure; readonly units: Units; readonly scale: number }) => {
  const { figure, units, scale } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const box = boxOf(figure);
  const [width, height] = [(box.right - box.left) * scale + 2 * rim, (box.bottom - box.top) * scale + 2 * rim];
  useLayoutEffect(() => {
    const paper = canvas.current?.getContext("2d");
    if (!paper) return;
    const fine = devicePixelRatio;
    paper.canvas.width = Math.ceil(width * fine);
    paper.canvas.height = Math.ceil(height * fine);
    paper.setTransform(
      scale * fine,
      0,
      0,
      scale * fine,
      (rim - box.left * scale) * fine,
      (rim - box.top * scale) * fine,
    );
    draw(paper, figure, scale);
  });
  return (
    <figure class="hung-figure">
      <canvas
        ref={canvas}
        role="img"
        aria-label={figureInWords(figure, units)}
        style={{ width: `${width}px`, height: `${height}px` }}
      />
      <figcaption>{figure.from === "below" ? "from below" : figureTitle(figure)}</figcaption>
    </figure>
  );
};

// Room for the pen round a picture, px.
const rim = 3;

const draw = (paper: CanvasRenderingContext2D, { shapes, straight, hip }: Figure, scale: number): void => {
  const pen = (pixels: number, color: string): void => {
    paper.lineWidth = pixels / scale;
    paper.strokeStyle = color;
    paper.stroke();
  };
  paper.lineJoin = "round";
  if (hip.length > 0) {
    trace(paper, hip);
    paper.fillStyle = "#e6e1d6";
    paper.fill();
    pen(1, "#777");
  }
  for (const shape of shapes) {
    if (shape.kind === "cloth") {
      trace(paper, shape.outline);
      paper.closePath();
      paper.fillStyle = greyOf(shape.tone);
      paper.fill();
      pen(0.4, greyOf(shape.tone));
    } else {
      trace(paper, shape.along);
      pen(penOf(shape), "#1e2a44");
    }
  }
  if (straight.length === 0) return;
  trace(paper, straight);
  paper.closePath();
  paper.setLineDash([5 / scale, 3 / scale]);
  pen(1, "#a8331c");
  paper.setLineDash([]);
};

const penOf = ({ kind }: Shape): number => (kind === "crest" || kind === "seam" ? 0.8 : 1.4);

const trace = (paper: CanvasRenderingContext2D, line: readonly Point[]): void => {
  paper.beginPath();
  line.forEach(({ x, y }, index) => {
    if (index === 0) paper.moveTo(x, y);
    else paper.lineTo(x, y);
  });
};
