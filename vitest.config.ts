import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    // Two cores: more workers only wait for one another.
    maxWorkers: 2,
    testTimeout: 30_000,
  },
});
