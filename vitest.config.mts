import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    // These take longer, or need a browser: `npm run test:editor`, `npm run test:long`.
    exclude: ["test/editor/**", "test/long/**", "test/**/fixtures/**"],
    pool: "threads",
    // The tests share no state, so one module graph serves all files of a thread.
    isolate: false,
    // One for each core: a thread often waits for a program that it has started, and of two cores both are wanted.
    maxWorkers: availableParallelism(),
    globalSetup: "test/language-server/session/bundle-folder.ts",
    // Nothing here asserts a time: this only ends a test that hangs, on a machine that may be busy.
    testTimeout: 60_000,
    hookTimeout: 60_000,
    coverage: {
      provider: "v8",
      include: ["client/**/*.ts", "server/**/*.ts", "grammar/**/*.ts"],
      reportsDirectory: "coverage",
    },
  },
});
