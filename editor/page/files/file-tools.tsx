// What is done with files, at the head of the recipe card.

import { useSignal } from "@preact/signals";
import { strToU8, zipSync } from "fflate";
import { useId } from "preact/hooks";
import { ask, failure, file, isChanged, shelved, text } from "../desk.ts";
import { Menu } from "../menu.tsx";
import { BeginFromPhotograph } from "../paper/begin-from-photograph.tsx";
import { handOver } from "./hand-over.ts";
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
      <BeginFromPhotograph />
      <ShareLink />
      <TakeAway />
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

/** Every format that the kernel can write. */
const TakeAway = () => {
  const formats = useSignal<readonly { readonly name: string; readonly title: string }[]>([]);
  if (formats.value.length === 0) {
    void ask("formats", {}).then((known) => {
      if (known) formats.value = known;
    });
  }
  const take = async (format: string): Promise<void> => {
    const files = await ask("written", { format });
    if (!files || files.length === 0) return;
    const base = file.value.slice(file.value.lastIndexOf("/") + 1).replace(/\.chalk$/, "");
    // The same drawings give the same bytes: an archive's dates are all the same.
    const packed = zipSync(Object.fromEntries(files.map(({ file: name, text: content }) => [name, strToU8(content)])), {
      mtime: "1980-01-01T00:00:00",
    });
    handOver(`${base}-${format}.zip`, "application/zip", packed);
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
