import { defineConfig } from "vitest/config";

// Tests of plain functions, which leave nothing behind that another file could notice: they share what they have loaded.
const plain = [
  "alterations",
  "blocks",
  "checks",
  "cloth",
  "drawing",
  "garments",
  "geometry",
  "report",
  "sizes",
  "editor/assist",
].map((folder) => `tests/${folder}/**/*.test.ts`);

export default defineConfig({
  test: {
    // The same cases on every run: what fails here fails everywhere, and a green run stays green.
    setupFiles: ["tests/seeded.ts"],
    // Two cores: more workers only wait for one another.
    maxWorkers: 2,
    testTimeout: 30_000,
    projects: [
      { extends: true, test: { name: "plain", include: plain, isolate: false } },
      { extends: true, test: { name: "program", include: ["tests/**/*.test.ts"], exclude: plain } },
    ],
  },
});
