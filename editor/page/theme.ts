// Light or dark: as the system has it until the user chooses.
import { effect } from "@preact/signals";
import { remembered } from "./remembered.ts";

const system = matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light";

export const theme = remembered<string>("theme", system);

effect(() => {
  document.documentElement.dataset.theme = theme.value === "dark" ? "dark" : "light";
});
