import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { WorstKind } from "./worstKinds.ts";

/** What a workbook under 1 MB may take at most, of processor time and of memory. */
export const bounds = { seconds: 60, megabytes: 2000 } as const;

export interface Took {
  /** Of the processor, with the start of the program. */
  readonly seconds: number;
  /** At the most, of the whole process. */
  readonly megabytes: number;
  /** What tryKind.ts said; undefined where it did not come to an end within the bounds. */
  readonly told: Told | undefined;
  /** Why it did not come to an end. */
  readonly trouble: string;
}

interface Told {
  readonly cells: Readonly<Record<string, unknown>>;
  readonly reasons: readonly string[];
  readonly left: number;
}

const here = fileURLToPath(new URL(".", import.meta.url));

/**
 * Works out a kind of workbook in a process of its own, which is ended once it passes the bounds. The processor's time
 * counts, not the clock's, as the machine may be busy.
 *
 * @param root - the folder of the program: this checkout, or another for figures of before
 */
export async function runKind({ make }: Pick<WorstKind, "make">, root = join(here, "../../..")): Promise<Took> {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-"));
  const file = join(folder, "kind.xlsx");
  writeFileSync(file, make());
  // More than the bound, so that what passes it is seen passing it.
  const given = ["--max-old-space-size=4000", "--import", "tsx", join(here, "tryKind.ts"), root, file];
  const child = spawn(process.execPath, given, { cwd: root, stdio: ["ignore", "pipe", "pipe"] });
  let [out, errors, seconds, megabytes] = ["", "", 0, 0];
  child.stdout.on("data", (piece) => {
    out += piece;
  });
  child.stderr.on("data", (piece) => {
    errors += piece;
  });
  const look = (): void => {
    const now = usedBy(child.pid);
    if (!now) return;
    seconds = Math.max(seconds, now.seconds);
    megabytes = Math.max(megabytes, now.megabytes);
    if (seconds > bounds.seconds || megabytes > 2 * bounds.megabytes) child.kill("SIGKILL");
  };
  const looking = setInterval(look, 100);
  const code = await new Promise<number | null>((resolve) => child.on("close", resolve));
  clearInterval(looking);
  rmSync(folder, { recursive: true });
  if (code !== 0) return { seconds, megabytes, told: undefined, trouble: troubleIn(errors) };
  const { seconds: own, megabytes: peak, ...told } = JSON.parse(out) as Told & { seconds: number; megabytes: number };
  return { seconds: own, megabytes: peak, told, trouble: "" };
}

const troubleIn = (errors: string): string =>
  /heap out of memory/.test(errors)
    ? "it ran out of memory"
    : (/^(?:\w*Error|WorkbookProblem): .*$/m.exec(errors)?.[0] ?? "");

// Clock ticks of a second, and pages of memory, as the kernel counts them on the machines that the tests run on.
const ticks = 100;

function usedBy(id: number | undefined): { readonly seconds: number; readonly megabytes: number } | undefined {
  try {
    // After the name in brackets: user time is the 12th, system time the 13th (proc(5)).
    const fields = readFileSync(`/proc/${id}/stat`, "utf8")
      .replace(/^.*\) /s, "")
      .split(" ");
    // Of a process that is ending the memory is gone.
    const peak = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${id}/status`, "utf8"))?.[1] ?? 0;
    return { seconds: (Number(fields[11]) + Number(fields[12])) / ticks, megabytes: Number(peak) / 1024 };
  } catch {
    // It has ended.
    return undefined;
  }
}
