// Every piece the garment is sewn from is cut from some cloth.
import { defineCheck } from "../check.ts";
import { listInWords } from "../walk.ts";
import type { Cut, Garment, Judgement, Piece, Seam } from "../working.ts";

export const cutFrom = defineCheck({
  name: "cut-from",
  since: "0.1",
  title: "Every piece that is sewn is cut from a fabric, once a recipe cuts anything.",
  why: "A piece that nobody cuts is missed at the sewing table, after the cloth has been put away.",
  passes: `chalkline 1
recipe "Usher's vest, both pieces cut"
units cm

fabric shell "satin" width 150 cm weight 200 gsm

piece front {
  point A = (0, 0)
  point B = A right 25 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line opening = A to D
  outline yoke-edge, side, hem, opening
  grain along opening
  allow yoke-edge, side, hem, opening by 1 cm
}

piece back {
  point A = (0, 0)
  point B = A right 27 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline yoke-edge, side, hem, center
  grain along center
  allow yoke-edge, side, hem, center by 1 cm
}

seam front.side with back.side
cut front 2 from shell
cut back 2 from shell
`,
  fails: `chalkline 1
recipe "Usher's vest, its back forgotten"
units cm

fabric shell "satin" width 150 cm weight 200 gsm

piece front {
  point A = (0, 0)
  point B = A right 25 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line opening = A to D
  outline yoke-edge, side, hem, opening
  grain along opening
  allow yoke-edge, side, hem, opening by 1 cm
}

piece back {
  point A = (0, 0)
  point B = A right 27 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline yoke-edge, side, hem, center
}

seam front.side with back.side
cut front 2 from shell
`,

  // A recipe that cuts nothing is a block, to be used by others.
  *judge(garment) {
    if (garment.cuts.length === 0) return;
    for (const cut of garment.cuts) yield* namesExist(cut, garment);
    for (const piece of garment.pieces.values()) {
      const seam = garment.seams.find(({ first, second }) =>
        [...first, ...second].some((run) => run.piece === piece.name),
      );
      // Where a line failed it may have been the very line that cuts the piece.
      if (seam && !piece.doubtful && !garment.incomplete) yield* sewnAndCut(piece, seam, garment);
    }
  },
});

function* namesExist(cut: Cut, garment: Garment): Iterable<Judgement> {
  const about = { on: cut.piece, where: cut.drawnBy, found: cut.count, wanted: "a piece and a fabric" } as const;
  if (garment.pieces.get(cut.piece)?.doubtful) return;
  if (!garment.pieces.has(cut.piece)) {
    yield {
      ...about,
      verdict: "error",
      found: "no such piece",
      message: `This line cuts ${cut.piece}, but no piece has that name.`,
      hint: "Name a piece drawn above this line.",
    };
  } else if (!garment.fabrics.has(cut.fabric)) {
    yield {
      ...about,
      verdict: "error",
      found: "no such fabric",
      message: `This line cuts ${cut.piece} from ${cut.fabric}, but no fabric has that name.`,
      hint: `Add a line \`fabric ${cut.fabric} "TITLE" width LENGTH\` above it.`,
    };
  } else {
    yield { ...about, verdict: "pass", message: `${cut.piece} is cut ${times(cut.count)} from ${cut.fabric}.` };
  }
}

const times = (count: number): string => (count === 1 ? "once" : `${count} times`);

// What is cut has been judged with its cut line.
function* sewnAndCut(piece: Piece, seam: Seam, garment: Garment): Iterable<Judgement> {
  if (garment.cuts.some((cut) => cut.piece === piece.name)) return;
  const other = seam.first.some((run) => run.piece === piece.name) ? seam.second : seam.first;
  yield {
    on: piece.name,
    verdict: "error",
    found: "not cut",
    wanted: "cut from a fabric",
    where: piece.drawnBy,
    message: `${piece.name} is sewn to ${listInWords(other)}, but it is not cut from any fabric.`,
    hint: `Add a line \`cut ${piece.name} COUNT from FABRIC\`.`,
    related: [{ where: seam.drawnBy, message: "It is sewn here." }],
  };
}
