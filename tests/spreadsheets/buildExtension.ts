import { execFileSync } from "node:child_process";

/** The tests never run an extension that is older than the source. */
export default function buildExtension(): void {
  execFileSync("npm", ["run", "--silent", "build:libreoffice"], { stdio: "inherit" });
}
