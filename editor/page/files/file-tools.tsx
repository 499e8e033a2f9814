// What is done with files, at the head of the recipe card.

import { useSignal } from "@preact/signals";
import { useId } from "preact/hooks";
import { ChooseDrawing } from "../bring-in/choose-drawing.tsx";
import { ask, failure, file, isChanged, shelved, text } from "../desk.ts";
import { Menu } from "../menu.tsx";
import { BeginFromPhotograph } from "../paper/begin-from-photograph.tsx";
import { Downloads } from "../print/downloads.tsx";
import { notice, open, openText, save } from "./keeping.ts";
import { linkOf } from "./share-link.ts";

export const FileTools = () => (
  <div class="file-tools">
    <button type="button" onClick={() => void save()} disabled={!isChanged.value}>
      Save
    </button>
    <Menu name="Recipes">
      <OpenFromShelf />
      <OpenByHand />
      <ChooseDrawing />
      <BeginFromPhotograph />
      <ShareLink />
      <Downloads />
    </Menu>
    <span class="notice" role="status">
      {notice.value}
    </span>
  </div>
);

const OpenFromShelf = () => {
  const id = useId();
  const isShelved = shelved.value.some((recipe) => recipe.file === file.value);
  return (
    <div class="menu-row">
      <label for={id}>Open</label>
      <select
        id={id}
        value={file.value}
        onChange={({ currentTarget }) => {
          void open(currentTarget.value);
        }}
      >
        {!isShelved && <option value={file.value}>{file.value}</option>}
        {shelved.value.map((recipe) => (
          <option key={recipe.file} value={recipe.file}>
            {recipe.file}
          </option>
        ))}
      </select>
    </div>
  );
};

const OpenByHand = () => (
  <label class="menu-row">
    Open a file from elsewhere
    <input
      type="file"
      accept=".chalk"
      onChange={async ({ currentTarget }) => {
        const [chosen] = currentTarget.files ?? [];
        if (!chosen) return;
        try {
          openText(chosen.name, new TextDecoder("utf-8", { fatal: true }).decode(await chosen.arrayBuffer()));
        } catch {
          failure.value = `${chosen.name} is not written in UTF-8, so it is no recipe.`;
        }
      }}
    />
  </label>
);

const ShareLink = () => {
  const link = useSignal("");
  const make = async (): Promise<void> => {
    const used = (await ask("filesUsed", {})) ?? [];
    const packed = linkOf([{ file: file.value, text: text.value }, ...used.filter((each) => each.file !== file.value)]);
    if (packed === undefined) {
      failure.value = "The recipe is too long for a link: share its file instead.";
      return;
    }
    link.value = `${location.href.replace(/#.*/, "")}#${packed}`;
    await navigator.clipboard?.writeText(link.value).catch(() => undefined);
  };
  return (
    <div class="menu-row">
      <button type="button" onClick={() => void make()}>
        Make a link to this recipe
      </button>
      {link.value !== "" && <input class="link" aria-label="Link to this recipe" readOnly value={link.value} />}
    </div>
  );
};
