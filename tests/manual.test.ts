// The manual in recipes/ is what the declarations say now; CHALKLINE_UPDATE=1 rewrites it.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { manual } from "../kernel/manual.ts";
import { vocabulary } from "../kernel/vocabulary.ts";

const file = fileURLToPath(new URL("../recipes/MANUAL.md", import.meta.url));

test("recipes/MANUAL.md is up to date (npm run manual)", () => {
  if (process.env.CHALKLINE_UPDATE) writeFileSync(file, manual(vocabulary));
  expect(readFileSync(file, "utf8")).toBe(manual(vocabulary));
});
