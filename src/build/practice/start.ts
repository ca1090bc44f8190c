import { spawnSync } from "node:child_process";
import { join } from "node:path";
import process from "node:process";
import { isFresh } from "./isFresh.ts";
import { serveFolder } from "./serveFolder.ts";

const usualPort = 3000;
const ports = Array.from({ length: 10 }, (_, index) => usualPort + index);
const folder = join(process.cwd(), "dist", "practice");

/** `npm start`: the answers in the terminal, then the practice sheet until the person ends it. */
async function start(given: readonly string[]): Promise<number> {
  const serve = !given.includes("--no-serve");
  const others = given.filter((word) => word !== "--no-serve");
  const { status } = spawnSync(process.execPath, ["--import", "tsx", "src/cli/main.ts", "start", ...others], {
    stdio: "inherit",
  });
  if (status !== 0 || !serve) return status ?? 1;
  if (!isFresh(join(folder, "index.html"), ["src", "functions", "samples/flock-foot-book.xlsx", "package-lock.json"])) {
    process.stdout.write("\nBuilding the practice sheet, which takes half a minute …\n");
    const { bundlePractice } = await import("./bundlePractice.ts");
    await bundlePractice(folder);
  }
  const { address, port } = await serveFolder(folder, ports);
  if (port !== usualPort) process.stdout.write(`\nPort ${usualPort} is taken by another program.`);
  process.stdout.write(`\nThe practice sheet: ${address}\nEnd it with Ctrl+C.\n`);
  return 0;
}

start(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: Error) => {
    process.stderr.write(`${error.message}\n`);
    process.exitCode = 1;
  },
);
