import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/editor/**", "**/node_modules/**"],
    setupFiles: ["tests/support/equal-places.ts"],
    testTimeout: 30_000,
    coverage: {
      provider: "v8",
      include: ["language/**/*.ts"],
      exclude: ["language/generated/**"],
      reporter: ["text-summary", "html"],
      // What every other part of the program rests on.
      thresholds: { "language/{core,syntax,derive}/**/*.ts": { statements: 95, branches: 90 } },
    },
  },
});
