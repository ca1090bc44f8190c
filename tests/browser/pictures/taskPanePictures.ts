import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { buildAddIn } from "../buildAddIn.ts";
import type { StandInBook } from "../excelStandIn.ts";
import { type Meeting, openPane, type Pane } from "../openPane.ts";
import { flock } from "../taskPane/flock.ts";

interface Picture {
  readonly name: string;
  readonly meeting: Meeting;
  /** What a person does before the picture is taken. */
  readonly act?: (page: Page, pane: Pane) => Promise<void>;
}

const cases = { ...flock, selected: "My cases!C5" };
const tooMany = "=FOOT.FLOCKPREV(B2:B3,C2:C3)";
const refused: StandInBook = {
  ...flock,
  selected: "Gathers!E2",
  sheets: [
    {
      name: "Gathers",
      rows: [
        ["Date", "Lame", "Seen"],
        [46063, 6, 100, "", tooMany],
        [46093, 124, 120],
      ],
    },
  ],
  answers: { [tooMany]: [["#VALUE!"]] },
};
const answers = {
  "=FOOT.HOSTCHECK(A1:A2,B1)": [
    ["about", "arrives as", "what it means", "what to do"],
    ["blank cell", "a blank", "a blank cell stays blank", "nothing"],
    [
      "date cell",
      "the number 46095",
      "it is read as 14 Mar 2026, counted from 1900",
      "nothing, if the cell shows that day",
    ],
  ],
};

const hiding = '=IFERROR(FOOT.NOTCLEAR(A2:A40,B2:B40,C2:C40),"")';
const unknown: StandInBook = {
  ...flock,
  selected: "Today!A1",
  answers: { "=FOOT.FLOCKPREV(B2:B3,C2:C3)": [["#NAME?"]] },
  sheets: [
    { name: "Today", rows: [["=FOOT.FLOCKPREV(B2:B3,C2:C3)", hiding]] },
    { name: "Sale list", rows: [[], ["", hiding]], protection: "with password" },
  ],
};

const pictures: readonly Picture[] = [
  { name: "task-pane-find", meeting: { vendor: flock } },
  {
    name: "task-pane-search",
    meeting: { vendor: flock },
    act: (page) => page.getByLabel("What do you want to know?").fill("when can she be sold"),
  },
  {
    name: "task-pane-function",
    meeting: { vendor: flock, hash: "#FLOCKPREV" },
    async act(page) {
      await page.getByLabel("lame", { exact: true }).fill("Gathers!B2:B3");
      await page.getByLabel("seen", { exact: true }).fill("Gathers!C2:C3");
      await page.getByLabel("Cell for the answer", { exact: true }).fill("Gathers!F2");
    },
  },
  {
    name: "task-pane-faults",
    meeting: { vendor: flock, hash: "#CLEARDATE" },
    async act(page) {
      await page.getByLabel("treated", { exact: true }).fill("14/3/2026");
      await page.getByRole("button", { name: "Write the formula" }).click();
    },
  },
  {
    name: "task-pane-explain",
    meeting: { vendor: refused, hash: "#explain" },
    act: (page) => page.locator(".explanation").waitFor(),
  },
  {
    name: "task-pane-records",
    meeting: { vendor: cases, hash: "#records" },
    async act(page) {
      await page.getByRole("button", { name: "Check the selected records" }).click();
      await page.locator(".findings").waitFor();
    },
  },
  { name: "task-pane-workbooks", meeting: { vendor: flock, hash: "#workbooks" } },
  {
    name: "task-pane-health",
    meeting: { vendor: { ...flock, answers }, hash: "#health" },
    async act(page) {
      await page.getByRole("button", { name: "Try it in this workbook" }).click();
      await page.locator("table").waitFor();
      await page.getByRole("button", { name: "Enter the FOOT formulas again" }).click();
      await page.getByText("No FOOT formula shows").waitFor();
    },
  },
  {
    name: "task-pane-repair",
    meeting: { vendor: unknown, hash: "#health" },
    async act(page) {
      await page.getByRole("button", { name: "Enter the FOOT formulas again" }).click();
      await page.getByText("To be safe").waitFor();
    },
  },
  { name: "task-pane-cautions", meeting: { vendor: flock, hash: "#cautions" } },
  { name: "task-pane-in-a-browser", meeting: { hash: "#records", width: 800 } },
];

/** Takes the pictures of the task pane, in light and in dark. */
export async function taskPanePictures(browser: Browser, folder: string): Promise<void> {
  const addIn = mkdtempSync(join(tmpdir(), "soundfold-pictures-"));
  try {
    buildAddIn(addIn);
    for (const { name, meeting, act } of pictures) {
      for (const look of ["light", "dark"] as const) {
        const pane = await openPane(browser, addIn, { width: 360, height: 900, ...meeting, look });
        await pane.page.getByText(meeting.vendor ? "Connected to Excel" : "Open in a browser").waitFor();
        await act?.(pane.page, pane);
        await pane.page.evaluate(() => {
          (document.activeElement as HTMLElement | null)?.blur();
          scrollTo(0, 0);
        });
        await pane.page.screenshot({ path: join(folder, `${name}-${look}.png`), clip: await visible(pane.page) });
        await pane.page.close();
      }
    }
  } finally {
    rmSync(addIn, { recursive: true, force: true });
  }
}

// A long list is cut where a reader has seen how it goes on.
const tallest = 1200;

async function visible(page: Page) {
  const { width, height } = await page.evaluate(() => ({
    width: innerWidth,
    height: document.documentElement.scrollHeight,
  }));
  await page.setViewportSize({ width, height: Math.min(height, tallest) });
  return { x: 0, y: 0, width, height: Math.min(height, tallest) };
}
