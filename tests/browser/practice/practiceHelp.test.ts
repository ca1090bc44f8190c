import { describe, expect, it } from "vitest";
import { barriers } from "../barriers.ts";
import { enter, goTo, said, toSheet } from "./practicePage.ts";
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
