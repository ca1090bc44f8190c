import { SaxesParser } from "saxes";

export interface XmlElement {
  /** As written, with its prefix. */
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (XmlElement | string)[];
}

/** An XML text as a tree, read without anything of this project. */
export function xmlTree(text: string): XmlElement {
  const parser = new SaxesParser();
  const root: (XmlElement | string)[] = [];
  const open: (XmlElement | string)[][] = [root];
  parser.on("opentag", ({ name, attributes }) => {
    const children: (XmlElement | string)[] = [];
    open.at(-1)?.push({ name, attributes: { ...attributes } as Record<string, string>, children });
    open.push(children);
  });
  parser.on("closetag", () => open.pop());
  const take = (piece: string): unknown => open.length > 1 && open.at(-1)?.push(piece);
  parser.on("text", take);
  parser.on("cdata", take);
  parser.write(text.replace(/^\uFEFF/, "")).close();
  const element = root.find((child) => typeof child !== "string");
  if (element === undefined) throw new Error("no XML");
  return element;
}

export const elementsIn = ({ children }: XmlElement, name?: string): readonly XmlElement[] =>
  children.filter((child): child is XmlElement => typeof child !== "string" && (!name || bareName(child) === name));

export const bareName = ({ name }: XmlElement): string => name.slice(name.indexOf(":") + 1);

export const textIn = ({ children }: XmlElement): string =>
  children.map((child) => (typeof child === "string" ? child : textIn(child))).join("");
