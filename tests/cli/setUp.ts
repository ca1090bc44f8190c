import { execFileSync } from "node:child_process";

/** Builds the command once before the tests of the command line, as `npm run build:cli` does. */
export default function setUp(): void {
  execFileSync(process.execPath, ["--import", "tsx", "src/build/release/buildCli.ts"], {
    stdio: ["ignore", "ignore", "inherit"],
  });
}
