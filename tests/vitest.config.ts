import { defineConfig } from "vitest/config";

export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    include: ["tests/**/*.test.ts"],
    setupFiles: ["tests/set-up.ts"],
    testTimeout: 240_000,
    hookTimeout: 240_000,
    reporters: ["default"],
  },
});
