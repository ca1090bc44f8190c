import { describe, expect, it } from "vitest";
import { type CareStep, carePlan } from "../../../src/core/careplans/carePlan.ts";
import type { Findings } from "../../../src/core/careplans/plannedStep.ts";
import { type Lesion, lesions } from "../../../src/core/lesions/lesionName.ts";

// The rules are common practice, no source; prompt treatment, culling after two cases and quarantine were read.
const nothingKnown: Findings = { flockHasFootrot: false, flockHasCodd: false, pusDrained: false, severe: false };
const plan = (lesion: Lesion, found: Partial<Findings> = {}) => carePlan(lesion, { ...nothingKnown, ...found });
const texts = (steps: readonly CareStep[]) => steps.map(({ what }) => what);
const text = (steps: readonly CareStep[]) => texts(steps).join("\n");
const place = (steps: readonly CareStep[], words: string) => texts(steps).findIndex((what) => what.includes(words));

const both = [false, true];
const allFindings = both.flatMap((flockHasFootrot) =>
  both.flatMap((flockHasCodd) =>
    both.flatMap((pusDrained) => both.map((severe) => ({ flockHasFootrot, flockHasCodd, pusDrained, severe }))),
  ),
);

describe.each(lesions)("every plan for %s", (lesion) => {
  it.each(allFindings.map((found) => [JSON.stringify(found), found] as const))("with %s", (_, found) => {
    const steps = carePlan(lesion, found);
    expect(steps.map(({ step }) => step)).toEqual(steps.map((_step, index) => index + 1));
    expect(new Set(texts(steps)).size).toBe(steps.length);
    for (const { what, why, caution } of steps) {
      expect(why).not.toBe("");
      if (/antibiotic|inject|spray|topical|from outside/i.test(what))
        expect(caution).toContain("as your vet prescribed; read the data sheet");
      // No dose and no strength.
      expect(`${what} ${why} ${caution ?? ""}`).not.toMatch(/\d\s*(mg|ml|g|%)/i);
    }
    expect(steps.find(({ what }) => what.includes("against the pain"))?.caution).toContain(
      "withdrawal days of its own",
    );
    for (const always of [
      "feet treated",
      "withdrawal days",
      "clear date",
      "apart at housing, turnout and weaning until she is sound",
      "Two cases in one season",
      "Disinfect hands and knife",
    ])
      expect(place(steps, always)).toBeGreaterThanOrEqual(0);
  });
});

describe("footrot", () => {
  it("is treated at once, on all four feet, without trimming", () => {
    const steps = plan("footrot");
    expect(steps[0]?.what).toContain("at most within 3 days");
    const order = ["antibiotic", "two sites", "all four feet", "trim", "Look at her again", "Disinfect"];
    const places = order.map((words) => place(steps, words));
    expect(places[0]).toBeGreaterThan(0);
    expect(places).toEqual([...new Set(places)].sort((one, other) => one - other));
    expect(text(steps)).not.toContain("loose or bent horn");
  });

  it("shares the injection over two sites, with what to mind", () => {
    const site = plan("footrot").find(({ what }) => what.includes("two sites"));
    expect(site?.what).toContain("Draw back");
    expect(site?.caution).toContain("away from major nerves");
    expect(site?.why).toContain("two days");
  });

  it("leaves loose horn until a second look when severe", () => {
    const look = plan("footrot", { severe: true }).find(({ what }) => what.includes("in 7 days"));
    expect(look?.what).toContain("Only then decide whether loose or bent horn must come away");
  });
});

describe("interdigital dermatitis", () => {
  it("is treated as footrot where the flock has it", () => {
    const steps = plan("interdigital dermatitis", { flockHasFootrot: true });
    expect(steps[0]?.what).toContain("Treat it as footrot");
    expect(texts(steps).slice(1)).toEqual(texts(plan("footrot", { flockHasFootrot: true })));
  });

  it("is treated from outside, and looked at again, where it does not", () => {
    const steps = plan("interdigital dermatitis");
    expect(text(steps)).not.toContain("injection");
    expect(place(steps, "from outside")).toBeLessThan(place(steps, "Look at her again"));
  });
});

describe("contagious ovine digital dermatitis", () => {
  it("is confirmed, injected, not trimmed, and kept out", () => {
    const steps = plan("contagious ovine digital dermatitis");
    expect(steps[0]?.what).toContain("vet confirm");
    expect(text(steps)).toContain("Do not trim the loose horn");
    expect(text(steps)).toContain("fewer cases in the second year");
    expect(text(steps)).toContain("ask every seller");
    expect(text(steps)).toContain("first case");
    expect(text(plan("contagious ovine digital dermatitis", { flockHasCodd: true }))).not.toContain("first case");
  });

  it("says that severe cases answer poorly", () => {
    const answer = (severe: boolean) =>
      plan("contagious ovine digital dermatitis", { severe }).filter(({ why }) => why.includes("answer poorly"));
    expect(answer(true)).toHaveLength(1);
    expect(answer(false)).toHaveLength(0);
  });
});

describe("white line abscess", () => {
  it("lets the pus out before any antibiotic", () => {
    const steps = plan("white line abscess");
    expect(place(steps, "Let the pus out")).toBeLessThan(place(steps, "No antibiotic yet"));
    expect(steps.find(({ what }) => what === "No antibiotic yet.")?.why).toContain("may form again");
    expect(text(steps)).toContain("Do not strip the wall");
  });

  it("goes on to the antibiotic when it has drained", () => {
    const steps = plan("white line abscess", { pusDrained: true });
    expect(text(steps)).not.toContain("No antibiotic yet");
    expect(text(steps)).not.toContain("Let the pus out");
    expect(text(steps)).toContain("Antibiotic, if your vet wants one");
  });
});

describe("a disease that must be reported", () => {
  // Blisters and sudden lameness of many call the authority: common practice, no source.
  it.each<Lesion>(["interdigital dermatitis", "other", "no lesion"])("is thought of with %s", (lesion) => {
    const step = plan(lesion).find(({ what }) => what.includes("Blisters"));
    expect(step?.what).toContain("move none, and ring your vet at once");
    expect(step?.why).toContain("by law");
  });
});

describe("white line abscess and foreign body", () => {
  it.each<Lesion>(["white line abscess", "foreign body"])(
    "%s goes to the vet within days, not after a week",
    (lesion) => {
      expect(text(plan(lesion))).toMatch(/not clearly better (in )?two days.*to the vet today/);
    },
  );
});

describe("other lesions", () => {
  it("clears the pocket of a shelly hoof and stays out of living tissue", () => {
    const steps = plan("shelly hoof");
    expect(place(steps, "Clear the dirt")).toBeLessThan(place(steps, "hoof putty"));
    expect(steps.find(({ what }) => what.includes("hoof putty"))?.caution).toContain("Never into sensitive tissue");
  });

  it.each<Lesion>(["toe granuloma", "joint infection", "other", "no lesion"])("sends %s to the vet", (lesion) => {
    expect(text(plan(lesion))).toMatch(/to the vet/i);
  });

  it.each(lesions.filter((lesion) => lesion !== "contagious ovine digital dermatitis"))(
    "looks for the contagious dermatitis beside %s where the flock has it",
    (lesion) => {
      const look = "A sore there: follow the plan for contagious ovine digital dermatitis.";
      expect(text(plan(lesion, { flockHasCodd: true }))).toContain(look);
      expect(text(plan(lesion))).not.toContain(look);
    },
  );

  it("takes the drained foreign body for open, and sends one that still hurts to the vet", () => {
    const abscess = "follow the plan for a white line abscess";
    expect(text(plan("foreign body"))).toContain(abscess);
    expect(text(plan("foreign body", { pusDrained: true }))).not.toContain(abscess);
    expect(text(plan("foreign body"))).toContain("No weight on the foot after it is out");
    expect(text(plan("foreign body"))).toContain("to the vet today");
  });

  it("takes a shelly hoof that hurts for an abscess", () => {
    const abscess = "follow the plan for a white line abscess";
    expect(text(plan("shelly hoof"))).toContain(`Lame, hot or with pus: ${abscess}`);
  });
});
