import { describe, expect, it } from "vitest";
import { type ExcelScript, excelHost, type OfficeScript } from "../../../src/hosts/excel/excelHost.ts";

const plain = { formattedNumbers: false, dateSystem: 1900 };
const never = new Promise<never>(() => {});

const office = (...sets: readonly string[]): OfficeScript => ({
  onReady: async () => ({ host: "Excel" }),
  context: { requirements: { isSetSupported: (name, version) => sets.includes(`${name} ${version}`) } },
});

/** An Excel whose DATE(1904, 1, 1) has this value, once what was asked for is fetched. */
const excelWith = (value: unknown, sync: () => Promise<unknown> = async () => undefined): ExcelScript => ({
  run: (batch) => {
    let asked = "";
    let fetched = false;
    const date = (year: number, month: number, day: number) => ({
      load: (name: string) => {
        asked = name;
      },
      get value() {
        if (!fetched || asked !== "value") throw new Error("read before it was fetched");
        return [year, month, day].join() === "1904,1,1" ? value : undefined;
      },
    });
    return batch({
      workbook: { functions: { date } },
      sync: async () => {
        await sync();
        fetched = true;
      },
    });
  },
});

describe("excelHost", () => {
  it("is plain without the vendor's script", async () => {
    expect(await excelHost(undefined, () => undefined)).toEqual(plain);
  });

  it("is plain in a browser", async () => {
    expect(await excelHost({ onReady: async () => ({ host: null }) }, () => undefined)).toEqual(plain);
  });

  it("is plain when the vendor's script never gets ready", async () => {
    expect(await excelHost({ onReady: () => never }, () => undefined, 20)).toEqual(plain);
  });

  it("is plain when the vendor's script fails", async () => {
    expect(await excelHost({ onReady: () => Promise.reject(new Error("no")) }, () => undefined)).toEqual(plain);
  });

  it("knows formatted numbers from CustomFunctionsRuntime 1.4 on", async () => {
    expect(await excelHost(office("CustomFunctionsRuntime 1.4"), () => excelWith(1462))).toEqual({
      ...plain,
      formattedNumbers: true,
    });
    expect(await excelHost(office("CustomFunctionsRuntime 1.3", "ExcelApi 1.16"), () => excelWith(1462))).toEqual(
      plain,
    );
  });

  it("learns the date system from the sheet's own DATE", async () => {
    expect((await excelHost(office(), () => excelWith(0))).dateSystem).toBe(1904);
    expect((await excelHost(office(), () => excelWith(1462))).dateSystem).toBe(1900);
  });

  it("counts from 1900 when Excel does not answer in time or at all", async () => {
    expect((await excelHost(office(), () => excelWith(0, () => never), 20)).dateSystem).toBe(1900);
    expect((await excelHost(office(), () => excelWith(0, () => Promise.reject(new Error("busy"))))).dateSystem).toBe(
      1900,
    );
    expect((await excelHost(office(), () => undefined)).dateSystem).toBe(1900);
  });

  it("takes in what Excel says later", async () => {
    let answer = (): void => {};
    const asked = new Promise<void>((resolve) => {
      answer = resolve;
    });
    const slowDate = await excelHost(office("CustomFunctionsRuntime 1.4"), () => excelWith(0, () => asked), 20);
    const onReady = () => asked.then(() => ({ host: "Excel" }));
    const slowScript = await excelHost({ ...office("CustomFunctionsRuntime 1.4"), onReady }, () => excelWith(0), 20);
    expect([slowDate, slowScript]).toEqual([{ formattedNumbers: true, dateSystem: 1900 }, plain]);
    answer();
    await new Promise((resolve) => setTimeout(resolve));
    const full = { formattedNumbers: true, dateSystem: 1904 };
    expect([slowDate, slowScript]).toEqual([full, full]);
  });
});
