import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import type { BundledPackage } from "./bundledPackages.ts";

interface Component {
  readonly "bom-ref": string;
  readonly name: string;
  readonly version: string;
  readonly licenses?: readonly unknown[];
  readonly properties?: readonly { readonly name: string; readonly value: string }[];
}

interface Bill {
  readonly metadata: { readonly component: Component };
  readonly components: readonly Component[];
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn?: readonly string[] }[];
}

/**
 * The software bill of materials of what is bundled, in CycloneDX 1.5, made from npm's own bill of the lock file.
 *
 * Nothing in it changes from one run to the next: npm's serial number, time and version are left out, and so is the
 * name of the folder.
 *
 * @param bundles the packages in each file that is handed out, by the path of the file
 * @throws Error when the lock file does not know a package in the version that was bundled
 */
export function softwareBill(bundles: ReadonlyMap<string, readonly BundledPackage[]>): string {
  const files = new Map<string, string[]>();
  const licences = new Map<string, string>();
  for (const [file, items] of bundles)
    for (const { name, version, licence } of items) {
      const key = `${name}@${version}`;
      licences.set(key, licence);
      files.set(key, [...(files.get(key) ?? []), file]);
    }
  const whole = billOfLockFile();
  const kept = whole.components.filter((component) => files.has(keyOf(component)));
  const known = new Set(kept.map(keyOf));
  const missing = [...files.keys()].filter((key) => !known.has(key));
  if (missing.length > 0) throw new Error(`package-lock.json does not hold ${missing.join(", ")}; run npm install`);

  const { name } = JSON.parse(readFileSync("package.json", "utf8")) as { name: string };
  const main = { ...whole.metadata.component, name };
  const refs = new Set(kept.map((component) => component["bom-ref"]));
  const components = kept.map((component) => ({
    ...component,
    // What a package does not state was read from the text it brings.
    licenses: component.licenses ?? [{ license: { id: licences.get(keyOf(component)) } }],
    scope: "required",
    properties: (files.get(keyOf(component)) ?? []).map((file) => ({ name: "soundfold:bundled-in", value: file })),
  }));
  const dependencies = whole.dependencies
    .filter(({ ref }) => refs.has(ref) || ref === main["bom-ref"])
    .map(({ ref, dependsOn = [] }) => ({
      ref,
      // The bundles hold the code itself, so they depend on all of it, however it came to be there.
      dependsOn: ref === main["bom-ref"] ? [...refs] : dependsOn.filter((other) => refs.has(other)),
    }));
  const bill = {
    $schema: "http://cyclonedx.org/schema/bom-1.5.schema.json",
    bomFormat: "CycloneDX",
    specVersion: "1.5",
    version: 1,
    metadata: { lifecycles: [{ phase: "build" }], component: main },
    components,
    dependencies,
  };
  return `${JSON.stringify(bill, null, 2)}\n`;
}

const keyOf = ({ name, version }: Component): string => `${name}@${version}`;

const billOfLockFile = (): Bill =>
  JSON.parse(
    execFileSync("npm", ["sbom", "--package-lock-only", "--sbom-format", "cyclonedx"], {
      encoding: "utf8",
      maxBuffer: 100_000_000,
      shell: process.platform === "win32",
    }),
  ) as Bill;
