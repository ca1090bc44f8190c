import { defineConfig } from "vitest/config";

const project = (name: string, include: string[], testTimeout = 20_000, exclude: string[] = []) => ({
  test: { name, include, exclude, testTimeout, hookTimeout: 120_000 },
});

// These make whole packages, so they stand with the other tests that build.
const packages = ["tests/build/package.test.ts", "tests/build/commandLinePackage.test.ts"];

export default defineConfig({
  test: {
    projects: [
      project("core", ["tests/cells/**/*.test.ts", "tests/core/**/*.test.ts", "tests/reading/**/*.test.ts"]),
      project(
        "functions",
        [
          "tests/definition/**/*.test.ts",
          "tests/functions/**/*.test.ts",
          "tests/build/**/*.test.ts",
          "tests/pages/**/*.test.ts",
        ],
        undefined,
        packages,
      ),
      project("hosts", ["tests/hosts/**/*.test.ts", ...packages], 120_000),
      project(
        "workbooks",
        [
          "tests/workbook/**/*.test.ts",
          "tests/cli/**/*.test.ts",
          "tests/samples/**/*.test.ts",
          "tests/workbooks/**/*.test.ts",
        ],
        120_000,
      ),
      {
        test: {
          ...project("browser", ["tests/browser/**/*.test.ts"], 120_000).test,
          globalSetup: "tests/browser/setUp.ts",
        },
      },
    ],
  },
});
