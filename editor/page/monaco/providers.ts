// What monaco asks about a recipe, passed on to the worker; one file a kind of question.
import type { OpenedWith } from "./opened-with.ts";
import { actionsFrom } from "./providers/actions.ts";
import { completionFrom } from "./providers/completion.ts";
import { goingFrom } from "./providers/going.ts";
import { hoverFrom } from "./providers/hover.ts";
import { shapeFrom } from "./providers/shape.ts";
import { signatureFrom } from "./providers/signature.ts";
import { valuesFrom } from "./providers/values.ts";

/** Registers everything that the worker can answer; `file` is the one on the table now. */
export const registerProviders = ({ ask, openFile, textOf, tell }: OpenedWith, file: () => string): void => {
  const questioner = { ask, file, openFile, textOf, tell };
  hoverFrom(questioner);
  completionFrom(questioner);
  signatureFrom(questioner);
  goingFrom(questioner);
  shapeFrom(questioner);
  valuesFrom(questioner);
  actionsFrom(questioner);
};
