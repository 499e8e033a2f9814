// The row of the menu that begins a piece from a photograph, or goes on with one that was put aside.
import { ChoosePicture } from "./choose-picture.tsx";
import { isOpen, photograph } from "./tracing.ts";

export const BeginFromPhotograph = () => (
  <div class="menu-row">
    <ChoosePicture words="Begin from a photograph" />
    {photograph.value && !isOpen.value && (
      <button
        type="button"
        onClick={() => {
          isOpen.value = true;
        }}
      >
        Go on with {photograph.value.name}
      </button>
    )}
  </div>
);
