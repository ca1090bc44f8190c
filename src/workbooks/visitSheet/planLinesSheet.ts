import { found } from "../tables/visitTables.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { type GridColumn, type Holds, placeGrid, writeGrid } from "../writing/placeGrid.ts";
import { fixedCell } from "../writing/references.ts";
import type { Content } from "../writing/sheetAuthor.ts";
import { planLines, planRow, sheetNames } from "./placedVisit.ts";

const keys = ["line", "step", "what", "why", "caution"] as const;
type Key = (typeof keys)[number];

/** The plans one below the other, each in a place that does not move. */
const lines = placeGrid(sheetNames.planLines, keys, { row: planRow(0) - 1, column: 0 }, found.room * planLines);

const isHeading = (index: number): boolean => index % planLines === 0;
const finding = (key: "lesion" | "severe" | "pusLetOut", index: number): string =>
  `INDEX(${found.of(key)},${Math.floor(index / planLines) + 1})`;

function planFor(index: number): Content {
  const lesion = finding("lesion", index);
  const asked = ["has_footrot", "has_codd", finding("pusLetOut", index), finding("severe", index)];
  return {
    list: `FOOT.CAREPLAN(${[lesion, ...asked].join(",")})`,
    room: { rows: planLines - 1, columns: 4 },
    unless: [`LEN(${lesion})=0`, '""'],
  };
}

/** Said of a lesion that is not known, in the plans of the others. */
const noPlan = "No plan for it: choose the lesion from the list on the sheet Visit, and ask your vet until then.";

// A blank cell would come out of the list as 0.
const blank: Holds<Key> = ({ place }) => (isHeading(place) ? { formula: '""' } : null);

const columns: Readonly<Record<Key, GridColumn<Key>>> = {
  line: {
    heading: "line",
    width: 7,
    look: "workedCount",
    // Each plan brings the headings along, which the sheet Care plan has once. Joined to nothing, a text that a function
    // gave is found equal to a typed one in every spreadsheet.
    holds: ({ cell, before }) => {
      // A plan that failed has no lines but its heading.
      const isLine = `IFERROR(AND(LEN(${cell("step")}&${cell("what")})>0,${cell("step")}&""<>"step"),FALSE)`;
      const above = before("line");
      return { formula: `IF(${isLine},${above === undefined ? 1 : `MAX(${above})+1`},"")` };
    },
  },
  step: {
    heading: "step",
    width: 7,
    look: "words",
    holds: (row) => (isHeading(row.place - 1) ? planFor(row.place - 1) : blank(row)),
  },
  what: {
    heading: "what",
    width: 58,
    look: "words",
    holds: ({ place }) => {
      const [lesion, severe] = [finding("lesion", place), finding("severe", place)];
      const formula = `IF(LEN(${lesion})=0,"",${lesion}&IF(${severe}="yes",", severe",""))`;
      return isHeading(place) ? { formula } : null;
    },
  },
  why: {
    heading: "why",
    width: 48,
    look: "words",
    holds: ({ place }) =>
      isHeading(place) ? { formula: `IF(ISERROR(${fixedCell(lines.at("step", place + 1))}),"${noPlan}","")` } : null,
  },
  caution: { heading: "caution", width: 46, look: "words", holds: blank },
};

/** The plan for each finding in a place that does not move; the sheet Care plan closes the gaps between them. */
export const planLinesSheet: SheetPlan = {
  name: sheetNames.planLines,
  write(sheet, nameCell) {
    sheet.title("Plan lines");
    sheet.put({ row: 1, column: 0 }, "What the sheet Care plan is made from. Nothing to type here.", "note");
    writeGrid(sheet, lines, columns);
    const { right } = lines.rows;
    for (let plan = 0; plan < found.room; plan++) {
      const row = planRow(plan);
      sheet.put({ row, column: lines.column("what").left }, null, "strong");
    }
    nameCell("plan_lines", sheet.name, lines.rows);
    sheet.protect();
    // The plans are printed from the sheet Care plan.
    sheet.print({ upTo: { row: 1, column: right }, onOnePage: true });
  },
};
