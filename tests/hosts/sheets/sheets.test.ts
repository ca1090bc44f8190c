import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { dayOf } from "../../../src/cells/day.ts";
import { wallClock } from "../../../src/hosts/sheets/wallClock.ts";
import { instantOf, sheetsStandIn } from "./sheetsStandIn.ts";

// Clocks change at midnight in Cairo, Santiago and Asuncion; Kiritimati is 14 hours ahead and Pago Pago 11 behind.
const zones = ["Europe/Helsinki", "America/Santiago", "Pacific/Kiritimati", "Pacific/Pago_Pago", "Africa/Cairo"];

let script = "";
beforeAll(() => {
  execFileSync("npm", ["run", "--silent", "build:sheets"]);
  script = readFileSync("dist/sheets/Code.gs", "utf8");
});

describe("every example in Google Sheets", () => {
  it.each(zones.map((zone, index) => [zone, zones[(index + 1) % zones.length] ?? zone] as const))(
    "is the same with the script's clock in %s and the spreadsheet there or in %s",
    (zone, other) => {
      const printed = execFileSync(
        process.execPath,
        ["--import", "tsx", "tests/hosts/sheets/parityInZones.ts", zone, other],
        { env: { ...process.env, TZ: zone }, encoding: "utf8" },
      );
      const { compared, differing } = JSON.parse(printed) as { compared: number; differing: string[] };
      expect(differing).toEqual([]);
      expect(compared).toBe(2 * catalogue.reduce((sum, { examples }) => sum + examples.length, 0));
    },
    300_000,
  );
});

describe("the clock on the wall", () => {
  // 24 April 2026 and 6 September 2026 have no midnight there; the others are the days of a change at another hour.
  const days: readonly (readonly [zone: string, day: string])[] = [
    ["Africa/Cairo", "2026-04-24"],
    ["America/Santiago", "2026-09-06"],
    ["America/Santiago", "2026-04-04"],
    ["Europe/Helsinki", "2026-03-29"],
    ["Europe/Helsinki", "2026-10-25"],
    ["Pacific/Kiritimati", "2026-06-01"],
  ];

  it.each(days)("gives and reads the day itself in %s on %s", (zone, day) => {
    const clock = wallClock(zone);
    for (const serial of [dayOf(day) - 1, dayOf(day), dayOf(day) + 1]) {
      expect(Math.floor(clock.serialOf(new Date(instantOf(serial, zone))))).toBe(serial);
      expect(Math.floor(clock.serialOf(clock.dateOf(serial)))).toBe(serial);
      expect(clock.dateOf(serial).getTime()).toBe(instantOf(serial, zone));
    }
  });

  it.each(zones)("never moves a day from 1990 to 2040 in %s", (zone) => {
    const clock = wallClock(zone);
    for (let serial = dayOf("1990-01-01"); serial <= dayOf("2040-12-31"); serial++) {
      // Kiritimati left out the last day of 1994 when it moved across the date line.
      if (zone === "Pacific/Kiritimati" && serial === dayOf("1994-12-31")) continue;
      const back = clock.serialOf(clock.dateOf(serial));
      if (Math.floor(back) !== serial) expect.fail(`${serial} came back as ${back}`);
    }
  });

  it("keeps the time of a date with an hour", () => {
    const clock = wallClock("Europe/Helsinki");
    const noon = dayOf("2026-03-14") + 0.4375;
    expect(clock.serialOf(clock.dateOf(noon))).toBe(noon);
  });
});

describe("the script", () => {
  it("offers every function with its comment, and nothing that a sheet could call by mistake", () => {
    const offered = [...script.matchAll(/^function (\w+)\(/gm)].map(([, name]) => name);
    expect(offered).toEqual(catalogue.map(({ name }) => `FOOT_${name}`));
    expect(script.match(/^ \* @customfunction$/gm)).toHaveLength(catalogue.length);
  });

  it("never reads the clock", () => {
    const frozen = sheetsStandIn(`${script}\nDate.now = () => { throw new Error("the clock was read"); };`, "Etc/UTC");
    expect(frozen("RECHECKDUE", [{ date: dayOf("2026-03-14") }])).toEqual({
      cells: [[{ date: dayOf("2026-03-21") }]],
    });
  });

  it("asks for the time zone only where there is a date", () => {
    const call = sheetsStandIn(`${script}\nSpreadsheetApp = undefined;`, "Europe/Helsinki");
    expect(call("FLOCKPREV", [4, 20])).toEqual({ cells: [[0.2]] });
    expect(call("RECHECKDUE", [{ date: dayOf("2026-03-14") }])).toHaveProperty("message");
  });

  it("reads a blank cell as blank, a skipped argument as left out and an error as an error", () => {
    const call = sheetsStandIn(script, "Europe/Helsinki");
    expect(call("FLOCKPREV", [null, 20])).toEqual({
      message: "lame: it is blank; enter a whole number of lame sheep, 0 or more",
    });
    expect(call("PREVRANGE", [4, 20, null, 100])).toEqual(call("PREVRANGE", [4, 20, 0.95, 100]));
    expect(
      call("FLOCKPREV", [
        [[4], [{ error: "#DIV/0!" }]],
        [[20], [30]],
      ]),
    ).toEqual({
      message: "lame, row 2: the cell holds #DIV/0!; mend that cell first",
    });
  });

  it("is one file without a network or a module", () => {
    expect(script).not.toMatch(/UrlFetchApp|XMLHttpRequest|\bfetch\(|\brequire\(|^import |^export /m);
    expect(script.length).toBeLessThan(1_000_000);
  });

  it("says in its manifest that it wants the V8 runtime and no permission", () => {
    const manifest = JSON.parse(readFileSync("dist/sheets/appsscript.json", "utf8"));
    expect(manifest.runtimeVersion).toBe("V8");
    expect(manifest).not.toHaveProperty("oauthScopes");
  });
});
