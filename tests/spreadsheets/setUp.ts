import { execFileSync } from "node:child_process";
import { calcProgram } from "./calcProgram.ts";

/** Both versions are there before the first test; and the tests never run an extension older than the source. */
export default function setUp(): void {
  calcProgram("7.4");
  calcProgram("25.2");
  execFileSync("npm", ["run", "--silent", "build:libreoffice"], { stdio: "inherit" });
}
