import { dayOf } from "../../src/cells/day.ts";
import { soundCurve } from "../../src/core/animals/soundCurve.ts";
import type { CurveStep } from "../../src/core/statistics/cureSteps.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { table } from "../../src/writing/result.ts";
import { cureChoices, cureColumns, cureEnds, cureNotes, cureRowFault, cureSources } from "./cureColumns.ts";
import { remission } from "./remission.ts";

export const soundCurveFunction = defineFunction({
  name: "SOUNDCURVE",
  summary: "The share of treated sheep still lame, day by day after treatment, ready to draw as a curve.",
  questions: ["draw how fast lame sheep recover", "cure curve after treatment", "how many are still lame after a week"],
  notes: [
    ...cureNotes,
    "A row for each day on which an animal was found sound or left lame, with day 0 and the last day watched added where they are missing.",
    "At risk are the animals not yet found sound and still watched that day; one whose watching ends that day is among them. Became sound are those found sound that day.",
    "The share still lame takes in those that left lame: they never became sound.",
  ],
  parameters: { ...cureColumns, ...cureChoices },
  result: table<CurveStep>(
    "no treated animals",
    ["day", "days", ({ day }) => day],
    ["at risk", "count", ({ atRisk }) => atRisk],
    ["became sound", "count", ({ becameSound }) => becameSound],
    ["share still lame", "share", ({ stillLame }) => stillLame],
    ["low", "share", ({ limits }) => limits?.low],
    ["high", "share", ({ limits }) => limits?.high],
  ),
  caution: undefined,
  sources: cureSources,
  rowFault: cureRowFault,
  compute: (values) => soundCurve(cureEnds(values), values.confidence),
  examples: [
    {
      shows: "A published set of 21",
      call: [remission.began, remission.ended, remission.asOf],
      gives: [
        ["day", "at risk", "became sound", "share still lame", "low", "high"],
        [0, 21, 0, 1, "", ""],
        [6, 21, 3, about(0.857143, 6), about(0.619718, 6), about(0.951552, 6)],
        [7, 17, 1, about(0.806723, 6), about(0.563147, 6), about(0.922809, 6)],
        [10, 15, 1, about(0.752941, 6), about(0.5032, 6), about(0.889362, 6)],
        [13, 12, 1, about(0.690196, 6), about(0.43161, 6), about(0.849066, 6)],
        [16, 11, 1, about(0.627451, 6), about(0.367511, 6), about(0.804912, 6)],
        [22, 7, 1, about(0.537815, 6), about(0.267779, 6), about(0.746791, 6)],
        [23, 6, 1, about(0.448179, 6), about(0.188052, 6), about(0.680143, 6)],
        [35, 1, 0, about(0.448179, 6), about(0.188052, 6), about(0.680143, 6)],
      ],
    },
    {
      shows: "One sound on the day of treatment, a blank row",
      call: [
        [dayOf("2026-03-02"), null, dayOf("2026-03-02")],
        [dayOf("2026-03-02"), null, null],
        dayOf("2026-03-06"),
        0.95,
      ],
      gives: [
        ["day", "at risk", "became sound", "share still lame", "low", "high"],
        [0, 2, 1, 0.5, about(0.0059830876), about(0.9104100848)],
        [4, 1, 0, 0.5, about(0.0059830876), about(0.9104100848)],
      ],
    },
    {
      shows: "Looks some days apart, and one sheep culled lame on day 9",
      call: [
        ["2026-03-02", "2026-03-02", "2026-03-02", "2026-03-02", "2026-03-02", "2026-03-02"],
        ["2026-03-07", "2026-03-12", "2026-03-12", null, null, null],
        dayOf("2026-04-01"),
        undefined,
        [null, null, null, "2026-03-11", null, null],
        ["2026-03-04", "2026-03-04", "2026-03-07", null, "2026-03-12", "2026-03-09"],
      ],
      gives: [
        ["day", "at risk", "became sound", "share still lame", "low", "high"],
        [0, 6, 0, 1, "", ""],
        [5, 6, 1, about(0.7651112151), about(0.0673757619), about(0.9998534784)],
        [9, 4, 0, about(0.7651112151), about(0.0673757619), about(0.9998534784)],
        [10, 3, 2, about(0.4261665886), about(0.0116892902), about(0.9628932822)],
      ],
    },
    {
      shows: "No records yet",
      call: [[null, null], [null, null], dayOf("2026-03-06")],
      gives: [
        ["day", "at risk", "became sound", "share still lame", "low", "high"],
        ["no treated animals", "", "", "", "", ""],
      ],
    },
    {
      call: [[dayOf("2026-03-02")], ["better"], dayOf("2026-03-06")],
      gives: problem('sound_on: "better" is not a date; enter a real date, or text such as 2026-03-14'),
    },
  ],
});
