// The same tests try the same cases on every run: what fails here fails everywhere, and a green run stays green.
import { defineConfig } from "vitest/config";

export default defineConfig({ test: { setupFiles: ["tests/seeded.ts"] } });
