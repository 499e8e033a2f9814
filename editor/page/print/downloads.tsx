// The rows of the menu that hand drawings over: every format, and PDF on the paper that the user chooses.
import { useSignal } from "@preact/signals";
import { useId } from "preact/hooks";
import { papers } from "../../../kernel/paper/papers.ts";
import { ask } from "../desk.ts";
import { remembered } from "../remembered.ts";
import { takeAway } from "./take-away.ts";

const paper = remembered<string>("paper", "a4");

export const Downloads = () => (
  <>
    <OnPaper />
    <InFormats />
  </>
);

const OnPaper = () => {
  const id = useId();
  const isBusy = useSignal(false);
  const chosen = papers.find(({ name }) => name === paper.value) ?? papers[0]!;
  const take = async (): Promise<void> => {
    isBusy.value = true;
    const toDraw = await ask("toDraw", {});
    if (toDraw) await takeAway({ kind: "paper", paper: chosen.name, toDraw }, "");
    isBusy.value = false;
  };
  return (
    <div class="menu-row">
      <label for={id}>Paper to print on</label>
      <select id={id} value={chosen.name} onChange={({ currentTarget }) => (paper.value = currentTarget.value)}>
        {papers.map(({ name, title, use }) => (
          <option key={name} value={name}>
            {title}, {usedAs[use]}
          </option>
        ))}
      </select>
      <button type="button" disabled={isBusy.value} onClick={() => void take()}>
        {isBusy.value ? "Writing …" : `Download: PDF on ${chosen.title}`}
      </button>
    </div>
  );
};

const usedAs = { tiles: "put together", sheets: "in one", roll: "cut off where the pattern ends" } as const;

const InFormats = () => {
  const formats = useSignal<readonly { readonly name: string; readonly title: string }[]>([]);
  if (formats.value.length === 0) {
    void ask("formats", {}).then((known) => {
      if (known) formats.value = known;
    });
  }
  const take = async (format: string): Promise<void> => {
    const toDraw = await ask("toDraw", {});
    if (toDraw) await takeAway({ kind: "drawings", format, toDraw }, `${format}.zip`);
  };
  return (
    <div class="menu-row">
      {formats.value.map(({ name, title }) => (
        <button key={name} type="button" onClick={() => void take(name)}>
          Download: {title}
        </button>
      ))}
    </div>
  );
};
