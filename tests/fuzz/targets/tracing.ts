// Drawings from elsewhere, each of its own kind: a reader makes a recipe of one, which can be read and worked, or says in words and
// at a line of the file why there is none.
import { type BringInOptions, broughtIn } from "../../../editor/bring-in/brought-in.ts";
import { type DrawingKind, drawingKinds } from "../../../editor/bring-in/drawing-kinds.ts";
import { dice } from "../dice.ts";
import { finite, plainlyTold } from "../figures-told.ts";
import { holds, type Target } from "../target.ts";
import { chalkline } from "../worked-once.ts";

/** The target of one kind, around what reads. */
export const tracingBy = (kind: DrawingKind, bring: typeof broughtIn): Target => ({
  name: `trace ${kind}`,
  takes: kind,
  run({ text }) {
    const roll = dice(text);
    const units = ([undefined, undefined, "in", "mm"] as const)[roll(4)];
    const options: BringInOptions = {
      scale: [1, 1, 0.5, 7][roll(4)]!,
      line: (["cutting", "sewing"] as const)[roll(2)]!,
      ...(units && { units }),
    };
    const made = bring(text, kind, `drawing.${kind}`, options, chalkline);
    for (const said of [...made.notes, ...made.leftOut.map(({ what }) => what)]) plainlyTold(said, text, "a remark");
    if ("problem" in made) {
      const { message, line } = made.problem;
      // A reader of XML says so of an entity that the file does not define.
      plainlyTold(message.replace("undefined entity", ""), text, "why there is no recipe");
      holds(/[.!?”]$/.test(message), "why there is no recipe is no sentence", message);
      // One behind the last, where a file breaks off.
      const lines = text.split(/\r\n|[\r\n]/).length + 1;
      holds(
        line === undefined || (line >= 1 && line <= lines),
        "a line that the file does not have",
        `${line} of ${lines}`,
      );
      return;
    }
    plainlyTold(made.recipe, text, "the recipe");
    finite([made.straying, made.pieces], "what is traced");
    const { diagnostics } = chalkline.parse({ file: "traced.chalk", text: made.recipe });
    holds(diagnostics.length === 0, "a traced recipe cannot be read", diagnostics[0]?.message);
    const { garment } = chalkline.work({ file: "traced.chalk", text: made.recipe });
    finite(garment, "what is traced");
    holds(garment.pieces.size === made.pieces.length, "a traced piece is not in the recipe");
  },
});

export const tracingAll: readonly Target[] = drawingKinds.map((kind) => tracingBy(kind, broughtIn));
