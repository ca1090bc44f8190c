import type { DefinedName } from "../model.ts";
import { WorkbookProblem } from "../workbookProblem.ts";
import { isYes } from "../xml/isYes.ts";
import { attributeNamed, walkXml } from "../xml/walkXml.ts";

export interface WorkbookPart {
  readonly sheets: readonly { readonly name: string; readonly relationship: string }[];
  readonly names: readonly DefinedName[];
  readonly date1904: boolean;
  readonly asksForAll: boolean;
}

// Names left behind by copied sheets run into thousands; beyond this a file is made to keep a machine busy.
const mostNames = 100_000;

/** The list of sheets, the names and the date system. */
export function readWorkbookPart(part: string, text: string): WorkbookPart {
  const sheets: { name: string; relationship: string }[] = [];
  const names: DefinedName[] = [];
  let date1904 = false;
  let asksForAll = false;
  let name: { name: string; sheet: number | undefined; text: string } | undefined;
  walkXml(part, text, {
    open({ name: element, attributes }) {
      if (element === "sheet") {
        sheets.push({ name: attributes.name ?? "", relationship: attributeNamed(attributes, "id") ?? "" });
      } else if (element === "workbookPr") {
        date1904 = isYes(attributes.date1904);
      } else if (element === "calcPr") {
        const { fullCalcOnLoad, forceFullCalc, calcCompleted = "1" } = attributes;
        asksForAll = isYes(fullCalcOnLoad) || isYes(forceFullCalc) || !isYes(calcCompleted);
      } else if (element === "definedName") {
        const { name: called = "", localSheetId } = attributes;
        name = { name: called, sheet: localSheetId === undefined ? undefined : Number(localSheetId), text: "" };
      }
    },
    text(piece) {
      if (name) name.text += piece;
    },
    close(element) {
      if (element !== "definedName" || !name) return;
      names.push(name);
      if (names.length > mostNames)
        throw new WorkbookProblem(
          `The workbook holds more than ${mostNames} names, which no flock workbook does; it was not opened.`,
        );
      name = undefined;
    },
  });
  return { sheets, names, date1904, asksForAll };
}
