// A button with more behind it.
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";

/** Opens what it holds under its button; Escape and going elsewhere close it. */
export const Menu = ({ name, children }: { readonly name: string; readonly children: ComponentChildren }) => {
  const isOpen = useSignal(false);
  return (
    <div
      class="menu"
      onKeyDown={({ key }) => {
        if (key === "Escape") isOpen.value = false;
      }}
      onFocusOut={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null) && event.relatedTarget)
          isOpen.value = false;
      }}
    >
      <button
        type="button"
        aria-expanded={isOpen.value}
        onClick={() => {
          isOpen.value = !isOpen.value;
        }}
      >
        {name}
      </button>
      {isOpen.value && <div class="menu-things">{children}</div>}
    </div>
  );
};
