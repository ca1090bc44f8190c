import { developmentUrl } from "../baseUrl.ts";

/** The text that greets whoever opens the zip. */
export const readMe = (version: string, baseUrl: string): string =>
  `Soundfold ${version}: worksheet functions for sheep foot health

index.html      Begin here: what is in this folder, for whom, with every page to read.
soundfold.html  The sheet with all functions and workbooks in one file: open it by a double-click.
                Nothing is installed, and it works without a network.
excel/          The add-in for Excel: static files for an https host, made for
                ${baseUrl}
                Put all of them at that address, then hand out excel/manifest.xml. For the
                headers a host sends: _headers, .htaccess, web.config and nginx.conf.txt.
                ${baseUrl === developmentUrl ? "That address is for trying out. Under an https address of yours" : "Under another address"}
                excel/index.html makes the manifest and functions.json for it.
practice/       A spreadsheet in the browser to try the functions in, without any spreadsheet
                program: static files for any host, practice/index.html is its page.
libreoffice/    The extension for LibreOffice Calc, and the empty workbooks in their edition
                for LibreOffice.
google-sheets/  The script for Google Sheets.
command/        The soundfold command, for whoever works with many workbooks; it needs
                Node.js: npm install --global ./command/soundfold-${version}.tgz
workbooks/      Workbooks that use the functions. Their records are invented.
install/        How each of these is installed.
functions/      What each function answers, with examples; begin at functions/index.html.
methods/        Why these methods, and where they fail.
safety.html     What could do harm, and what guards against it.
bounds.html     What the largest and oddest workbooks cost.
benchmarks.html What the functions cost in time, and what was measured how.
scale.html      How thousands of flocks are compared.
changelog.html  What changed from version to version.
licences/       The licence of Soundfold, and of everything that is bundled with it.
sbom.cdx.json   What is bundled, for machines (CycloneDX 1.5).
SHA256SUMS      The SHA-256 of every file here; check with: sha256sum --check SHA256SUMS
                excel/SHA256SUMS holds the same for that folder alone, to check the host with.

Nothing here sends anything anywhere: all is computed where the sheet is open. The page in
Excel loads one script from elsewhere, the vendor's own office.js.
`;
