import { bathProducts } from "../../core/footbath/bathMix.ts";
import type { SheetPlan } from "../authoring/authorWorkbook.ts";
import { cutOff } from "../authoring/cutOff.ts";
import { orWords } from "../authoring/orWords.ts";
import { rules } from "../authoring/rules.ts";
import type { SheetAuthor } from "../authoring/sheetAuthor.ts";
import { type Field, writeFields } from "../authoring/writeFields.ts";
import { writeHeadings } from "../authoring/writeHeadings.ts";
import type { VisitContent } from "./visitContent.ts";
import { optional, places, unlessBlank } from "./visitFormulas.ts";
import { headings, inOrder, room, sheetNames, tableAt } from "./visitTables.ts";

const medicineFields = ({ medicine, invented }: VisitContent): readonly Field[] => [
  {
    name: "medicine_name",
    label: "Medicine",
    value: medicine?.name ?? null,
    look: "fieldText",
    words: invented
      ? "INVENTED, and so are all its numbers. Clear them before you use this sheet."
      : "As your vet prescribed.",
  },
  {
    name: "mg_per_kg",
    label: "Dose, mg per kg",
    value: medicine?.mgPerKg ?? null,
    look: "fieldNumber",
    words: "From the vet or the data sheet.",
    rule: rules.amount,
  },
  {
    name: "mg_per_ml",
    label: "Strength, mg per ml",
    value: medicine?.mgPerMl ?? null,
    look: "fieldNumber",
    words: "From the data sheet; 20 % is 200 mg per ml.",
    rule: rules.amount,
  },
  {
    name: "site_most",
    label: "Most ml in one site",
    value: medicine?.mostPerSite ?? null,
    look: "fieldNumber",
    words: "From the data sheet.",
    rule: rules.amount,
  },
  {
    name: "bottle_ml",
    label: "ml in a bottle",
    value: medicine?.bottleMl ?? null,
    look: "fieldNumber",
    words: "To count the bottles; may stay blank.",
    rule: rules.amount,
  },
  {
    name: "sites_least",
    label: "Sites at least",
    value: null,
    look: "fieldNumber",
    words: "From the vet or the data sheet; this or the most ml in one site is needed.",
    rule: { of: { whole: ["1", "10"] }, words: "Type a whole number, 1 to 10." },
  },
  {
    name: "mark_ml",
    label: "ml between two marks",
    value: 0.1,
    look: "fieldNumber",
    words: "Of the syringe; doses fall on a mark.",
    rule: rules.amount,
  },
  {
    name: "spare",
    label: "Spare",
    value: 0.05,
    look: "fieldShare",
    words: "For what is spilled or left in the syringe.",
    rule: rules.share,
  },
];

const bathFields = ({ bath }: VisitContent): readonly Field[] => {
  const length = { of: { number: ["1", "5000"] as const }, words: "Type a length in cm." };
  return [
    {
      name: "bath_length",
      label: "Length, cm",
      value: bath?.lengthCm ?? null,
      look: "fieldNumber",
      words: "Inside, in cm.",
      rule: length,
    },
    {
      name: "bath_width",
      label: "Width at the surface, cm",
      value: bath?.topWidthCm ?? null,
      look: "fieldNumber",
      words: "Where the liquid ends, not the trough.",
      rule: length,
    },
    {
      name: "bath_base",
      label: "Width at the bottom, cm",
      value: null,
      look: "fieldNumber",
      words: "Only when the sides slant.",
      rule: length,
    },
    {
      name: "bath_depth",
      label: "Depth of the liquid, cm",
      value: bath?.depthCm ?? null,
      look: "fieldNumber",
      words: "Over the feet.",
      rule: length,
    },
    {
      name: "bath_kind",
      label: "Product",
      value: bath?.kind ?? null,
      look: "fieldText",
      words: "Which it is stands on the bag: zinc sulphate is sold as two salts, one 1.6 times as strong.",
      rule: { of: { list: `"${bathProducts.join(",")}"` }, words: "Choose the product from the list." },
    },
    {
      name: "bath_percent",
      label: "Strength, %",
      value: bath?.percent ?? null,
      look: "fieldNumber",
      words: "3 for 3 %, of the product as bought.",
      rule: rules.percent,
    },
  ];
};

const bathRow = places.fields + 8 + 2;
const filled = ["mg_per_kg", "mg_per_ml"];

/** The medicine of the day, the weights met with their doses, and the footbath. */
export const dosesSheet = (content: VisitContent): SheetPlan => ({
  name: sheetNames.doses,
  write(sheet, nameCell) {
    sheet.widths(27, 22, 12, 10, 10, 10, 10, 22);
    sheet.title("Doses and footbath");
    sheet.put(
      { row: 1, column: 0 },
      "Nothing about a medicine is filled in for you. Yellow cells are yours. In doubt ask your vet (see Start).",
      "note",
    );
    writeFields(sheet, nameCell, places.fields, medicineFields(content));
    sheet.put({ row: bathRow - 1, column: 0 }, "Footbath", "question");
    writeFields(sheet, nameCell, bathRow, bathFields(content));
    writeBath(sheet);
    writeDoses(sheet, content);
    sheet.protect();
    sheet.print({ cells: `$A$1:$H$${places.weighed + room.weighed + 1}`, onOnePage: true });
    nameCell("bath_litres", sheet.name, { top: places.bathAnswers, left: 1, bottom: places.bathAnswers, right: 1 });
    nameCell("dose_total", sheet.name, { top: places.batch + 1, left: 1, bottom: places.batch + 1, right: 1 });
  },
});

function writeBath(sheet: SheetAuthor): void {
  const litres = `$B$${places.bathAnswers + 1}`;
  const answers = [
    [
      "Litres of bath",
      unlessBlank(
        ["bath_length", "bath_width", "bath_depth"],
        orWords(
          `FOOT.BATHLITRES(bath_length,bath_width,bath_depth,${optional("bath_base")})`,
          "look at the measures: they are in cm",
        ),
      ),
    ],
    [
      "Product and water",
      `IF(ISNUMBER(${litres}),${unlessBlank(["bath_percent", "bath_kind"], orWords(`FOOT.BATHMIX(${litres},bath_percent,bath_kind)`, "no mix: too strong does harm, ask your vet"))},"")`,
    ],
  ] as const;
  answers.forEach(([label, formula], step) => {
    const row = places.bathAnswers + step;
    sheet.put({ row, column: 0 }, label, "strong");
    sheet.dress({ top: row, left: 1, bottom: row, right: 2 }, "workedMl");
    sheet.put({ row, column: 1 }, { formula });
  });
  sheet.put(
    { row: places.bathAnswers + 1, column: 3 },
    {
      formula: `IF(ISNUMBER($B$${places.bathAnswers + 2}),IF(OR(bath_kind="formalin",bath_kind="liquid"),"litres, and litres of water","kg, and litres to fill up to"),"")`,
    },
    "note",
  );
}

function writeDoses(sheet: SheetAuthor, { weighed }: VisitContent): void {
  const row = places.weighed;
  const area = tableAt("weighed", row);
  const first = row + 1;
  sheet.put({ row: places.batch - 1, column: 0 }, "Doses for the weights met", "question");
  sheet.putRow({ row: places.batch, column: 1 }, ["total ml", "bottles", "largest ml"], "workedHeadingCentre");
  sheet.put({ row: places.batch + 1, column: 0 }, "For all together, with spare", "strong");
  sheet.dress({ top: places.batch + 1, left: 1, bottom: places.batch + 1, right: 3 }, "workedMl");
  sheet.put({ row: places.batch + 1, column: 2 }, null, "workedCount");
  const ifWeighed = (formula: string): string =>
    `IF(COUNTA(Weighed[Weight kg])=0,"",${unlessBlank(filled, orWords(formula, "look at weights, strength and marks"))})`;
  sheet.put(
    { row: places.batch + 1, column: 1 },
    {
      formula: ifWeighed(`FOOT.BATCHML(Weighed[Weight kg],mg_per_kg,mg_per_ml,mark_ml,spare,${optional("bottle_ml")})`),
    },
  );
  writeHeadings(sheet, { row, column: 0 }, headings.weighed, ["fieldTag", "fieldCount"]);
  sheet.putRow({ row, column: 2 }, ["dose ml", "site 1", "site 2", "site 3", "site 4"], "workedHeadingCentre");
  sheet.dress({ ...area, top: first, right: 0 }, "fieldTag");
  sheet.dress({ ...area, top: first, left: 1 }, "fieldCount");
  sheet.dress({ top: first, left: 2, bottom: row + room.weighed, right: 6 }, "workedMl");
  weighed.forEach((animal, place) => {
    sheet.putRow({ row: first + place, column: 0 }, inOrder("weighed", animal));
  });
  sheet.table("Weighed", area, false);
  sheet.accept(
    { ...area, top: first, left: 1 },
    { of: { number: ["1", "200"] }, words: "Type the weight in kg, 1 to 200." },
  );
  const dosed = ifWeighed("FOOT.DOSEML(Weighed[Weight kg],mg_per_kg,mg_per_ml,mark_ml)");
  sheet.put({ row: first, column: 2 }, { formula: dosed });
  sheet.put(
    { row: row - 1, column: 2 },
    { formula: cutOff(dosed, `$C$${first + 1}:$C$${first + room.weighed}`) },
    "careHeading",
  );
  for (let place = 0; place < room.weighed; place++) {
    const dose = `$C${first + place + 1}`;
    const shared = `TRANSPOSE(FOOT.SITEML(${dose},${optional("sites_least")},${optional("site_most")},mark_ml))`;
    sheet.put(
      { row: first + place, column: 3 },
      { formula: `IF(ISNUMBER(${dose}),${orWords(shared, "look at sites, most ml and marks")},"")` },
    );
  }
  sheet.emphasize({ top: first, left: 2, bottom: row + room.weighed, right: 6 }, [`ISNUMBER($C${first + 1})`, "line"]);
}
