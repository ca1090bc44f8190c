import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";

/** Whether a built file is younger than everything it may have been made of. */
export function isFresh(built: string, sources: readonly string[]): boolean {
  if (!existsSync(built)) return false;
  const made = statSync(built).mtimeMs;
  return sources.every((source) => newest(source) < made);
}

function newest(path: string): number {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(path).reduce((latest, name) => Math.max(latest, newest(join(path, name))), stat.mtimeMs);
}
