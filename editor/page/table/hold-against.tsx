// Chooses what the drawing is held against: nothing, the saved text, or an earlier version of this file.
import { ask, held, savedText } from "../desk.ts";
import { versions } from "../files/versions.ts";

/** The choice among versions; the one that is chosen lies under the pieces. */
export const HoldAgainst = () => {
  const hold = async (chosen: string): Promise<void> => {
    if (chosen === "") {
      held.value = undefined;
      return;
    }
    const version =
      chosen === "saved" ? { name: "as it was saved", text: savedText.peek() } : versions.peek()[Number(chosen)];
    const picture = version && (await ask("pictureOfText", { text: version.text }));
    if (picture) held.value = { name: version.name, picture };
  };
  return (
    <label class="choice">
      hold against
      <select
        value={held.value ? undefined : ""}
        onChange={({ currentTarget }) => {
          void hold(currentTarget.value);
        }}
      >
        <option value="">nothing</option>
        <option value="saved">the saved text</option>
        {versions.value.map(({ name }, index) => (
          <option key={name} value={index}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
};
