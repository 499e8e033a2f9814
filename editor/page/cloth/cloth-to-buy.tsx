// How much of every cloth to buy, at the foot of the dials: live while one is turned, and a way to the drawing of the lay.
import { useSignal, useSignalEffect } from "@preact/signals";
import { boughtInWords } from "../../../kernel/cloth/lay/cloth-in-words.ts";
import type { LaidCloth } from "../../../kernel/cloth/lay/lay-of.ts";
import { lengthIn } from "../../../kernel/units.ts";
import type { Units } from "../../../kernel/working.ts";
import { clothShown, isOld, laid, lengthBefore } from "./laying.ts";
import "./cloth.css";

/** Nothing where the recipe has no `cut` line. */
export const ClothToBuy = () => {
  const found = laid.value;
  return (
    <>
      {found && (
        <section
          class={isOld.value ? "cloth-to-buy old" : "cloth-to-buy"}
          aria-label="Cloth to buy"
          aria-busy={isOld.value}
        >
          <h3>Cloth to buy</h3>
          {found.lay.cloths.map((cloth) => (
            <OneCloth key={cloth.fabric} cloth={cloth} units={found.units} />
          ))}
          {found.lay.none.map(({ because }) => (
            <p key={because} class="cloth-fault">
              {because}
            </p>
          ))}
        </section>
      )}
      <Spoken />
    </>
  );
};

const OneCloth = ({ cloth, units }: { readonly cloth: LaidCloth; readonly units: Units }) => {
  const { fabric, length, tooWide, notLaid } = cloth;
  const isShown = clothShown.value === fabric;
  return (
    <>
      {length > 0 && (
        <button
          type="button"
          class="plain-button cloth-figure"
          aria-expanded={isShown}
          title="Show how the pieces lie"
          onClick={() => (clothShown.value = isShown ? undefined : fabric)}
        >
          <strong>{boughtInWords(cloth.lengthToBuy, units)}</strong> of {fabric}
          <span class="cloth-length"> {takenInWords(cloth, units)}</span>
        </button>
      )}
      {tooWide.map(({ piece, message, hint }) => (
        <p key={piece} class="cloth-fault">
          {message} <span class="hint">{hint}</span>
        </p>
      ))}
      {notLaid.map(({ piece, because }) => (
        <p key={piece} class="cloth-fault">
          {because}
        </p>
      ))}
    </>
  );
};

/** "174.6 cm, 6 cm more": to the millimeter, for a lay tells nothing finer. */
const takenInWords = (cloth: LaidCloth, units: Units): string => {
  const taken = lengthIn(Math.round(cloth.length), units);
  const before = lengthBefore(cloth);
  if (before === undefined) return taken;
  const more = Math.round(cloth.length) - Math.round(before);
  if (more === 0) return `${taken}, as before`;
  return `${taken}, ${lengthIn(Math.abs(more), units)} ${more > 0 ? "more" : "less"}`;
};

// So long, ms, the figures have to rest before they are read out: nobody listens to every step of a turn.
const rest = 1200;

/** The same for those who do not see it, once it has come to rest and only where it is another. */
const Spoken = () => {
  const words = useSignal("");
  useSignalEffect(() => {
    const found = laid.value;
    if (!found || isOld.value) return;
    const { cloths, none } = found.lay;
    const now = [
      ...cloths.flatMap((cloth) => [
        ...(cloth.length > 0
          ? [
              `Buy ${boughtInWords(cloth.lengthToBuy, found.units)} of ${cloth.fabric}: ${takenInWords(cloth, found.units)}.`,
            ]
          : []),
        ...cloth.tooWide.flatMap(({ message, hint }) => [message, hint]),
        ...cloth.notLaid.map(({ because }) => because),
      ]),
      ...none.map(({ because }) => because),
    ].join(" ");
    const timer = setTimeout(() => {
      words.value = now;
    }, rest);
    return () => clearTimeout(timer);
  });
  return (
    <p class="unseen" role="status">
      {words.value}
    </p>
  );
};
