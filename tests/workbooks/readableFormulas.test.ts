import { beforeAll, describe, expect, it } from "vitest";
import { isoText } from "../../src/cells/day.ts";
import { placeText } from "../../src/workbook/address.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { sheetNames } from "../../src/workbooks/footBook/bookSheets.ts";
import { emptyBook } from "../../src/workbooks/footBook/emptyBook.ts";
import { flockFootBook } from "../../src/workbooks/footBook/flockFootBook.ts";
import { inventedBook } from "../../src/workbooks/footBook/inventedBook.ts";
import { year } from "../../src/workbooks/inventedFlock/flockYear.ts";
import { sampleSeed } from "../../src/workbooks/inventedFlock/inventedFlock.ts";
import { emptyVisit } from "../../src/workbooks/visitSheet/emptyVisit.ts";
import { inventedVisit } from "../../src/workbooks/visitSheet/inventedVisit.ts";
import { visitSheet } from "../../src/workbooks/visitSheet/visitSheet.ts";
import { authorWorkbook } from "../../src/workbooks/writing/authorWorkbook.ts";
import { emptyFootBook, type TypedBook } from "./typedFootBook.ts";

const made = isoText(year.last);

const formulasOf = (bytes: Uint8Array) =>
  openWorkbook(bytes).sheets.flatMap(({ name, rows }) =>
    rows
      .flatMap(({ cells }) => cells)
      .flatMap(({ formula, ...place }) =>
        formula === undefined
          ? []
          : [
              {
                at: `${name}!${placeText(place)}`,
                text: formula.text.replaceAll("_xldudf_FOOT_", "FOOT.").replaceAll("_xlfn.", ""),
              },
            ],
      ),
  );

/** How many calls of a function stand inside each other. */
const depthOf = (formula: string, name: string): number => {
  const open: boolean[] = [];
  let deepest = 0;
  for (const [found] of formula.matchAll(/"[^"]*"|[\w.]*\(|\)/g)) {
    if (found.startsWith('"')) continue;
    if (found === ")") open.pop();
    else open.push(found === `${name}(`);
    deepest = Math.max(deepest, open.filter(Boolean).length);
  }
  return deepest;
};

describe.each([
  ["empty Flock foot book", () => flockFootBook(emptyBook({ made }))],
  ["filled Flock foot book", () => flockFootBook(inventedBook(sampleSeed))],
  ["empty Visit sheet", () => visitSheet(emptyVisit({ made }))],
  ["filled Visit sheet", () => visitSheet(inventedVisit(sampleSeed))],
])("the formulas of the %s", (_, plan) => {
  let formulas: ReturnType<typeof formulasOf>;
  beforeAll(async () => {
    formulas = formulasOf(await authorWorkbook(plan()));
  });

  it("are none longer than a person reads: 250 letters", () => {
    expect(formulas.length).toBeGreaterThan(300);
    expect(formulas.filter(({ text }) => text.length > 250)).toEqual([]);
  });

  it("hold no call of a function of ours inside another, and no condition six deep", () => {
    const nested = formulas.filter(({ text }) => depthOf(text.replaceAll(/FOOT\.\w+\(/g, "FOOT("), "FOOT") > 1);
    expect(nested).toEqual([]);
    expect(formulas.filter(({ text }) => depthOf(text, "IF") > 5)).toEqual([]);
  });
});

/** The lists of the foot book: where each begins, and the line that sums it up. */
const summedUp = [
  ["Today!A7", "Today!A4"],
  ["Today!F7", "Today!F4"],
  ["Today!K7", "Today!K4"],
  ["Today!P7", "Today!P4"],
  ["Today!U7", "Today!U4"],
  ["Keep apart!A7", "Keep apart!A4"],
  ["May they go!D7", "May they go!A4"],
  ["Problems!A22", "Problems!A3"],
  ["Problems!A22", "Start!B5"],
] as const;

describe("a line that sums up a list", () => {
  const slips = [
    ["the day the book is worked out for", sheetNames.settings, "B5"],
    ["the year looked at", sheetNames.settings, "B6"],
    ["the days ahead", sheetNames.settings, "B10"],
    ["the gap between cases", sheetNames.settings, "B11"],
    ["the fewest cases of a repeat animal", sheetNames.settings, "B12"],
    ["the days it must have been sound", sheetNames.settings, "B13"],
    ["the day of the sale", sheetNames.sale, "C3"],
    ["the day of the event", sheetNames.apart, "B3"],
  ] as const;
  const failed = new Set<string>();

  it.each(slips)(
    "states no number while its list failed: %s cannot be read",
    async (_, sheet, address) => {
      const typing: TypedBook = await emptyFootBook();
      const day = year.last - 3;
      typing.typeCase(5, { seen: day, treated: day, tag: "ZZ 0123456 00001", withdrawalDays: 28, lesion: "footrot" });
      typing.sheet(sheetNames.sale).getCell("A8").value = "ZZ 0123456 00001";
      typing.sheet(sheet).getCell(address).value = "soon";
      const { cells } = await typing.worked();
      for (const [list, summary] of summedUp) {
        const first = cells.get(list);
        if (typeof first !== "object" || first === null) continue;
        failed.add(list);
        const said = cells.get(summary);
        expect(typeof said === "string" ? said : "no number", `${summary} of ${list}`).not.toMatch(/\d/);
        expect(typeof said, `${summary} of ${list}`).not.toBe("number");
      }
    },
    300_000,
  );

  it("was tried for every list", () => {
    expect([...failed].sort()).toEqual([...new Set(summedUp.map(([list]) => list))].sort());
  });
});
