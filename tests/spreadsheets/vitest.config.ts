import { defineConfig } from "vitest/config";

// Apart from the other tests, because these start a spreadsheet program.
export default defineConfig({
  test: {
    include: ["tests/spreadsheets/**/*.test.ts"],
    globalSetup: ["tests/spreadsheets/setUp.ts"],
    // Every wait ends with what it waits for; the limit only ends one that hangs, on a machine that may be busy.
    testTimeout: 600_000,
    // A workbook of thousands of rows goes through the engine and two offices, on a machine that may be busy.
    hookTimeout: 600_000,
    // A machine with two processors runs one office at a time best.
    maxWorkers: 1,
  },
});
