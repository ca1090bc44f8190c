import { SaxesParser } from "saxes";

/** An element of an XML document, names without their prefix. */
export interface XmlElement {
  readonly name: string;
  readonly namespace: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: XmlElement[];
  text: string;
}

/** Reads a well-formed document; throws where it is not. */
export function xmlTree(text: string): XmlElement {
  const parser = new SaxesParser({ xmlns: true });
  const root: XmlElement = { name: "", namespace: "", attributes: {}, children: [], text: "" };
  const open = [root];
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ local, uri, attributes }) => {
    const values = Object.values(attributes).map(({ local: name, value }) => [name, value] as const);
    const element = { name: local, namespace: uri, attributes: Object.fromEntries(values), children: [], text: "" };
    open.at(-1)?.children.push(element);
    open.push(element);
  });
  parser.on("text", (piece) => {
    (open.at(-1) as XmlElement).text += piece;
  });
  parser.on("closetag", () => {
    open.pop();
  });
  parser.write(text).close();
  return root.children[0] as XmlElement;
}

/** The element and everything inside it. */
export const within = (element: XmlElement): readonly XmlElement[] => [element, ...element.children.flatMap(within)];
