import { configDefaults, defineConfig } from "vitest/config";
import { longTests } from "./tests/longTests.ts";

const project = (name: string, folders: readonly string[], testTimeout = 20_000) => ({
  test: {
    name,
    include: folders.map((folder) => `tests/${folder}/**/*.test.ts`),
    exclude: [...configDefaults.exclude, ...longTests],
    testTimeout,
    hookTimeout: 120_000,
  },
});
const commands = project("commands", ["cli"], 120_000);

// `npm test` leaves out the projects browser and long, which are those of `npm run test:long`.
export default defineConfig({
  test: {
    // By default one processor is left free, which of two is half the machine.
    maxWorkers: "100%",
    projects: [
      project("core", ["cells", "core", "reading"]),
      project("functions", ["definition", "functions", "build", "pages"]),
      project("hosts", ["hosts"], 120_000),
      project("workbooks", ["workbook", "workbooks", "samples"], 120_000),
      { test: { ...commands.test, globalSetup: "tests/cli/setUp.ts" } },
      {
        test: {
          ...project("browser", ["browser"], 120_000).test,
          globalSetup: "tests/browser/setUp.ts",
          // A page that shares its processor with others is slow, and not wrong because of it.
          expect: { poll: { timeout: 60_000 } },
        },
      },
      {
        test: {
          ...project("long", [], 120_000).test,
          include: [...longTests],
          exclude: configDefaults.exclude,
          globalSetup: "tests/cli/setUp.ts",
        },
      },
    ],
  },
});
