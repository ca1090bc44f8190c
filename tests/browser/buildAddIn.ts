import { execFileSync } from "node:child_process";
import process from "node:process";

/** The address the add-in of the tests is built for; no such host exists (RFC 2606). */
export const addInUrl = "https://add-in.invalid";

/** Builds the add-in as `npm run build` does, into a folder. */
export function buildAddIn(folder: string): void {
  // On Windows npm is a script for the shell.
  execFileSync("npm", ["run", "--silent", "build", "--", "--env", `baseUrl=${addInUrl}`, "--output-path", folder], {
    stdio: ["ignore", "ignore", "inherit"],
    shell: process.platform === "win32",
  });
}
