import { createHash } from "node:crypto";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { version } from "../../../functions/version.ts";
import { checkedBaseUrl, developmentUrl } from "../baseUrl.ts";
import { releaseFiles } from "./releaseFiles.ts";
import { zipOf } from "./zipOf.ts";

// `npm run package`, or `npm run package -- --env baseUrl=https://example.org/soundfold`:
// writes dist/package/soundfold-<version>.zip. The same commit gives the same bytes.

function baseUrlGiven(env: readonly string[]): string {
  const settings = new Map(env.map((text) => [text.split("=", 1)[0], text.slice(text.indexOf("=") + 1)]));
  const unknown = [...settings.keys()].find((name) => name !== "baseUrl");
  if (unknown !== undefined) throw new Error(`--env ${unknown} is not known here; give --env baseUrl=https://…`);
  return checkedBaseUrl(settings.get("baseUrl") ?? developmentUrl);
}

try {
  const { values } = parseArgs({
    options: { env: { type: "string", multiple: true, default: [] }, out: { type: "string", default: "dist/package" } },
  });
  const zip = zipOf(await releaseFiles(baseUrlGiven(values.env)));
  mkdirSync(values.out, { recursive: true });
  const path = join(values.out, `soundfold-${version}.zip`);
  writeFileSync(path, zip);
  const hash = createHash("sha256").update(zip).digest("hex");
  console.log(`${path}: ${Math.round(zip.length / 1024)} kB, SHA-256 ${hash}`);
} catch (error) {
  process.stderr.write(`${(error as Error).message}\n`);
  process.exitCode = 2;
}
