import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { areaText, columnLetters, columnNumber, readArea, readPlace } from "../../src/workbook/address.ts";
import { quoteSheet, unquoteSheet } from "../../src/workbook/formula/structured.ts";
import { resolvePart } from "../../src/workbook/parts/relationships.ts";
import { setAttribute } from "../../src/workbook/saving/addNumberFormats.ts";
import { splice } from "../../src/workbook/saving/splice.ts";
import { WorkbookProblem } from "../../src/workbook/workbookProblem.ts";
import { decodeText, encodeText } from "../../src/workbook/xml/escapeXml.ts";
import { walkXml } from "../../src/workbook/xml/walkXml.ts";

describe("addresses", () => {
  it("count columns as spreadsheets do", () => {
    expect([0, 25, 26, 701, 702, 16383].map(columnLetters)).toEqual(["A", "Z", "AA", "ZZ", "AAA", "XFD"]);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 16383 }), (column) => {
        expect(columnNumber(columnLetters(column))).toBe(column);
      }),
    );
  });

  it("refuse what lies outside a sheet", () => {
    expect(["XFE1", "A0", "A1048577", "A", "1", "AAAA1", "A1B"].map(readPlace)).toEqual(new Array(7).fill(undefined));
    expect(areaText(readArea("c3:$A$1") ?? { top: 9, left: 9, bottom: 9, right: 9 })).toBe("A1:C3");
  });
});

describe("walking XML", () => {
  it("knows the place of every element, whatever ends the lines", () => {
    const text = '\ufeff<?xml version="1.0"?>\r\n<a>\r\n<b x="1&gt;2" y=\'<\'.replace/></a>'.replace(
      "y='<'.replace",
      "y='2'",
    );
    const places: string[] = [];
    walkXml("part", text, {
      open: ({ name, start, end, attributes }) =>
        places.push(`${name} ${text.slice(start, end)} ${attributes.x ?? ""}`),
      close: (name, start, end) => places.push(`/${name} ${text.slice(start, end)}`),
    });
    expect(places).toEqual(["a <a> ", `b <b x="1&gt;2" y='2'/> 1>2`, `/b <b x="1&gt;2" y='2'/>`, "/a </a>"]);
  });

  it("tells elements of the part's own namespace from those of others", () => {
    const names: string[] = [];
    const text =
      '<a:root xmlns:a="main" xmlns:b="other" xmlns:c="main"><a:x/><b:x/><c:x/><x/><d:x/><x xmlns="main"><x/></x><a:x xmlns:a="other"><a:x/></a:x><a:x/><b:x xmlns:b="main"/><b:x/></a:root>';
    walkXml("part", text, { open: ({ name }) => names.push(name), close: (name) => names.push(`/${name}`) });
    const opened = names.filter((name) => !name.startsWith("/"));
    expect(opened.join(" ")).toBe("root x b:x x :x d:x x x a:x a:x x x b:x");
    expect(
      names
        .filter((name) => name.startsWith("/"))
        .map((name) => name.slice(1))
        .sort(),
    ).toEqual([...opened].sort());
  });

  it("looks for declarations in tags only", () => {
    const names: string[] = [];
    const text =
      '<root xmlns="main">xmlns:b="main" <!-- xmlns="other" --><x y="xmlns=&quot;other&quot;"/><b:x/></root>';
    walkXml("part", text, { open: ({ name }) => names.push(name) });
    expect(names).toEqual(["root", "x", "b:x"]);
  });

  it("refuses what is not well-formed", () => {
    for (const text of ["<a>", "<a></b>", "<a x=1/>", "<a/><b/>", "", "<a>&nosuch;</a>"]) {
      expect(() => walkXml("part", text, {})).toThrow(WorkbookProblem);
    }
  });
});

describe("small pieces", () => {
  it("exchange pieces of a text in any order given", () => {
    expect(
      splice("abcdef", [
        { start: 4, end: 5, text: "E" },
        { start: 1, end: 1, text: "1" },
        { start: 1, end: 1, text: "2" },
      ]),
    ).toBe("a12bcdEf");
    expect(() =>
      splice("abc", [
        { start: 0, end: 2, text: "" },
        { start: 1, end: 3, text: "" },
      ]),
    ).toThrow(RangeError);
  });

  it("encode any text so that it reads back the same", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(decodeText(encodeText(text))).toBe(text);
      }),
    );
    fc.assert(
      fc.property(fc.constantFrom("_x0041_", "_x005F_x0041_", "\u0007", "_x00", "a_x0009_b"), (text) => {
        expect(decodeText(encodeText(text))).toBe(text);
      }),
    );
    expect(encodeText("bell \u0007 _x0041_")).toBe("bell _x0007_ _x005F_x0041_");
  });

  it("set an attribute without being misled by another's value", () => {
    expect(setAttribute(`<a x="count=9" count='1'`, "count", "2")).toBe(`<a x="count=9" count='2'`);
    expect(setAttribute("<a discount='1'", "count", "2")).toBe(`<a discount='1' count="2"`);
  });

  it("take a sheet's name out of its quotes as they put it in", () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), (name) => {
        expect(unquoteSheet(quoteSheet(name).slice(0, -1))).toBe(name);
      }),
    );
    expect(unquoteSheet("Gathers")).toBe("Gathers");
  });

  it("resolve a target against its part", () => {
    expect(resolvePart("xl/worksheets/sheet1.xml", "../tables/t.xml")).toBe("xl/tables/t.xml");
    expect(resolvePart("xl/workbook.xml", "/xl/a.xml")).toBe("xl/a.xml");
    expect(resolvePart("", "xl/workbook.xml")).toBe("xl/workbook.xml");
    expect(resolvePart("xl/workbook.xml", "../../../x")).toBe("x");
  });
});
