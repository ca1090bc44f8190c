import { crc32 } from "node:zlib";
import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { usualLimits } from "../../src/workbook/limits.ts";
import { lookInto } from "../../src/workbook/lookInto.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { WorkbookProblem } from "../../src/workbook/workbookProblem.ts";
import { directoryIn } from "../../src/workbook/zip/directoryIn.ts";
import { readZip } from "../../src/workbook/zip/readZip.ts";
import { buildWorkbook, rowsOf } from "./buildWorkbook.ts";

const sheet = "xl/worksheets/sheet1.xml";
const packed = buildWorkbook({ sheets: [{ name: "Treatments", rows: rowsOf({ A1: 28, B1: "clear", A2: 4.5 }) }] });
/** The same workbook with its parts as they are, so that a changed byte unpacks without complaint. */
const plain = zipSync(unzipSync(packed), { level: 0 });

function withChanged(bytes: Uint8Array, from: string, to: string): Uint8Array {
  const text = Buffer.from(bytes).toString("latin1");
  expect(text).toContain(from);
  return Buffer.from(text.replace(from, to), "latin1");
}

const checksumsIn = (bytes: Uint8Array) => directoryIn(bytes).map(({ checksum }) => checksum);

/** The directory's place and its count of entries moved into the larger fields of ZIP64 (APPNOTE 4.3.14, 4.3.15). */
function asZip64(bytes: Uint8Array): Uint8Array {
  const end = Buffer.from(bytes.slice(-22));
  const long = Buffer.alloc(56);
  long.writeUInt32LE(0x06064b50, 0);
  long.writeBigUInt64LE(44n, 4);
  long.writeBigUInt64LE(BigInt(end.readUInt16LE(10)), 24);
  long.writeBigUInt64LE(BigInt(end.readUInt16LE(10)), 32);
  long.writeBigUInt64LE(BigInt(end.readUInt32LE(12)), 40);
  long.writeBigUInt64LE(BigInt(end.readUInt32LE(16)), 48);
  const locator = Buffer.alloc(20);
  locator.writeUInt32LE(0x07064b50, 0);
  locator.writeBigUInt64LE(BigInt(bytes.length - 22), 8);
  locator.writeUInt32LE(1, 16);
  end.writeUInt16LE(0xffff, 8);
  end.writeUInt16LE(0xffff, 10);
  end.writeUInt32LE(0xffffffff, 16);
  return Buffer.concat([bytes.slice(0, -22), long, locator, end]);
}

describe("the checksums in a zip", () => {
  it("are those of the parts", () => {
    // The check value of CRC-32 as it is published with the parameters of the sum (from memory: CBF43926).
    expect(checksumsIn(zipSync({ "a.txt": strToU8("123456789") }))).toEqual([0xcbf43926]);
    const parts = Object.values(unzipSync(packed));
    for (const bytes of [packed, plain, asZip64(packed)])
      expect(checksumsIn(bytes)).toEqual(parts.map((part) => crc32(part)));
  });

  it("are found before a comment at the end of the file", () => {
    const ended = Buffer.concat([packed, strToU8("left by a mail program")]);
    ended.writeUInt16LE(22, packed.length - 2);
    expect(checksumsIn(ended)).toEqual(checksumsIn(packed));
    expect(openWorkbook(ended).sheets).toHaveLength(1);
  });
});

describe("a part that does not match its checksum", () => {
  const damaged = withChanged(plain, "<v>28</v>", "<v>08</v>");
  const sentence = /damaged: its part xl\/worksheets\/sheet1\.xml does not match its checksum/;

  it("is refused by its name, whether the workbook is worked out or only looked into", () => {
    expect(() => openWorkbook(damaged)).toThrow(WorkbookProblem);
    expect(() => openWorkbook(damaged)).toThrow(sentence);
    expect(() => openWorkbook(asZip64(damaged))).toThrow(sentence);
    expect(() => lookInto(damaged).sheets[0]?.rows()).toThrow(sentence);
  });

  it("keeps nobody from the parts beside it", () => {
    const entries = readZip(damaged, usualLimits, (name) => name !== sheet);
    expect(entries.find(({ name }) => name === "xl/workbook.xml")?.bytes.length).toBeGreaterThan(0);
  });

  it("is refused, or cannot be unpacked, whichever bit of its packed text has flipped", () => {
    const start = Buffer.from(packed).indexOf(sheet) + sheet.length;
    const size = Buffer.from(packed).readUInt32LE(start - sheet.length - 12);
    expect(size).toBeGreaterThan(100);
    let named = 0;
    for (let at = start; at < start + size; at += 1) {
      const flipped = Uint8Array.from(packed);
      flipped[at] = (flipped[at] as number) ^ (1 << (at % 8));
      expect(() => openWorkbook(flipped)).toThrow(/damaged/);
      try {
        openWorkbook(flipped);
      } catch (error) {
        if (sentence.test((error as Error).message)) named += 1;
      }
    }
    // Most damage unpacks without complaint: only the checksum tells.
    expect(named).toBeGreaterThan(size / 2);
  });
});
