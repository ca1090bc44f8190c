import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import type { Browser } from "playwright-core";
import { startCalc } from "../../spreadsheets/startCalc.ts";
import { withoutAnswers } from "../../spreadsheets/withoutAnswers.ts";

/** Takes the picture of the foot book's charts as Calc prints them, worked out there. */
export async function footBookPicture(_: Browser, folder: string): Promise<void> {
  execFileSync("npm", ["run", "--silent", "build:libreoffice"], { shell: process.platform === "win32" });
  const calc = await startCalc("25.2");
  try {
    const [path, pdf] = [join(calc.folder, "book.xlsx"), join(calc.folder, "book.pdf")];
    writeFileSync(path, withoutAnswers(readFileSync("samples/flock-foot-book.xlsx")));
    await calc.read(path, { saveAs: pdf, filter: "calc_pdf_Export" });
    const pages = execFileSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" }).split("\f");
    const page = 1 + pages.findIndex((text) => text.trimStart().startsWith("Picture"));
    if (page === 0) throw new Error("no page of the foot book begins with Picture");
    // Without the empty end of the page and its footer.
    const cut = ["-x", "0", "-y", "0", "-W", "1180", "-H", "700"];
    const given = ["-r", "110", "-f", String(page), "-l", String(page), "-singlefile", ...cut, "-png"];
    execFileSync("pdftoppm", [...given, pdf, join(folder, "foot-book")]);
  } finally {
    await calc.stop();
  }
}
