// A part of a card that is opened when it is wanted.
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";

/** What nobody reads is not written: it would be written anew at every key. */
export const FoldedPart = ({
  title,
  children,
}: {
  readonly title: string;
  readonly children: () => ComponentChildren;
}) => {
  const isOpen = useSignal(false);
  return (
    <details
      open={isOpen.value}
      onToggle={({ currentTarget }) => {
        isOpen.value = currentTarget.open;
      }}
    >
      <summary>{title}</summary>
      {isOpen.value && children()}
    </details>
  );
};
