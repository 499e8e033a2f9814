// A slip on the table when two texts of one file are there: the user says which is to stay.
import { edit, file, text } from "../desk.ts";
import { choice, compareTheirs, keepMine, takeTheirs } from "./keeping.ts";

export const ChoiceSlip = () => {
  const asked = choice.value;
  if (!asked) return null;
  const put = (whole: string): void => edit([{ from: 0, to: text.peek().length, text: whole }]);
  const isDraft = asked.kind === "draft";
  const isGone = !isDraft && asked.theirs === null;
  return (
    <section class="choice-slip" role="alertdialog" aria-label="Two texts of one recipe">
      <p>
        {isDraft
          ? `There is a draft of ${file.value} that was never saved.`
          : isGone
            ? `${file.value} is no longer on the disk.`
            : `Somebody else has changed ${file.value} on the disk.`}
      </p>
      {!isGone && (
        <button type="button" onClick={() => takeTheirs(put)}>
          {isDraft ? "Bring the draft back" : "Take theirs"}
        </button>
      )}
      <button type="button" onClick={keepMine}>
        {isDraft ? "Forget the draft" : "Keep mine"}
      </button>
      {!isGone && (
        <button type="button" onClick={() => void compareTheirs()}>
          Compare
        </button>
      )}
    </section>
  );
};
