import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { type Cell, isCellError } from "../../../src/cells/cell.ts";
import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../../src/workbook/recalculate.ts";
import { buildWorkbook, rowsOf } from "../buildWorkbook.ts";

interface Random {
  readonly columns: Readonly<Record<string, readonly (number | string | boolean | null)[]>>;
  readonly cases: readonly { readonly formula: string; readonly value: number | string | boolean }[];
}

// Made by writeRandom.py with LibreOffice.
const { columns, cases } = JSON.parse(readFileSync(new URL("random.json", import.meta.url), "utf8")) as Random;

const escaped = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");

function randomWorkbook(): Uint8Array {
  const cells: Record<string, number | string | boolean> = {};
  for (let row = 0; row < 16; row += 1)
    for (const [letter, values] of Object.entries(columns)) {
      const value = values[row];
      if (value !== null && value !== undefined) cells[`${letter}${row + 1}`] = value;
    }
  const formulas = cases.map(
    ({ formula }, index) => `<row r="${index + 1}"><c r="A${index + 1}"><f>${escaped(formula)}</f></c></row>`,
  );
  return buildWorkbook({
    sheets: [
      { name: "Data", rows: rowsOf(cells) },
      { name: "Formulas", rows: formulas.join("") },
    ],
  });
}

const isErrorText = (value: unknown): boolean => typeof value === "string" && /^#[A-Z/0]+[!?]?/.test(value);

/** LibreOffice saves 15 digits, and most of its own errors as #VALUE!. */
function alike(one: Cell | undefined, other: Random["cases"][number]["value"]): boolean {
  if (isCellError(one) || isErrorText(other)) return isCellError(one) && isErrorText(other);
  if (typeof one === "number" && typeof other === "number")
    return Math.abs(one - other) <= 1e-12 * Math.max(Math.abs(other), 1);
  return one === other;
}

describe("random formulas of common worksheets", () => {
  const values = new Map<number, Cell>();
  const left = new Map<number, string>();
  beforeAll(async () => {
    const { bytes, summary } = await recalculate(openWorkbook(randomWorkbook()), engineInNode(), undefined, {
      all: true,
    });
    for (const { row, cells } of openWorkbook(bytes).sheets[1]?.rows ?? []) values.set(row, cells[0]?.value ?? null);
    for (const { sheet, address, reason } of summary.left)
      if (sheet === "Formulas") left.set(Number(address.slice(1)) - 1, reason);
  }, 120_000);

  it("come to what another spreadsheet comes to, or are left and said", () => {
    expect(cases.length).toBeGreaterThan(2000);
    const wrong = cases.flatMap(({ formula, value }, row) =>
      left.has(row) || alike(values.get(row), value)
        ? []
        : [`${formula}: ${JSON.stringify(values.get(row))} instead of ${JSON.stringify(value)}`],
    );
    expect(wrong).toEqual([]);
  });

  it("are seldom left", () => {
    expect([...left.values()].length).toBeLessThan(cases.length / 50);
  });
});
