import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { setTimeout } from "node:timers/promises";
import type { Browser, Page } from "playwright-core";
import { bundlePractice } from "../../src/build/practice/bundlePractice.ts";
import { type Serving, serveFolder } from "../../src/build/practice/serveFolder.ts";
import { provideBrowser } from "../../src/build/provideBrowser.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../src/workbook/recalculate.ts";
import { cases } from "../../src/workbooks/tables/cases.ts";
import { buildAddIn } from "../browser/buildAddIn.ts";
import { launchAt } from "../browser/launchAt.ts";
import { enter, goTo, openFile, settled, toSheet } from "../browser/practice/practicePage.ts";
import { columnOf } from "../workbooks/columnOf.ts";
import type { BenchReport, Limit } from "./report.ts";
import { showTime } from "./show.ts";

const rounds = 3;
// A browser that has just been started reads pages of its own for its menus, and those are not the visit's.
const rest = 3000;
// A machine that does much else is slow; the table then says so.
const patience = 120_000;

interface Visit {
  readonly page: string;
  readonly until: string;
  readonly folder: string;
  readonly path: string;
  readonly build: (folder: string) => unknown;
  /** What a person does first, until the page has answered. */
  readonly first: (page: Page) => Promise<void>;
  /** The most processor time of the page's main thread, in seconds. */
  readonly most: number;
}

const visits: readonly Visit[] = [
  {
    page: "practice sheet",
    until: "first formula typed and answered",
    folder: "practice",
    path: "/",
    build: bundlePractice,
    async first(page) {
      await page.locator('main[aria-busy="false"]').waitFor();
      await page.keyboard.type("=FOOT.FLOCKPREV(4,20)");
      await enter(page);
      await page.locator(".status", { hasText: "A2" }).waitFor();
      await page.keyboard.press("ArrowUp");
      await page.locator(".status", { hasText: "20.0%" }).waitFor();
    },
    most: 6,
  },
  {
    page: "task pane",
    until: "first question typed and answered",
    folder: "excel",
    path: "/taskpane.html",
    build: buildAddIn,
    async first(page) {
      await page.getByLabel("What do you want to know?").fill("when can she be sold");
      await page.getByText("the likeliest first").waitFor();
    },
    most: 1,
  },
];

/** From the first byte asked for until a page has answered its reader, in a browser that has never seen it. */
export async function bench(): Promise<BenchReport> {
  const path = provideBrowser();
  const home = mkdtempSync(join(tmpdir(), "soundfold-pages-"));
  const rows: Record<string, string>[] = [];
  const limits: Limit[] = [];
  try {
    for (const visit of visits) {
      const folder = join(home, visit.folder);
      await visit.build(folder);
      const serving = await serveFolder(folder, [0]);
      const load = loadavg()[0] ?? 0;
      const taken: Taken[] = [];
      for (let round = 0; round < rounds; round += 1) taken.push(await timed(await launchAt(path), visit, serving));
      serving.close();
      const busy = median(taken.map((visited) => visited.busy)) / 1000;
      limits.push({ what: `${visit.page}, seconds of processor time,`, measured: busy, most: visit.most });
      rows.push({
        page: visit.page,
        until: visit.until,
        "median time": showTime(median(taken.map(({ time }) => time))),
        longest: showTime(Math.max(...taken.map(({ time }) => time))),
        "processor time": showTime(median(taken.map(({ busy }) => busy))),
        "processes waiting or running": `${load.toFixed(1)} before, ${(loadavg()[0] ?? 0).toFixed(1)} after`,
      });
    }
    rows.push(...(await typedCells(path, join(home, "practice"), join(home, "full.xlsx"))));
  } finally {
    rmSync(home, { recursive: true });
  }
  return {
    title: "Pages",
    rows,
    notes: [
      `${rounds} visits each, every one with a browser that was started anew ${rest / 1000} seconds before and has nothing stored, from this machine's own server. The time is that of the clock from the first request on, with the typing in it; the processor time is that of the page's main thread. In the task pane the vendor's script is a stand-in that answers at once.`,
    ],
    limits,
  };
}

const records = 3000;
const typed: readonly (readonly [column: Parameters<typeof cases.placeOf>[0], row: number, content: string])[] = [
  ["lesion", 20, "scald"],
  ["lesion", 21, "footrot"],
  ["treated", records + 5, "2026-12-20"],
  ["tag", records + 5, "ZZ 0123456 00003"],
  ["withdrawalDays", records + 5, "28"],
];

/** A cell typed into a foot book with many cases, until all that hangs on it is answered. */
async function typedCells(path: string, folder: string, file: string): Promise<Record<string, string>[]> {
  execFileSync(process.execPath, ["--import", "tsx", "tests/bench/scale/makeFullBook.ts", file, String(records)]);
  const book = await recalculate(openWorkbook(readFileSync(file)), engineInNode(), undefined, { all: true });
  const serving = await serveFolder(folder, [0]);
  const load = loadavg()[0] ?? 0;
  const browser = await launchAt(path);
  const taken: { readonly time: number; readonly busy: number; readonly stood: number }[] = [];
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.setDefaultTimeout(patience);
    const session = await page.context().newCDPSession(page);
    await session.send("Performance.enable", { timeDomain: "threadTicks" });
    const busyUntilNow = async (): Promise<number> => {
      const { metrics } = await session.send("Performance.getMetrics");
      return (metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN) * 1000;
    };
    await page.goto(serving.address, { waitUntil: "commit" });
    await page.getByText("flock-foot-book.xlsx is open.").waitFor();
    await openFile(page, "full.xlsx", book.bytes);
    await page.evaluate(watchPage);
    await toSheet(page, "Cases");
    for (const [column, row, content] of typed) {
      await goTo(page, `${columnOf(cases, column)}${row}`);
      await setTimeout(rest);
      const before = await busyUntilNow();
      await page.keyboard.type(content, { delay: 20 });
      await enter(page);
      // The calculation begins a tenth of a second after the last key.
      await setTimeout(rest);
      await settled(page);
      const busy = (await busyUntilNow()) - before;
      taken.push({ busy, ...((await page.evaluate("watched()")) as { time: number; stood: number }) });
    }
  } finally {
    await browser.close();
    serving.close();
  }
  const row = (until: string, pick: (one: (typeof taken)[number]) => number, wanted: number) => ({
    page: "practice sheet",
    until,
    "median time": showTime(median(taken.map(pick))),
    longest: showTime(Math.max(...taken.map(pick))),
    "processor time": showTime(median(taken.map(({ busy }) => busy))),
    wanted: `at most ${showTime(wanted)}`,
    "processes waiting or running": `${load.toFixed(1)} before, ${(loadavg()[0] ?? 0).toFixed(1)} after`,
  });
  return [
    row(`a cell typed into ${records} cases and answered`, ({ time }) => time, 1000),
    row("the same: the longest that the page stood still", ({ stood }) => stood, 300),
  ];
}

/** In the page: notes from Enter on when it was last busy, and how long it stood still at most. */
const watchPage = `(() => {
  let [enter, last, stood] = [0, 0, 0];
  const sheet = document.querySelector("main");
  new MutationObserver(() => { if (sheet.getAttribute("aria-busy") === "false") last = performance.now(); })
    .observe(sheet, { attributes: true, attributeFilter: ["aria-busy"] });
  new PerformanceObserver((list) => { for (const { startTime, duration } of list.getEntries()) if (startTime >= enter) stood = Math.max(stood, duration); })
    .observe({ entryTypes: ["longtask"] });
  addEventListener("keydown", ({ key }) => { if (key === "Enter") [enter, last, stood] = [performance.now(), 0, 0]; }, true);
  globalThis.watched = () => ({ time: Math.max(0, last - enter), stood });
})()`;

interface Taken {
  readonly time: number;
  readonly busy: number;
}

async function timed(browser: Browser, { path, first }: Visit, { address }: Serving): Promise<Taken> {
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.setDefaultTimeout(patience);
    await page.route("https://appsforoffice.microsoft.com/**", (route) =>
      route.fulfill({
        body: "globalThis.Office = { onReady: async () => ({ host: null }) };",
        contentType: "text/javascript",
      }),
    );
    const session = await page.context().newCDPSession(page);
    await session.send("Performance.enable", { timeDomain: "threadTicks" });
    await setTimeout(rest);
    const start = performance.now();
    await page.goto(`${address}${path}`, { waitUntil: "commit" });
    await first(page);
    const time = performance.now() - start;
    const { metrics } = await session.send("Performance.getMetrics");
    const busy = metrics.find(({ name }) => name === "TaskDuration");
    if (!busy) throw new Error("the browser does not say how long the page was busy");
    return { time, busy: busy.value * 1000 };
  } finally {
    await browser.close();
  }
}

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[numbers.length >> 1] ?? Number.NaN;
