// The piece as a recipe, to be laid on the table by itself or written below the recipe that lies there.
import { lengthIn } from "../../../kernel/units.ts";
import { pixelAt } from "../../paper/straightened.ts";
import { pieceText, recipeText } from "../../paper/traced-outline.ts";
import { edit, goTo, text } from "../desk.ts";
import { openNew } from "../files/keeping.ts";
import { Field } from "./field.tsx";
import { faults, finish, lying, marked, said, takeUp, traced } from "./tracing.ts";

export const RecipePart = () => {
  const piece = faults.value.length === 0 ? traced.value : undefined;
  const elsewhere = faults.value.filter(({ part }) => part !== "recipe");
  const isTaken = piece !== undefined && isNamed(text.value, piece.name);
  return (
    <>
      <Field of={said.name} words="Name of the piece" />
      {elsewhere.map(({ words, part }) => (
        <p key={words} class="paper-fault">
          {words}{" "}
          <button type="button" onClick={() => takeUp(part)}>
            Go there
          </button>
        </p>
      ))}
      {piece && (
        <>
          <Exactness />
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: the text is longer than its place, and is read on with the arrow keys */}
          <pre class="paper-text" tabIndex={0} role="region" aria-label="Text of the piece">
            {pieceText(piece)}
          </pre>
          <button
            type="button"
            onClick={() => {
              openNew(`${piece.name}-from-paper.chalk`, recipeText(piece));
              finish();
            }}
          >
            Lay it on the table as a new recipe
          </button>
          <button
            type="button"
            disabled={isTaken}
            onClick={() => {
              writeBelow(pieceText(piece));
              finish();
            }}
          >
            Write it below the open recipe
          </button>
          {isTaken && (
            <p class="paper-fault">
              The open recipe has something called {piece.name} already: give the piece another name to write it there.
            </p>
          )}
        </>
      )}
    </>
  );
};

/** How exactly the picture lets anything be told. */
const Exactness = () => {
  const { value } = lying;
  if ("words" in value) return null;
  const coarsest = Math.max(...marked.value.outline.map(({ at }) => pixelAt(value, at)));
  return (
    <p class="quiet">
      One pixel of the picture is up to {lengthIn(coarsest, "mm")} of paper: it tells nothing more exactly than that.
    </p>
  );
};

/** Whether a recipe names anything by this word at its top level. */
const isNamed = (recipe: string, name: string): boolean =>
  recipe.split("\n").some((line) => {
    const found = /^(?:piece|measure|param|let|fabric|size|step)\s+([A-Za-z0-9-]+)|^use\s.*\sas\s+([A-Za-z0-9-]+)/.exec(
      line,
    );
    return found !== null && (found[1] ?? found[2]) === name;
  });

/** Puts the piece below everything by one edit, and shows it. */
const writeBelow = (piece: string): void => {
  const before = text.peek();
  const gap = before === "" || before.endsWith("\n\n") ? "" : before.endsWith("\n") ? "\n" : "\n\n";
  edit([{ from: before.length, to: before.length, text: `${gap}${piece}\n` }]);
  const from = before.length + gap.length;
  goTo({ from, to: from });
};
