import type { AnyFunction } from "../../definition/defineFunction.ts";
import { methodName, serviceName } from "./calcNames.ts";
import { functionNames } from "./functionNames.ts";
import { needsDateSystem } from "./needsDateSystem.ts";
import { givesRectangle, typeLibrary } from "./typeLibrary.ts";
import { element, xmlFile } from "./xml.ts";

export interface ExtensionParts {
  readonly definitions: readonly AnyFunction[];
  readonly version: string;
  /** The oldest Node.js that runs the program. */
  readonly oldestNode: readonly [major: number, minor: number];
  /** The program that answers calls, in one file. */
  readonly program: string;
  /** The Python component. */
  readonly component: string;
}

/** Every file of the Calc extension, by its path inside the .oxt. */
export function extensionFiles(parts: ExtensionParts): ReadonlyMap<string, string> {
  return new Map([
    ["META-INF/manifest.xml", manifest()],
    ["description.xml", description(parts.version)],
    ["soundfold.idl", typeLibrary(parts.definitions)],
    ["CalcAddIns.xcu", functionNames(parts.definitions)],
    ["functions.json", functionList(parts)],
    ["soundfold.py", parts.component],
    ["answerLines.cjs", parts.program],
  ]);
}

function manifest(): string {
  const entry = (type: string, path: string): string =>
    element("manifest:file-entry", { "manifest:media-type": type, "manifest:full-path": path });
  return xmlFile(
    element("manifest:manifest", { "xmlns:manifest": "http://openoffice.org/2001/manifest" }, [
      entry("application/vnd.sun.star.uno-typelibrary;type=RDB", "soundfold.idl"),
      entry("application/vnd.sun.star.uno-component;type=Python", "soundfold.py"),
      entry("application/vnd.sun.star.configuration-data", "CalcAddIns.xcu"),
    ]),
  );
}

const description = (version: string): string =>
  xmlFile(
    element(
      "description",
      {
        xmlns: "http://openoffice.org/extensions/description/2006",
      },
      [
        element("identifier", { value: "soundfold.calc" }),
        element("version", { value: version }),
        element("display-name", {}, [element("name", { lang: "en" }, "Soundfold: sheep foot health functions")]),
        element("publisher", {}, [element("name", { lang: "en" }, "Soundfold")]),
        element("dependencies", { "xmlns:lo": "http://libreoffice.org/extensions/description/2011" }, [
          element("lo:LibreOffice-minimal-version", { value: "7.4", name: "LibreOffice 7.4" }),
        ]),
      ],
    ),
  );

const functionList = ({ definitions, oldestNode }: ExtensionParts): string =>
  `${JSON.stringify(
    {
      service: serviceName,
      oldestNode,
      functions: definitions.map((definition) => ({
        name: definition.name,
        method: methodName(definition),
        arguments: Object.keys(definition.parameters).length,
        rectangle: givesRectangle(definition),
        dates: needsDateSystem(definition),
      })),
    },
    null,
    1,
  )}\n`;
