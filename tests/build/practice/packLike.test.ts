import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { packLike } from "../../../src/build/practice/packLike.ts";
import { unpackLike } from "../../../src/pages/practice/files/likeBook.ts";
import { usualLimits } from "../../../src/workbook/limits.ts";
import { readZip } from "../../../src/workbook/zip/readZip.ts";
import { writeZip } from "../../../src/workbook/zip/writeZip.ts";

const sample = (name: string): Uint8Array => new Uint8Array(readFileSync(`samples/${name}`));

test("the empty foot book told by the filled one comes out byte for byte, from a tenth of its size", () => {
  const [book, base] = [sample("flock-foot-book-empty.xlsx"), sample("flock-foot-book.xlsx")];
  const packed = packLike(book, base);
  expect(packed.length).toBeLessThan(book.length / 10);
  expect(Buffer.compare(writeZip(unpackLike(packed, readZip(base, usualLimits))), book)).toBe(0);
});

test("a book with parts that the other has not comes out whole as well", () => {
  const [book, base] = [sample("visit-sheet-empty.xlsx"), sample("flock-comparison-empty.xlsx")];
  const packed = packLike(book, base);
  expect(Buffer.compare(writeZip(unpackLike(packed, readZip(base, usualLimits))), book)).toBe(0);
});
