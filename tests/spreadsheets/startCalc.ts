import { spawn } from "node:child_process";
import { once } from "node:events";
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer, type Socket } from "node:net";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { createInterface } from "node:readline";
import { unzipSync } from "fflate";
import { element, xmlFile } from "../../src/hosts/libreoffice/xml.ts";
import { type CalcVersion, calcProgram } from "./calcProgram.ts";

/** A cell as Calc holds it: blank is `""`, yes and no are 1 and 0. */
export type CalcCell = number | string | { readonly error: string };

export interface CalcWorkbook {
  readonly sheets: Readonly<Record<string, readonly (readonly CalcCell[])[]>>;
  /** How long the recalculation took. */
  readonly seconds: number;
  /** Processor time that Calc spent on it, in all its threads. */
  readonly processorSeconds: number;
}

/** What the function wizard shows. */
interface Described {
  readonly description: string;
  readonly arguments: readonly { readonly name: string; readonly description: string; readonly optional: boolean }[];
}

/** What is typed where. */
export type Typed = readonly [sheet: string, cell: string, value: number | string];

interface Copy {
  readonly saveAs: string;
  /** Calc's name of the kind of file. */
  readonly filter: string;
}

export interface Calc {
  /** Opens a file, works out every formula afresh, saves copies if asked to, and reads all cells. */
  readonly read: (path: string, ...copies: readonly Copy[]) => Promise<CalcWorkbook>;
  /** The same, after some cells were typed. */
  readonly readTyped: (path: string, typed: readonly Typed[]) => Promise<CalcWorkbook>;
  readonly describe: (name: string) => Promise<Described>;
  /** A folder that is removed when Calc stops. */
  readonly folder: string;
  readonly stop: () => Promise<void>;
}

/**
 * Starts a Calc without a window, with the extension unpacked beside it and a profile of its own.
 *
 * @param environment - added to the environment of the program
 */
export async function startCalc(
  version: CalcVersion,
  environment: Readonly<Record<string, string>> = {},
  extension = "dist/soundfold.oxt",
): Promise<Calc> {
  const program = calcProgram(version);
  const folder = mkdtempSync(join(tmpdir(), "soundfold-calc-"));
  unpack(extension, join(folder, "extensions", "soundfold"));
  writeReader(join(folder, "extensions", "reader"));

  const path = join(folder, "socket");
  const server = createServer().listen(path);
  await once(server, "listening");
  const office = spawn(
    program,
    [
      `-env:UserInstallation=file://${folder}/profile`,
      `-env:BUNDLED_EXTENSIONS=file://${folder}/extensions`,
      "--headless",
      "--norestore",
      "--nologo",
      "service:soundfold.test.Reader",
    ],
    { env: { ...process.env, ...environment, SOUNDFOLD_TEST_SOCKET: path }, stdio: ["ignore", "ignore", "inherit"] },
  );
  const gone = once(office, "exit").then(() => {
    throw new Error("Calc has ended before it answered");
  });
  // Ending is expected once nobody waits for an answer.
  gone.catch(() => undefined);
  const [line] = (await Promise.race([once(server, "connection"), gone])) as [Socket];
  const answers = createInterface({ input: line })[Symbol.asyncIterator]();

  const ask = async <T>(request: object): Promise<T> => {
    line.write(`${JSON.stringify(request)}\n`);
    const { value, done } = await Promise.race([answers.next(), gone]);
    if (done) throw new Error("Calc has ended before it answered");
    const answer = JSON.parse(value) as T | { readonly fault: string };
    if (typeof answer === "object" && answer !== null && "fault" in answer) throw new Error(answer.fault);
    return answer as T;
  };

  return {
    folder,
    read: (path, ...copies) => ask<CalcWorkbook>({ path, copies, typed: [] }),
    readTyped: (path, typed) => ask<CalcWorkbook>({ path, copies: [], typed }),
    describe: (name) => ask<Described>({ describe: name }),
    async stop() {
      line.end();
      if (office.exitCode === null) await once(office, "exit");
      server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function unpack(archive: string, folder: string): void {
  for (const [path, bytes] of Object.entries(unzipSync(readFileSync(archive)))) {
    const target = join(folder, path);
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, bytes);
  }
}

function writeReader(folder: string): void {
  mkdirSync(join(folder, "META-INF"), { recursive: true });
  copyFileSync(join(import.meta.dirname, "reader.py"), join(folder, "reader.py"));
  writeFileSync(
    join(folder, "META-INF", "manifest.xml"),
    xmlFile(
      element("manifest:manifest", { "xmlns:manifest": "http://openoffice.org/2001/manifest" }, [
        element("manifest:file-entry", {
          "manifest:media-type": "application/vnd.sun.star.uno-component;type=Python",
          "manifest:full-path": "reader.py",
        }),
      ]),
    ),
  );
  writeFileSync(
    join(folder, "description.xml"),
    xmlFile(
      element("description", { xmlns: "http://openoffice.org/extensions/description/2006" }, [
        element("identifier", { value: "soundfold.test.reader" }),
        element("version", { value: "1" }),
      ]),
    ),
  );
}
