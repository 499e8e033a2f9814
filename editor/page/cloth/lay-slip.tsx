// The slip that shows how the pieces lie on a cloth, and hands the drawing over.
import { useEffect, useState } from "preact/hooks";
import { clothInWords } from "../../../kernel/cloth/lay/cloth-in-words.ts";
import type { LaySize } from "../../files/lay-files.ts";
import { takeAway } from "../print/take-away.ts";
import { openPart } from "../table/looks.ts";
import { clothShown, isOld, laid } from "./laying.ts";

export const LaySlip = () => {
  const found = laid.value;
  const index = found ? found.lay.cloths.findIndex(({ fabric }) => fabric === clothShown.value) : -1;
  const cloth = found?.lay.cloths[index];
  if (!found || !cloth || cloth.length === 0) return null;
  const { left, top, width, height } = openPart.value;
  const words = clothInWords(cloth, found.units);
  const take = (size: LaySize): void =>
    void takeAway({ kind: "lay", cloths: found.lay.cloths, fabric: cloth.fabric, units: found.units, size }, "");
  return (
    <section
      class={isOld.value ? "card lay-slip old" : "card lay-slip"}
      aria-label={`How the pieces lie on ${cloth.fabric}`}
      style={{
        left: `${left + 30}px`,
        bottom: `${innerHeight - top - height + 12}px`,
        width: `${width - 42}px`,
        maxHeight: `${height - 90}px`,
      }}
    >
      <header class="card-head">
        <h2>On the cloth: {cloth.fabric}</h2>
        <button type="button" class="plain-button" onClick={() => (clothShown.value = undefined)}>
          Put aside
        </button>
      </header>
      <div class="card-body">
        <Drawn svg={found.drawings[index]!} words={words} />
        <p class="quiet">
          Found in a moment, while a recipe is written. Before cloth is bought, <code>chalkline lay</code> looks longer.
        </p>
        <div class="lay-files">
          <button type="button" onClick={() => take("tenth")}>
            Download: PDF at a tenth of the size
          </button>
          <button type="button" onClick={() => take("life-size")}>
            Download: PDF as large as life
          </button>
        </div>
      </div>
    </section>
  );
};

/** A drawing that the page shows as a picture, so that nothing in it can be more than that. */
const Drawn = ({ svg, words }: { readonly svg: string; readonly words: string }) => {
  const [address, setAddress] = useState("");
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is wider than a narrow table, and is moved along with the arrow keys
    <div class="lay-drawing" tabIndex={0} role="group" aria-label="Drawing of the lay">
      {address !== "" && <img src={address} alt={words} />}
    </div>
  );
};
