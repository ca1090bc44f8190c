import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";

/** The command as it is installed; the set-up of these tests has built it. */
export const soundfold = fileURLToPath(new URL("../../dist/cli/soundfold.js", import.meta.url));
const root = fileURLToPath(new URL("../..", import.meta.url));

export interface Ended {
  readonly code: number;
  readonly output: string;
  readonly errors: string;
}

/** Runs the command line as a person does, in a process of its own. */
export const runSoundfold = (given: readonly string[], folder = root): Promise<Ended> =>
  new Promise((resolve, reject) => {
    const options = { cwd: folder, timeout: 110_000, maxBuffer: 50_000_000 };
    execFile(process.execPath, [soundfold, ...given], options, (error, output, errors) => {
      const code = error ? error.code : 0;
      if (typeof code === "number") resolve({ code, output, errors });
      else reject(error);
    });
  });
