import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    // The same cases on every run: what fails here fails everywhere, and a green run stays green.
    setupFiles: ["tests/seeded.ts"],
    // Two cores: more workers only wait for one another.
    maxWorkers: 2,
    testTimeout: 30_000,
  },
});
