import { tokenize } from "../../workbook/formula/tokenize.ts";

const spelling = ["IFERROR", "(", "__XLUDF.DUMMYFUNCTION", "(", undefined, ")", ","];

/**
 * The formula of which a cell holds no more than the last answer. Google Sheets saves a function that Excel does not
 * have so: `=IFERROR(__xludf.DUMMYFUNCTION("FOOT_ABOUT()"),"Soundfold")`, which shows that answer for ever.
 *
 * @param formula - as the cell hands it over, with `=`
 * @returns with `=`; `="COMPUTED_VALUE"` in the other cells of a list; undefined where the cell is none of this kind
 */
export function keptAsText(formula: unknown): string | undefined {
  if (typeof formula !== "string" || !/__xludf\.dummyfunction/i.test(formula)) return undefined;
  const tokens = (tokenize(formula.slice(1)) ?? []).filter(({ kind, text }) => kind !== "space" && text !== "@");
  if (spelling.some((text, place) => text !== undefined && tokens[place]?.text.toUpperCase() !== text))
    return undefined;
  const kept = tokens[spelling.indexOf(undefined)];
  return kept?.kind === "text" ? `=${kept.text.slice(1, -1).replaceAll('""', '"')}` : undefined;
}
