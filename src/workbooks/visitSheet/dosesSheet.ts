import { bathProducts } from "../../core/treatment/bathMix.ts";
import type { KeyOf } from "../tables/defineTable.ts";
import { otherMedicines, weighed } from "../tables/visitTables.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { amountField, numberField, shareField, textField } from "../writing/fields.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { formulas, type GridColumn, type Holds, writeGrid } from "../writing/placeGrid.ts";
import { writeTable } from "../writing/placeTable.ts";
import { fixedArea, fixedCell } from "../writing/references.ts";
import { rules } from "../writing/rules.ts";
import type { Content, SheetAuthor } from "../writing/sheetAuthor.ts";
import { type Field, writeFields } from "../writing/writeFields.ts";
import { batch, bathRow, doseAnswers, othersAnswers, placedOthers, placedWeighed, sheetNames } from "./placedVisit.ts";
import type { VisitContent } from "./visitContent.ts";
import { anyBlank, optional, unlessBlank } from "./visitFormulas.ts";

const medicineFields = ({ medicine, invented }: VisitContent): readonly Field[] => [
  textField(
    "medicine_name",
    "Medicine",
    medicine?.name,
    invented
      ? "INVENTED, and so are all its numbers. Clear them before you use this sheet."
      : "As your vet prescribed.",
  ),
  amountField("mg_per_kg", "Dose, mg per kg", medicine?.mgPerKg, "From the vet or the data sheet."),
  amountField("mg_per_ml", "Strength, mg per ml", medicine?.mgPerMl, "From the data sheet; 20 % is 200 mg per ml."),
  amountField("site_most", "Most ml in one site", medicine?.mostPerSite, "From the data sheet."),
  amountField("bottle_ml", "ml in a bottle", medicine?.bottleMl, "To count the bottles; may stay blank."),
  textField(
    "medicine_route",
    "Given how",
    medicine?.route,
    "From the vet or the data sheet: into the muscle, under the skin, by mouth …",
  ),
  numberField(
    "medicine_withdrawal",
    "Withdrawal days, meat",
    medicine?.withdrawalDays,
    "From the vet or the data sheet; 0 only when that is written there.",
    { of: { whole: ["0", "365"] }, words: "Type the days, 0 to 365, without a unit." },
  ),
  numberField(
    "sites_least",
    "Sites at least",
    undefined,
    "From the vet or the data sheet; this or the most ml in one site is needed.",
    { of: { whole: ["1", "10"] }, words: "Type a whole number, 1 to 10." },
  ),
  amountField("mark_ml", "ml between two marks", 0.1, "Of the syringe; doses fall on a mark."),
  shareField("spare", "Spare", 0.05, "For what is spilled or left in the syringe.", rules.share),
];

const bathFields = ({ bath }: VisitContent): readonly Field[] => {
  const length = { of: { number: ["1", "5000"] as const }, words: "Type a length in cm." };
  return [
    numberField("bath_length", "Length, cm", bath?.lengthCm, "Inside, in cm.", length),
    numberField(
      "bath_width",
      "Width at the surface, cm",
      bath?.topWidthCm,
      "Where the liquid ends, not the trough.",
      length,
    ),
    numberField("bath_base", "Width at the bottom, cm", undefined, "Only when the sides slant.", length),
    numberField("bath_depth", "Depth of the liquid, cm", bath?.depthCm, "Over the feet.", length),
    {
      name: "bath_kind",
      label: "Product",
      value: bath?.kind ?? null,
      look: "fieldText",
      words: "Which it is stands on the bag: zinc sulphate is sold as two salts, one 1.6 times as strong.",
      rule: { of: { list: `"${bathProducts.join(",")}"` }, words: "Choose the product from the list." },
    },
    numberField("bath_percent", "Strength, %", bath?.percent, "3 for 3 %, of the product as bought.", rules.percent),
  ];
};

const firstField = 3;
const bathFieldsRow = firstField + 10 + 2;

/** The medicine of the day, the weights met with their doses, and the footbath. */
export const dosesSheet = (content: VisitContent): SheetPlan => ({
  name: sheetNames.doses,
  write(sheet, nameCell) {
    sheet.widths(27, 22, 12, 12, 20, 10, 13, 22);
    sheet.title("Doses and footbath");
    sayWhenMissing(sheet, { row: 0, column: 4 });
    sheet.put(
      { row: 1, column: 0 },
      "Nothing about a medicine is filled in for you. Yellow cells are yours. In doubt ask your vet (see Start).",
      "note",
    );
    writeFields(sheet, nameCell, firstField, medicineFields(content));
    sheet.put({ row: bathFieldsRow - 1, column: 0 }, "Footbath", "question");
    writeFields(sheet, nameCell, bathFieldsRow, bathFields(content));
    writeBath(sheet);
    writeDoses(sheet, content);
    sheet.protect();
    sheet.print({
      upTo: { row: lastPrinted(content), column: 7 },
      repeat: [placedWeighed.area.top, placedWeighed.area.top],
    });
    for (const [name, place] of [
      ["bath_litres", litresAt],
      ["bath_product", mixAt],
      ["bath_water", { ...mixAt, column: mixAt.column + 1 }],
      ["dose_total", batch.at("total", 0)],
      ["dose_bottles", batch.at("bottles", 0)],
      ["dose_largest", batch.at("largest", 0)],
    ] as const)
      nameCell(name, sheet.name, place);
  },
});

const under = {
  ...placedWeighed.area,
  top: placedWeighed.area.bottom + 1,
  bottom: placedWeighed.area.bottom + 500,
};
/** The last row on paper: as many as are filled when the sheet is made, and a page full in an empty one. */
const lastPrinted = ({ weighed: animals }: Pick<VisitContent, "weighed">): number =>
  placedWeighed.area.top + Math.max(30, animals.length + 10);
const weighedBelow = (printed: number): string => {
  const notPrinted = fixedArea({ ...placedWeighed.area, top: printed + 1 });
  return `IF(COUNTA(${fixedArea(under)})>0,"Weights are typed below the last row of the table (${placedWeighed.area.bottom + 1}): no dose is worked out for them.",IF(COUNTA(${notPrinted})>0,"Printed up to row ${printed + 1}: choose all rows and print the selection.",""))`;
};

const litresAt = { row: bathRow, column: 1 };
const mixAt = { row: bathRow + 1, column: 1 };

function writeBath(sheet: SheetAuthor): void {
  const [litres, mix] = [fixedCell(litresAt), fixedCell(mixAt)];
  const bath = `FOOT.BATHLITRES(bath_length,bath_width,bath_depth,${optional("bath_base")})`;
  const answers: readonly (readonly [label: string, at: typeof litresAt, content: Content])[] = [
    ["Litres of bath", litresAt, { formula: unlessBlank(["bath_length", "bath_width", "bath_depth"], bath) }],
    [
      "Product and water",
      mixAt,
      {
        list: `FOOT.BATHMIX(${litres},bath_percent,bath_kind)`,
        room: { rows: 1, columns: 2 },
        unless: [anyBlank([litres, "bath_percent", "bath_kind"]), '""'],
      },
    ],
  ];
  for (const [label, at, content] of answers) {
    sheet.put({ ...at, column: 0 }, label, "strong");
    sheet.dress({ top: at.row, left: at.column, bottom: at.row, right: at.column + 1 }, "workedMl");
    sheet.put(at, content);
  }
  sheet.put(
    { ...mixAt, column: mixAt.column + 2 },
    {
      formula: `IF(ISNUMBER(${mix}),IF(OR(bath_kind="formalin",bath_kind="liquid"),"left: litres of product; right: litres of water","left: kg of product; right: litres to fill up to"),"")`,
    },
    "note",
  );
}

const notWeighed = ["OR(COUNTA(Weighed[Weight kg])=0,LEN(mg_per_kg)=0,LEN(mg_per_ml)=0)", '""'] as const;
const dosed: Content = {
  list: "FOOT.DOSEML(Weighed[Weight kg],mg_per_kg,mg_per_ml,mark_ml)",
  room: { rows: weighed.room, columns: 1 },
  unless: notWeighed,
};

type Answer = Parameters<typeof doseAnswers.range>[0];

const shared: Holds<Answer> = ({ cell }) => {
  return {
    list: `TRANSPOSE(FOOT.SITEML(${cell("dose")},${optional("sites_least")},${optional("site_most")},mark_ml))`,
    room: { rows: 1, columns: 4 },
    unless: [`1-ISNUMBER(${cell("dose")})`, '""'],
  };
};

const doses: Readonly<Record<Answer, GridColumn<Answer>>> = {
  dose: { heading: "dose ml", look: "workedMl", holds: ({ place }) => (place === 0 ? dosed : null) },
  site1: { heading: "site 1 ml", look: "workedMl", holds: shared },
  site2: { heading: "site 2 ml", look: "workedMl" },
  site3: { heading: "site 3 ml", look: "workedMl" },
  site4: { heading: "site 4 ml", look: "workedMl" },
};

/** Up to three more that were given on the day: what goes into all that were weighed, and the day each is clear. */
function writeOthers(sheet: SheetAuthor, others: VisitContent["otherMedicines"]): void {
  sheet.put(
    { row: placedOthers.area.top - 1, column: 0 },
    "Other medicines of the day, as your vet prescribed",
    "question",
  );
  writeTable(sheet, otherMedicines, placedOthers, others);
  const cell = (key: KeyOf<typeof otherMedicines>, index: number): string => {
    const { top, left: column } = placedOthers.column(key);
    return fixedCell({ row: top + index, column });
  };
  writeGrid(sheet, othersAnswers, {
    total: formulas("total ml", "workedMl", ({ place }) => {
      const [mgPerKg, mgPerMl] = [cell("mgPerKg", place), cell("mgPerMl", place)];
      const all = `INDEX(FOOT.BATCHML(Weighed[Weight kg],${mgPerKg},${mgPerMl},mark_ml,spare),1,1)`;
      return `IF(COUNTA(Weighed[Weight kg])=0,"",${unlessBlank([mgPerKg, mgPerMl], all)})`;
    }),
    clear: formulas("clear for food from", "workedDate", ({ place }) => {
      const days = cell("withdrawalDays", place);
      return unlessBlank(["visit_date", cell("medicine", place), days], `FOOT.CLEARDATE(visit_date,${days})`);
    }),
  });
}

function writeDoses(sheet: SheetAuthor, { weighed: animals, otherMedicines: others }: VisitContent): void {
  const { top } = batch.area;
  sheet.put({ row: top - 1, column: 0 }, "All weights together", "question");
  sheet.put({ row: placedWeighed.area.top - 1, column: 0 }, "Doses for the weights met", "question");
  sheet.put({ row: top + 1, column: 0 }, "For all together, with spare", "strong");
  writeGrid(sheet, batch, {
    total: {
      heading: "total ml",
      look: "workedMl",
      holds: () => ({
        list: `FOOT.BATCHML(Weighed[Weight kg],mg_per_kg,mg_per_ml,mark_ml,spare,${optional("bottle_ml")})`,
        room: { rows: 1, columns: 3 },
        unless: notWeighed,
      }),
    },
    bottles: { heading: "bottles", look: "workedCount" },
    largest: { heading: "largest ml", look: "workedMl" },
    clear: formulas("clear for food from", "workedDate", () =>
      unlessBlank(["visit_date", "medicine_withdrawal"], "FOOT.CLEARDATE(visit_date,medicine_withdrawal)"),
    ),
  });
  writeOthers(sheet, others);
  const printed = lastPrinted({ weighed: animals });
  sheet.put({ row: placedWeighed.area.top - 1, column: 3 }, { formula: weighedBelow(printed) }, "careHeading");
  const doseCells = fixedArea(doseAnswers.column("dose"));
  sheet.put(
    { row: placedWeighed.area.top - 2, column: 0 },
    {
      formula: `IF(SUMPRODUCT(ISTEXT(${doseCells})*(LEN(${doseCells})>0))=0,"","A weight below has no dose: its cell says why.")`,
    },
    "careHeading",
  );
  writeTable(sheet, weighed, placedWeighed, animals);
  writeGrid(sheet, doseAnswers, doses);
  const [here, above] = (["cell", "above"] as const).map(
    (of) => `LEN(${placedWeighed[of]("animal")})+LEN(${placedWeighed[of]("kg")})>0`,
  ) as [string, string];
  sheet.emphasize(placedWeighed.rows, [here, "line"], [above, "next"]);
  const dose = doseAnswers.cell("dose");
  sheet.emphasize(doseAnswers.rows, [`ISTEXT(${dose})*(LEN(${dose})>0)`, "strong"], [`ISNUMBER(${dose})`, "line"]);
}
