import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: fileURLToPath(new URL("../..", import.meta.url)),
    include: ["tests/editor/**/*.test.ts"],
    globalSetup: ["tests/editor/global-setup.ts"],
    // One editor and one browser at a time: on a small machine two of each only make both slow.
    fileParallelism: false,
    testTimeout: 240_000,
    hookTimeout: 240_000,
    retry: 1,
  },
});
