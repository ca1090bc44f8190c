import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { nodePacking } from "../../src/cli/nodePacking.ts";
import { usualLimits } from "../../src/workbook/limits.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { readZip, unpackOnDemand } from "../../src/workbook/zip/readZip.ts";
import { writeZip } from "../../src/workbook/zip/writeZip.ts";
import { buildWorkbook, rowsOf } from "./buildWorkbook.ts";

const book = readFileSync("samples/flock-foot-book.xlsx");
const all = () => true;

describe("Node.js's own zlib", () => {
  it("unpacks what the library unpacks", () => {
    for (const wanted of [all, (name: string) => name.startsWith("xl/worksheets/")]) {
      const entries = readZip(book, usualLimits, wanted, nodePacking);
      const expected = readZip(book, usualLimits, wanted);
      expect(entries.map(({ name, stored }) => [name, stored])).toEqual(expected.map((one) => [one.name, one.stored]));
      entries.forEach(({ name, bytes }, index) => {
        expect(Buffer.compare(bytes, expected[index]?.bytes ?? new Uint8Array([0])), name).toBe(0);
      });
    }
  });

  it("packs what other programs unpack", async () => {
    const entries = readZip(book, usualLimits).map((entry, index) => ({ ...entry, stored: index % 3 === 0 }));
    const packed = writeZip([...entries, { name: "empty", bytes: new Uint8Array(), stored: false }], nodePacking);
    const parts = unzipSync(packed);
    expect(Object.keys(parts)).toEqual([...entries.map(({ name }) => name), "empty"]);
    for (const { name, bytes } of entries) expect(Buffer.compare(parts[name] ?? new Uint8Array(), bytes), name).toBe(0);
    expect(readZip(packed, usualLimits, all, nodePacking).map(({ name }) => name)).toEqual(Object.keys(parts));
    const read = new ExcelJS.Workbook();
    await read.xlsx.load(Buffer.from(packed).buffer as ArrayBuffer);
    expect(read.worksheets.map(({ name }) => name)).toEqual(openWorkbook(book).sheets.map(({ name }) => name));
  });

  it("packs no larger than the library does", () => {
    const entries = readZip(book, usualLimits);
    expect(writeZip(entries, nodePacking).length).toBeLessThan(writeZip(entries).length * 1.02);
  });

  it("refuses a part that is damaged, cut short or longer than is stated", () => {
    const packed = buildWorkbook({ sheets: [{ name: "Treatments", rows: rowsOf({ A1: 28, B1: "clear", A2: 4.5 }) }] });
    const open = (bytes: Uint8Array) => openWorkbook(bytes, usualLimits, nodePacking);
    expect(open(packed).sheets).toHaveLength(1);
    const start = Buffer.from(packed).indexOf("xl/worksheets/sheet1.xml") + "xl/worksheets/sheet1.xml".length;
    for (let at = start; at < start + 100; at += 1) {
      const flipped = Uint8Array.from(packed);
      flipped[at] = (flipped[at] as number) ^ (1 << (at % 8));
      expect(() => open(flipped)).toThrow(/^The file is damaged/);
    }
    const bomb = Buffer.from(zipSync({ "a.xml": strToU8("0".repeat(1_000_000)) }));
    // Its length unpacked, in the directory (APPNOTE 4.3.12): what is unpacked stops there.
    bomb.writeUInt32LE(10, bomb.lastIndexOf("PK\u0001\u0002") + 24);
    expect(() => readZip(bomb, usualLimits, all, nodePacking)).toThrow(/^The file is damaged/);
  });
});

describe.each([
  ["the library", undefined],
  ["Node.js's own zlib", nodePacking],
])("parts that are asked for one by one, by %s", (_, packing) => {
  it("are those that are read all at once, however they are packed", () => {
    const entries = readZip(book, usualLimits).map((entry, index) => ({ ...entry, stored: index % 3 === 0 }));
    // The library leaves parts unpacked that are to stay as they are; zlib packs them without making them smaller.
    for (const bytes of [book, writeZip(entries), writeZip(entries, nodePacking)]) {
      const parts = unpackOnDemand(bytes, usualLimits, packing);
      const expected = readZip(bytes, usualLimits);
      expect([...parts.keys()]).toEqual(expected.map(({ name }) => name));
      for (const { name, bytes: whole } of expected)
        expect(Buffer.compare(parts.get(name)?.() ?? new Uint8Array([0]), whole), name).toBe(0);
    }
  });

  it("are refused when they are damaged, by name, and the others are read", () => {
    const packed = buildWorkbook({ sheets: [{ name: "Treatments", rows: rowsOf({ A1: 28, B1: "clear", A2: 4.5 }) }] });
    const part = "xl/worksheets/sheet1.xml";
    const start = Buffer.from(packed).indexOf(part) + part.length;
    for (let at = start; at < start + 40; at += 1) {
      const flipped = Uint8Array.from(packed);
      flipped[at] = (flipped[at] ?? 0) ^ 1;
      const parts = unpackOnDemand(flipped, usualLimits, packing);
      expect(() => parts.get(part)?.()).toThrow(/^The file is damaged/);
      expect(parts.get("xl/workbook.xml")?.().length).toBeGreaterThan(100);
    }
  });
});
