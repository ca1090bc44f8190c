import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { addInFiles } from "../../../src/build/addInFiles.ts";
import { excelManifest } from "../../../src/build/excelManifest.ts";
import { namespace } from "../../../src/definition/formulaText.ts";
import { within, type XmlElement, xmlTree } from "./xmlTree.ts";

const baseUrl = "https://example.org/soundfold";
const files = addInFiles(baseUrl);
const manifest = xmlTree(String(files.get("manifest.xml")));
const elements = within(manifest);
const named = (name: string): readonly XmlElement[] => elements.filter((element) => element.name === name);
const first = (name: string): XmlElement => named(name)[0] as XmlElement;
const resources = within(first("Resources")).filter(({ attributes }) => attributes.id !== undefined);
const resource = (id: string | undefined) => resources.find(({ attributes }) => attributes.id === id);

/**
 * The order in which the vendor wants an element's children
 * ("How to find the proper order of manifest elements" in the vendor's add-in documentation, read).
 */
const order: Readonly<Record<string, readonly string[]>> = {
  OfficeApp: [
    "Id",
    "AlternateId",
    "Version",
    "ProviderName",
    "DefaultLocale",
    "DisplayName",
    "Description",
    "IconUrl",
    "HighResolutionIconUrl",
    "SupportUrl",
    "AppDomains",
    "Hosts",
    "Requirements",
    "DefaultSettings",
    "Permissions",
    "VersionOverrides",
  ],
  VersionOverrides: ["Description", "Requirements", "Hosts", "Resources"],
  Host: ["Runtimes", "AllFormFactors", "DesktopFormFactor"],
  ExtensionPoint: ["Script", "Page", "Metadata", "Namespace", "OfficeTab"],
  DesktopFormFactor: ["GetStarted", "FunctionFile", "ExtensionPoint"],
  GetStarted: ["Title", "Description", "LearnMoreUrl"],
  Group: ["Label", "Icon", "Control"],
  Control: ["Label", "Supertip", "Icon", "Action"],
  Supertip: ["Title", "Description"],
  Action: ["TaskpaneId", "SourceLocation"],
  Resources: ["Images", "Urls", "ShortStrings", "LongStrings"],
};

describe("the manifest", () => {
  it.each(Object.entries(order))("has the parts of %s in the order the vendor asks for", (parent, wanted) => {
    expect(named(parent).length).toBeGreaterThan(0);
    for (const { children } of named(parent)) {
      const places = children.map(({ name }) => wanted.indexOf(name));
      expect(places).not.toContain(-1);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  });

  it("uses each resource and lacks none, of the kind that belongs there", () => {
    const used = elements.flatMap(({ name, attributes }) =>
      attributes.resid === undefined ? [] : [{ name, id: attributes.resid }],
    );
    const kinds: Readonly<Record<string, string>> = {
      Image: "Image",
      SourceLocation: "Url",
      Runtime: "Url",
      FunctionFile: "Url",
      LearnMoreUrl: "Url",
      Namespace: "String",
      Label: "String",
      Title: "String",
      Description: "String",
    };
    for (const { name, id } of used) expect([name, resource(id)?.name]).toEqual([name, kinds[name]]);
    expect(new Set(used.map(({ id }) => id))).toEqual(new Set(resources.map(({ attributes }) => attributes.id)));
  });

  it("has ids that are unique and at most 32 characters", () => {
    const ids = elements.flatMap(({ attributes }) => attributes.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id.length).toBeLessThanOrEqual(32);
    expect(first("Id").text).toMatch(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/);
  });

  it("runs page, functions and buttons in one shared runtime that lives on", () => {
    const page = first("Page").children[0]?.attributes.resid;
    expect(first("Runtime").attributes).toEqual({ resid: page, lifetime: "long" });
    expect(first("FunctionFile").attributes.resid).toBe(page);
    expect(first("Action").children[1]?.attributes.resid).toBe(page);
    const sets = named("Set").map(({ attributes }) => `${attributes.Name} ${attributes.MinVersion}`);
    expect(sets).toEqual(["SharedRuntime 1.1", "CustomFunctionsRuntime 1.2"]);
  });

  it("gives only https addresses, each of a file that the build writes", () => {
    const addresses = elements.flatMap(({ attributes, text }) =>
      [attributes.DefaultValue, text].filter((value) => value?.includes("://")),
    ) as string[];
    expect(addresses.length).toBeGreaterThan(8);
    for (const address of addresses) expect(address).toMatch(/^https:\/\//);
    const written = addresses
      .filter((address) => address !== "https://example.org")
      .map((address) => address.replace(`${baseUrl}/`, ""));
    for (const name of written) expect(["functions.js", ...files.keys()]).toContain(name);
    expect(first("AppDomain").text).toBe("https://example.org");
  });

  it("keeps to the lengths of the vendor's schema", () => {
    const longest = (parent: string) =>
      Math.max(...first(parent).children.map(({ attributes }) => attributes.DefaultValue?.length ?? 0));
    expect(longest("ShortStrings")).toBeLessThanOrEqual(125);
    expect(longest("LongStrings")).toBeLessThanOrEqual(250);
    expect(first("DisplayName").attributes.DefaultValue?.length).toBeLessThanOrEqual(125);
    expect(first("Description").attributes.DefaultValue?.length).toBeLessThanOrEqual(250);
    expect(first("ProviderName").text.length).toBeLessThanOrEqual(125);
  });

  it("offers the functions under the namespace of the workbooks", () => {
    expect(resource(first("Namespace").attributes.resid)?.attributes.DefaultValue).toBe(namespace);
    expect(namespace).toMatch(/^[A-Z]{1,32}$/);
  });

  it("has icons at the sizes a button must have, each of its own size", () => {
    for (const { children } of named("Icon"))
      expect(children.map(({ attributes }) => attributes.size)).toEqual(["16", "32", "80"]);
    for (const { attributes } of named("Image").filter(({ attributes }) => attributes.resid))
      expect(resource(attributes.resid)?.attributes.DefaultValue).toBe(`${baseUrl}/icons/icon-${attributes.size}.png`);
    expect(first("IconUrl").attributes.DefaultValue).toBe(`${baseUrl}/icons/icon-32.png`);
    expect(first("HighResolutionIconUrl").attributes.DefaultValue).toBe(`${baseUrl}/icons/icon-64.png`);
  });

  it("has the package's version with a number in front, because the vendor takes none below 1.0", () => {
    const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
    expect(first("Version").text).toBe(`1.${version}`);
    expect(first("Version").text).toMatch(/^\d{1,5}(\.\d{1,5}){3}$/);
  });

  it("takes an address with signs that XML keeps for itself", () => {
    const filled = excelManifest('<a href="{baseUrl}" version="{version}"/>', {
      baseUrl: "https://a.org/b&c'd",
      version: "0.1.0",
    });
    expect(xmlTree(filled).attributes).toEqual({ href: "https://a.org/b&c'd", version: "1.0.1.0" });
  });

  it("is not built from a template that asks for something unknown", () => {
    expect(() => excelManifest("{color}", { baseUrl, version: "0.1.0" })).toThrow("the manifest asks for {color}");
  });
});
