import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { unzipSync } from "fflate";
import { beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { tagKey } from "../../src/core/words/tagKey.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { placeText } from "../../src/workbook/address.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { type Recalculated, recalculate } from "../../src/workbook/recalculate.ts";
import { farmRecords } from "../../src/workbooks/farmRecords/farmRecords.ts";
import type { PlacedAnswer } from "../../src/workbooks/farmRecords/placedAnswers.ts";
import { latestGathersFrom } from "../../src/workbooks/farmRecords/settingsSheet.ts";
import { year } from "../../src/workbooks/inventedFlock/flockYear.ts";
import { inventedFlock, sampleSeed } from "../../src/workbooks/inventedFlock/inventedFlock.ts";
import { printedTag } from "../../src/workbooks/inventedFlock/printedTag.ts";
import { authorWorkbook } from "../../src/workbooks/writing/authorWorkbook.ts";
import { jStat } from "../bench/jStat.ts";
import { sheetCells } from "./sheetCells.ts";

const bytes = readFileSync(fileURLToPath(new URL("../../samples/farm-records.xlsx", import.meta.url)));
const cells = sheetCells(bytes);
const { plan, answers } = farmRecords(sampleSeed);
const { cases, gathers } = inventedFlock(sampleSeed);

function answerTo(question: string): PlacedAnswer {
  const found = answers.find((answer) => answer.question.startsWith(question));
  if (!found) throw new Error(`the sample does not ask: ${question}`);
  return found;
}

/** The rows of an answer under its headings. */
function rowsUnder(question: string): readonly (readonly Cell[])[] {
  const { sheet, names, gives } = answerTo(question);
  if (!names) throw new Error(`${question} has no table`);
  const rows: Cell[][] = [];
  for (let row = names.row + 1; ; row++) {
    const record = gives.result.headings.map(
      (_, step) => cells.get(`${sheet}!${placeText({ row, column: names.column + step })}`) ?? null,
    );
    if (record.every((cell) => cell === null)) return rows;
    rows.push(record);
  }
}

const single = (question: string, step = 0): Cell | undefined => {
  const { sheet, at } = answerTo(question);
  return cells.get(`${sheet}!${placeText({ row: at.row, column: at.column + step })}`);
};

const total = (numbers: readonly number[]) => numbers.reduce((sum, number) => sum + number, 0);
/** The logarithm of the ways to draw `k` out of `n`. */
const logWays = (n: number, k: number) => logFactorial(n) - logFactorial(k) - logFactorial(n - k);
const logFactorial = (n: number) => logFactorials[n] ?? Number.NaN;
const logFactorials = [0];
for (let n = 1; n <= 5000; n++) logFactorials.push((logFactorials[n - 1] ?? 0) + Math.log(n));
const near = (value: number | null) => (value === null ? null : expect.closeTo(value, 9));

/** The share still lame by days since treatment, with its limits where there are any: a step for each day of change. */
function curveByHand() {
  const watched = cases.flatMap(({ treated, sound }) =>
    treated === undefined ? [] : [{ days: (sound ?? year.last) - treated, isSound: sound !== undefined }],
  );
  const last = Math.max(...watched.map(({ days }) => days));
  let [stillLame, variance] = [1, 0];
  return Array.from({ length: last + 1 }, (_, day) => {
    const atRisk = watched.filter(({ days }) => days >= day).length;
    const sound = watched.filter(({ days, isSound }) => isSound && days === day).length;
    stillLame *= 1 - sound / atRisk;
    variance += sound / (atRisk * (atRisk - sound));
    // Greenwood's variance on the scale log(−log), where limits to either side are powers of the share.
    const power = Math.exp((jStat.normal.inv(0.975, 0, 1) * Math.sqrt(variance)) / -Math.log(stillLame));
    const limits = stillLame > 0 && stillLame < 1 ? [stillLame ** power, stillLame ** (1 / power)] : [null, null];
    return { day, atRisk, sound, shares: [stillLame, ...limits] };
  }).filter(({ day, sound }) => sound > 0 || day === 0 || day === last);
}

const keyOf = ({ animal }: { animal: { number: number } }) => tagKey(printedTag(animal.number));
const keyIn = (cell: Cell | undefined) => tagKey(String(cell));

describe("samples/farm-records.xlsx", () => {
  let again: Recalculated;
  beforeAll(async () => {
    again = await recalculate(openWorkbook(await authorWorkbook(plan)), engineInNode());
  });

  test("is what npm run samples makes, byte for byte", () => {
    expect(Buffer.from(again.bytes).equals(bytes)).toBe(true);
  });

  test("holds its formulas as Excel stores them, each with its value", () => {
    const parts = Object.entries(unzipSync(bytes)).filter(([name]) => name.startsWith("xl/worksheets/sheet"));
    const text = parts.map(([, part]) => Buffer.from(part).toString("utf8")).join("");
    expect(text).toContain("_xldudf_FOOT_CLEARDATE(");
    expect(text).not.toMatch(/FOOT\.[A-Z]/);
  });

  test("ends in an error only where a record must be mended", () => {
    const [first, second, ...more] = again.summary.errors;
    expect(first).toMatchObject({ sheet: "Cases", message: expect.stringContaining('"sore" is not a lesion') });
    expect(second).toMatchObject({ sheet: "Cases", message: expect.stringContaining('"hot hoof?" is not a lesion') });
    expect(more).toEqual([]);
    expect(again.summary.left).toEqual([]);
  });

  test("says on its first sheet that the flock is invented", () => {
    expect(cells.get("Start!A3")).toBe("This flock is invented. No animal, farm or medicine in it exists.");
  });
});

// What the sheets say, against plain arithmetic on the flock before the slips of the hand.
describe("the answers of the sample", () => {
  test("share lame, now and over the year", () => {
    const latest = gathers.filter(({ date }) => date >= latestGathersFrom);
    const share = (some: typeof gathers) => total(some.map(({ lame }) => lame)) / total(some.map(({ seen }) => seen));
    expect(single("Share lame at the latest gathers")).toBeCloseTo(share(latest), 12);
    expect(single("Share lame over the whole year")).toBeCloseTo(share(gathers), 12);
  });

  test("the flock's range: every number of lame sheep of which neither tail is below 2.5 %, tried one by one", () => {
    const latest = gathers.filter(({ date }) => date >= latestGathersFrom);
    const [x, n] = [total(latest.map(({ lame }) => lame)), total(latest.map(({ seen }) => seen))];
    const label = [...cells].find(([, cell]) => cell === "Sheep in the flock")?.[0] ?? "";
    const flock = Number(cells.get(label.replace("!A", "!B")));
    expect(flock).toBeGreaterThan(n);
    const draws = (lame: number, from: number, to: number): number => {
      let sum = 0;
      for (let drawn = Math.max(from, n - (flock - lame)); drawn <= Math.min(to, n, lame); drawn++)
        sum += Math.exp(logWays(lame, drawn) + logWays(flock - lame, n - drawn) - logWays(flock, n));
      return sum;
    };
    const held = Array.from({ length: flock + 1 }, (_, lame) => lame).filter(
      (lame) => draws(lame, x, n) >= 0.025 && draws(lame, 0, x) >= 0.025,
    );
    const range = [single("The whole flock lies between"), single("The whole flock lies between", 1)];
    expect(range).toEqual([held[0], held.at(-1)].map((lame) => expect.closeTo((lame ?? Number.NaN) / flock, 12)));
  });

  test("groups over the year", () => {
    for (const [group, lame, seen] of rowsUnder("Which group was worst over the year").slice(0, -1)) {
      const its = gathers.filter((gather) => gather.group === group);
      expect([lame, seen]).toEqual([total(its.map((g) => g.lame)), total(its.map((g) => g.seen))]);
    }
  });

  test("lesions, with the two unknown words counted apart", () => {
    const mix = rowsUnder("What makes them lame");
    expect(total(mix.map(([, count]) => Number(count)))).toBe(cases.length);
    expect(mix.find(([lesion]) => lesion === "not recognised")?.[1]).toBe(2);
    const differences = mix
      .filter(([lesion]) => lesion !== "not recognised")
      .map(([lesion, count]) => cases.filter((record) => record.lesion === lesion).length - Number(count));
    expect(differences.every((difference) => difference >= 0)).toBe(true);
    expect(total(differences)).toBe(2);
  });

  test("animals not clear: exactly those within their days, and the one whose days are missing", () => {
    const waiting = new Set(
      cases
        .filter(({ treated, withdrawalDays: days }) => treated !== undefined && days && treated + days + 1 > year.last)
        .map(keyOf),
    );
    const [unknown, ...known] = rowsUnder("Who is not clear today");
    expect(String(unknown?.[3])).toMatch(/^withdrawal_days, row \d+: a treatment without withdrawal days/);
    expect(new Set([unknown, ...known].map((row) => keyIn(row?.[0])))).toEqual(waiting);
    for (const [tag, clear] of known) {
      const days = cases.flatMap((record) =>
        keyOf(record) === keyIn(tag) && record.treated !== undefined && record.withdrawalDays !== undefined
          ? [record.treated + record.withdrawalDays + (record.withdrawalDays > 0 ? 1 : 0)]
          : [],
      );
      expect(clear).toBe(Math.max(...days));
    }
  });

  test("second looks due or overdue", () => {
    const due = cases.filter(
      ({ treated, lookedAgain }) => treated !== undefined && lookedAgain === undefined && treated + 7 <= year.last + 7,
    );
    const listed = rowsUnder("Whom to look at this week");
    expect(listed.map(([tag, day]) => [keyIn(tag), day]).sort()).toEqual(
      due.map((record) => [keyOf(record), (record.treated ?? 0) + 7]).sort(),
    );
  });

  test("sale list: holds whoever is in withdrawal on the day of the sale, and knows the stray", () => {
    const list = rowsUnder("Can they go to the sale");
    for (const [tag, answer] of list) {
      const records = cases.filter((record) => keyOf(record) === keyIn(tag) && record.treated !== undefined);
      const holds = records.some(
        ({ treated = 0, withdrawalDays: days = 0 }) => days > 0 && treated + days + 1 > year.sale,
      );
      expect(answer, String(tag)).toBe(records.length === 0 ? "no treatment recorded" : holds ? "hold" : "clear");
    }
    expect(new Set(list.map(([, answer]) => answer))).toEqual(new Set(["hold", "clear", "no treatment recorded"]));
    expect(list.map(([tag]) => tag)).toContain("ZZ 0123456 07777");
  });

  test("keep-apart list: everyone last written down as lame, or sound for less than a week", () => {
    const latest = new Map<string, { day: number; lame: boolean }>();
    for (const record of cases) {
      const now = record.sound === undefined ? { day: record.seen, lame: true } : { day: record.sound, lame: false };
      const before = latest.get(keyOf(record));
      if (!before || now.day > before.day || (now.day === before.day && now.lame)) latest.set(keyOf(record), now);
    }
    const lame = [...latest].filter(([, { lame }]) => lame).map(([key]) => key);
    const list = rowsUnder("Whom to keep apart at the next housing");
    const listedLame = list.filter(([, why]) => String(why).startsWith("lame on")).map(([tag]) => keyIn(tag));
    expect(listedLame.sort()).toEqual(lame.sort());
    const settling = [...latest].filter(([, { day, lame }]) => !lame && year.nextHousing - day < 7).map(([key]) => key);
    const listedSettling = list.filter(([, why]) => String(why).startsWith("sound only")).map(([tag]) => keyIn(tag));
    expect(listedSettling.sort()).toEqual(settling.sort());
    expect(settling.length).toBeGreaterThan(1);
    for (const [tag, , last] of list) expect(latest.get(keyIn(tag))?.day).toBe(last);
  });

  test("animals lame again: records more than 14 days apart are cases of their own", () => {
    const days = new Map<string, number[]>();
    for (const record of cases) days.set(keyOf(record), [...(days.get(keyOf(record)) ?? []), record.seen]);
    const casesOf = (seen: readonly number[]) =>
      seen.filter((day, index) => index === 0 || day - (seen[index - 1] ?? 0) > 14).length;
    const expected = [...days].map(([key, seen]) => [key, casesOf(seen)] as const).filter(([, count]) => count >= 2);
    const listed = rowsUnder("Who was lame again and again").map(([tag, count]) => [keyIn(tag), count]);
    expect(listed.sort()).toEqual([...expected].sort());
  });

  test("waiting for treatment", () => {
    const treated = cases.filter((record) => record.treated !== undefined);
    const waits = treated.map((record) => (record.treated ?? 0) - record.seen).sort((one, other) => one - other);
    const [[median, inTime, untreated] = []] = rowsUnder("How long lame sheep wait");
    const middle = [waits[Math.floor((waits.length - 1) / 2)], waits[Math.ceil((waits.length - 1) / 2)]];
    expect(median).toBe(((middle[0] ?? 0) + (middle[1] ?? 0)) / 2);
    expect(untreated).toBe(cases.length - treated.length);
    // Whoever may still be treated on one of the three days is not counted, treated or not: else the quick ones of the
    // last days would be counted and the slow ones not.
    const decided = cases.filter(({ seen }) => seen + 3 < year.last);
    const soon = decided.filter(({ seen, treated = Number.POSITIVE_INFINITY }) => treated <= seen + 3);
    expect(inTime).toBeCloseTo(soon.length / decided.length, 12);
    expect(soon.length).toBeLessThan(decided.length);
  });

  test("medicine used", () => {
    for (const [product, courses, ml, mg] of rowsUnder("How much medicine").slice(0, -1)) {
      const its = cases.filter(({ medicine }) => medicine === product);
      expect(courses).toBe(its.length);
      expect(ml).toBeCloseTo(total(its.map((record) => record.ml ?? 0)), 8);
      expect(mg).toBeCloseTo(total(its.map((record) => (record.ml ?? 0) * (record.mgPerMl ?? 0))), 6);
    }
  });

  test("cure curve: the product, day by day, of the shares of those still watched that stay lame", () => {
    const curve = curveByHand();
    const rows = rowsUnder("How fast they get sound");
    expect(curve.length).toBeGreaterThan(10);
    expect(rows).toEqual(
      curve.map(({ day, atRisk, sound, shares }) => [day, atRisk, sound, ...shares.map((share) => near(share))]),
    );
    expect(total(rows.map((row) => Number(row[2])))).toBe(cases.filter(({ sound }) => sound !== undefined).length);
    const [stillLame, low, high] = curve.findLast(({ day }) => day <= 14)?.shares ?? [];
    const soundByThen = [stillLame, high, low].map((share) => near(1 - (share ?? Number.NaN)));
    expect(rowsUnder("How many are sound 14 days after treatment")).toEqual([soundByThen]);
  });

  test("record check: every slip of the hand in a checked column is found, and nothing else", () => {
    const findings = rowsUnder("What to mend").filter(([row]) => row !== null);
    const slips: (readonly [number, string])[] = [];
    let last = 4;
    while (cells.has(`Cases!A${last + 1}`) || cells.has(`Cases!A${last + 2}`)) last++;
    const headings = "ABCDEFGHIJKLMNO"
      .split("")
      .map((column) => [column, String(cells.get(`Cases!${column}4`))] as const);
    for (let row = 5; row <= last; row++) {
      for (const [column, heading] of headings) {
        const cell = cells.get(`Cases!${column}${row}`);
        const keptAsText = typeof cell === "string" && !Number.isNaN(Number(cell)) && heading !== "Strength mg/ml";
        const dateAsText = /^\d{4}-\d\d-\d\d$/.test(String(cell));
        const unknown = cell === "sore" || cell === "hot hoof?";
        const missing = heading === "Withdrawal days" && cell === undefined && cells.has(`Cases!B${row}`);
        if (keptAsText || dateAsText || unknown || missing) slips.push([row, heading]);
      }
    }
    expect(findings.map(([row, column]) => [row, column])).toEqual(slips);
    expect(slips.length).toBeGreaterThan(30);
  });

  test("the treatment without its days has words for a clear date, never a date", () => {
    const words = [...cells].filter(([address, cell]) => /^Cases!P\d+$/.test(address) && typeof cell === "string");
    expect(words.slice(1).map(([, cell]) => cell)).toEqual(["no withdrawal days"]);
  });

  test("each case's clear date, second look and lesion stand beside it", () => {
    const record = cases[0];
    if (record?.treated === undefined) throw new Error("the first case was not treated");
    const days = record.withdrawalDays ?? 0;
    expect(cells.get("Cases!P5")).toBe(record.treated + days + (days > 0 ? 1 : 0));
    expect(cells.get("Cases!Q5")).toBe(record.treated + 7);
    expect(cells.get("Cases!S5")).toBe(record.lesion);
  });
});
