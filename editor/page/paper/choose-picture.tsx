// A field to choose a picture with.
import { begin } from "./tracing.ts";

export const ChoosePicture = ({ words }: { readonly words: string }) => (
  <label class="menu-row">
    {words}
    <input
      type="file"
      accept="image/*"
      onChange={({ currentTarget }) => {
        const [picked] = currentTarget.files ?? [];
        if (picked) void begin(picked);
        // The same file can be chosen again.
        currentTarget.value = "";
      }}
    />
  </label>
);
