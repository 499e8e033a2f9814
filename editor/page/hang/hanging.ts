// What the page knows of the garment as it hangs: the formula's picture at once, and once the hands rest the cloth settling.
import { effect, signal } from "@preact/signals";
import type { Figure } from "../../../kernel/cloth/hang/figures.ts";
import { ask, worked } from "../desk.ts";
import { remembered } from "../remembered.ts";
import { settlerLine } from "./open-settler.ts";
import type { FromSettler } from "./spoken.ts";

/** Whether the user wants to see it. */
export const isHanging = remembered("hanging", false);

/** Its pictures, and what they take for granted; undefined until something has hung. */
export const hung = signal<
  | { readonly figures: readonly Figure[]; readonly notes: readonly string[]; readonly units: "in" | "cm" | "mm" }
  | undefined
>(undefined);

/** How far the settling is. */
export const settling = signal<"by formula" | "settling" | NonNullable<FromSettler["atRest"]>>("by formula");

// So long after the last change, ms, the cloth begins to settle.
const rest = 700;

let turn = 0;

const settler = settlerLine(({ turn: of, figures, atRest }) => {
  const shown = hung.peek();
  if (of !== turn || !shown) return;
  // The straight version does not move; it is the formula's throughout.
  const moved = figures.map((figure, index) => ({ ...figure, straight: shown.figures[index]?.straight ?? [] }));
  hung.value = { ...shown, figures: moved };
  settling.value = atRest ?? "settling";
});

/** Begins to follow the table. */
export const followTable = (): void => {
  effect(() => {
    const isWanted = isHanging.value && worked.value !== undefined;
    turn += 1;
    settler.settle({ turn });
    if (isWanted) void hangAnew(turn);
  });
};

const hangAnew = async (own: number): Promise<void> => {
  const pictures = await ask("hanging", {});
  if (own !== turn || !pictures) return;
  hung.value = pictures;
  settling.value = "by formula";
  await new Promise((resolve) => setTimeout(resolve, rest));
  if (own !== turn || matchMedia("(prefers-reduced-motion: reduce)").matches) return;
  const hanging = await ask("meshes", {});
  if (own === turn && hanging) settler.settle({ turn: own, hanging });
};
