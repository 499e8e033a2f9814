// The row of the menu that brings in a drawing.
import { bringIn, drawingEndings } from "./bringing-in.ts";

export const ChooseDrawing = () => (
  <label class="menu-row">
    Bring in a drawing (SVG, DXF or a table of points)
    <input
      type="file"
      accept={drawingEndings.join(",")}
      onChange={({ currentTarget }) => {
        const [picked] = currentTarget.files ?? [];
        if (picked) void bringIn(picked);
        // The same file can be chosen again.
        currentTarget.value = "";
      }}
    />
  </label>
);
