// The lines at the head of a recipe: the language's version, the title, the units of its reports.
import type { Line } from "../../grammar/tree.ts";
import type { Working } from "../evaluate.ts";
import { Problem, RecipeRefused } from "../problem.ts";
import { atTopLevel, fitStatement, operandValue, scalar, text } from "./reading.ts";

/** The newest version of the language that this kernel works. */
export const languageVersion = 1;

const fieldNames = ["by", "made-for", "notes"];

export const chalklineLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  if (working.tree.lines[0] !== line) {
    throw new Problem("chalkline-first", "The chalkline line comes first in a recipe, once.", {
      hint: "Move it to the top.",
    });
  }
  const { kind, value } = scalar(operandValue(line), working);
  if (kind !== "number" || !Number.isInteger(value) || value < 1) {
    throw new Problem("chalkline-version", "The version of the language is a whole number: chalkline 1.", {
      at: line.operands[0]!,
    });
  }
  if (value > languageVersion) {
    // What stands below is not for this version to judge.
    working.diagnostics.length = 0;
    throw new RecipeRefused(
      "chalkline-newer",
      `This recipe is written in version ${value} of the language, and only versions up to ${languageVersion} are known here.`,
      {
        at: line.operands[0]!,
        hint: "Open it with a newer Chalkline.",
      },
    );
  }
};

export const recipeLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  if (working.title !== "") throw new Problem("recipe-twice", "This recipe already has a title.");
  working.title = text(operandValue(line), working);
  for (const { name, value } of line.block?.entries ?? []) {
    working.attempt(line, () => {
      if (!fieldNames.includes(name.text)) {
        throw new Problem("field-unknown", `A recipe has no field called ${name.text}.`, {
          at: name,
          hint: `Write one of ${fieldNames.join(", ")}.`,
        });
      }
      working.fields.set(name.text, text(value, working));
    });
  }
};

export const unitsLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  atTopLevel(line, working);
  const value = operandValue(line);
  const word = value.kind === "name" ? value.path[0]!.text : "";
  if (word !== "in" && word !== "cm" && word !== "mm") {
    throw new Problem("units-unknown", "Results are shown in in, cm or mm.", { at: value });
  }
  working.units = word;
};
