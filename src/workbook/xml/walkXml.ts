import { SaxesParser } from "saxes";
import { WorkbookProblem } from "../workbookProblem.ts";
import { elementNames } from "./elementNames.ts";

/** An element as it opens. */
export interface Opening {
  /** Without a prefix in the namespace of the root; with one, or a bare colon, in another: `x15:workbookPr`. */
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Places in the text: of its `<` and just after its `>`. */
  readonly start: number;
  readonly end: number;
  readonly selfClosing: boolean;
}

export interface Visitor {
  readonly open?: (element: Opening) => void;
  readonly text?: (text: string) => void;
  /** `start` is the place of the closing tag's `<` (of the element's own for `<x/>`), `end` just after its `>`. */
  readonly close?: (name: string, start: number, end: number) => void;
}

/**
 * Walks through a part of a workbook with its places in the text, so that pieces can be exchanged without
 * touching the rest.
 *
 * @throws WorkbookProblem when it is not well-formed, or declares a document type: those can hold entities that grow
 */
export function walkXml(part: string, text: string, visitor: Visitor): void {
  const parser = new SaxesParser({ xmlns: false, position: true });
  let last: { name: string; start: number; end: number } | undefined;
  parser.on("error", (error) => {
    throw new WorkbookProblem(`The workbook is damaged: its part ${part} cannot be read.`, { cause: error });
  });
  parser.on("doctype", () => {
    throw new WorkbookProblem(`The part ${part} declares a document type, which no workbook does; it was not opened.`);
  });
  const { open, text: onText, close } = visitor;
  const names = elementNames(text);
  parser.on("opentag", ({ name: written, attributes, isSelfClosing }) => {
    const end = parser.position;
    const name = names.open(written, attributes, end);
    // A `<` cannot stand inside a tag, so the last one before its end is where it starts.
    const start = text.lastIndexOf("<", end - 1);
    last = isSelfClosing ? { name, start, end } : undefined;
    open?.({ name, attributes, start, end, selfClosing: isSelfClosing });
  });
  if (onText) {
    parser.on("text", onText);
    parser.on("cdata", onText);
  }
  parser.on("closetag", ({ name: written, isSelfClosing }) => {
    const name = names.close(written);
    if (close === undefined) return;
    if (isSelfClosing && last !== undefined) return close(name, last.start, last.end);
    const end = parser.position;
    close(name, text.lastIndexOf("<", end - 1), end);
  });
  parser.write(text).close();
}

/** A name without its prefix. */
export const localName = (name: string): string => name.slice(name.indexOf(":") + 1);

/** An attribute by its name without prefix, for those that carry one (`r:id`). */
export function attributeNamed(attributes: Readonly<Record<string, string>>, name: string): string | undefined {
  for (const key of Object.keys(attributes)) if (key !== name && localName(key) === name) return attributes[key];
  return undefined;
}
