import { describe, expect, it } from "vitest";
import { buildWorkbook, rowsOf } from "../../workbook/buildWorkbook.ts";
import { barriers } from "../barriers.ts";
import { enter, goTo, openFile, said, toSheet } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const minutes = 60_000;
const practice = servedPractice();

describe("help in the cell", () => {
  it.each(["light", "dark"] as const)(
    "%s: the argument being typed is explained, an error is, and a step leads to the row to mend, by keyboard alone",
    async (look) => {
      const { page, troubles } = await practice.open({ look, stillness: "reduce" });
      await toSheet(page, "Cases");
      await goTo(page, "Z4990");
      const line = page.locator(".status .said");
      await page.keyboard.type("=FOOT.CLEARDATE(");
      await line.getByText("FOOT.CLEARDATE, treated:").waitFor();
      expect(await line.textContent()).toMatch(/For example/);
      await page.keyboard.type('"03/04/2026",');
      await line.getByText("FOOT.CLEARDATE, withdrawal_days:").waitFor();
      expect(await barriers(page)).toEqual([]);
      await page.keyboard.type("28)");
      await enter(page);
      await goTo(page, "Z4990");
      // Nothing of what was typed was disturbed.
      expect(await said(page, "Z4990", /FOOT\.CLEARDATE\("03\/04\/2026",28\)/)).toMatch(/03\/04\/2026/);
      await page.keyboard.type("three");
      await enter(page);
      await goTo(page, "Z4991");
      await page.keyboard.type("=FOOT.FLOCKPREV(Z4990,20)");
      await enter(page);
      await goTo(page, "Z4991");
      await said(page, "Z4991", /#VALUE!/);
      await page.keyboard.press("F6");
      await page.keyboard.press("F6");
      await page.keyboard.press("Tab");
      await page.keyboard.press("Enter");
      const explanation = page.locator(".explanation");
      await explanation.getByText("#VALUE!: ").waitFor();
      expect(await explanation.textContent()).toMatch(/lame.*Holds three/);
      expect(await barriers(page)).toEqual([]);
      await explanation.getByRole("button", { name: /go to Z4990/ }).focus();
      await page.keyboard.press("Enter");
      await said(page, "Z4990");
      expect(troubles).toEqual([]);
      await page.close();
    },
    5 * minutes,
  );
});

it(
  "the sentence of an error stands at its cell for those who come by keyboard, not over what is typed, and Escape takes it away",
  async () => {
    const { page, troubles } = await practice.open({ stillness: "reduce" });
    const rows = rowsOf({ B2: "=FOOT.FLOCKPREV(24,20)", B3: "03/04/2026", B4: 5 });
    await openFile(page, "refused.xlsx", buildWorkbook({ sheets: [{ name: "Flock", rows }] }));
    const sentence = page.locator(".sentence");
    await said(page, "A1");
    expect(await sentence.count()).toBe(0);
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowRight");
    await said(page, "B2", /24 is more than the 20 seen/);
    await sentence.filter({ hasText: "24 is more than the 20 seen" }).waitFor();
    // It is read out once: from the line below the sheet, which is a live region, and not from here.
    expect(await sentence.getAttribute("aria-hidden")).toBe("true");
    expect(await page.locator('[role="status"]').filter({ hasText: "24 is more" }).count()).toBe(1);
    // Below the cell, so that what stands in it is in sight.
    const [top, cell] = [(await sentence.boundingBox())?.y ?? 0, await page.locator(".grid").boundingBox()];
    expect(top).toBeGreaterThan((cell?.y ?? 0) + 40);
    expect(await barriers(page)).toEqual([]);
    await page.keyboard.press("Escape");
    await sentence.waitFor({ state: "detached" });
    await page.keyboard.press("ArrowDown");
    await sentence.filter({ hasText: "This is text, not a date" }).waitFor();
    await page.keyboard.press("ArrowUp");
    await sentence.filter({ hasText: "24 is more" }).waitFor();
    await page.keyboard.type("=FOOT.FLOCKPREV(2,20");
    await page.locator(".status .said").getByText("FOOT.FLOCKPREV, seen:").waitFor();
    expect(await sentence.count()).toBe(0);
    await page.keyboard.press("Escape");
    await sentence.filter({ hasText: "24 is more" }).waitFor();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowDown");
    await said(page, "B4");
    expect(await sentence.count()).toBe(0);
    expect(troubles).toEqual([]);
    await page.close();
  },
  5 * minutes,
);

it(
  "of a cell that a formula elsewhere fills that formula is explained, and where it stands is said",
  async () => {
    const { page } = await practice.open({ stillness: "reduce" });
    const treated = rowsOf({ A1: "2026-03-14", A2: "3.4.26", A3: "2026-03-16" });
    const filling = `<row r="9"><c r="A9" cm="1"><f t="array" ref="A9:A11">_xldudf_FOOT_CLEARDATE(A1:A3,28)</f><v>46123</v></c></row><row r="10"><c r="A10" t="str"><v>not read</v></c></row><row r="11"><c r="A11"><v>46125</v></c></row>`;
    await openFile(page, "filled.xlsx", buildWorkbook({ sheets: [{ name: "Flock", rows: treated + filling }] }));
    await page.getByRole("button", { name: "Explain", exact: true }).click();
    await goTo(page, "A10");
    await page.getByText("Flock A10 is filled by the formula in Flock A9.").waitFor();
    expect(await page.locator(".explanation").textContent()).toContain("FOOT.CLEARDATE(A1:A3,28)");
    await goTo(page, "A3");
    await page.getByText("Flock A3 holds no formula.").waitFor();
    await page.close();
  },
  3 * minutes,
);
