import { describe, expect, it } from "vitest";
import { type CareStep, carePlan } from "../../../../src/core/treatment/carePlans/carePlan.ts";
import type { Findings } from "../../../../src/core/treatment/carePlans/plannedStep.ts";
import { type Lesion, lesions } from "../../../../src/core/words/lesionName.ts";
import { namedLesion } from "../../../../src/core/words/namedLesion.ts";

// What each step rests on stands in docs/methods/care.md.
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
      if (/antibiotic|inject|spray|topical|from outside|footbath|vaccinat|tetanus|against the pain/i.test(what)) {
        expect(caution).toContain("as your vet prescribed; read the data sheet");
        // Withdrawal and route stand wherever a medicine is named.
        expect(caution).toMatch(/route.*withdrawal days/);
      }
      // No dose, no strength, and no number of sites of ours.
      expect(`${what} ${why} ${caution ?? ""}`).not.toMatch(/\d\s*(mg|ml|g|%)|two sites/i);
    }
    expect(steps.find(({ what }) => what.includes("against the pain"))?.caution).toContain(
      "withdrawal days of its own",
    );
    for (const always of [
      "feet treated",
      "by which route, batch, withdrawal days",
      "clear date",
      "until she is sound",
      "may be loaded at all",
      "killed humanely",
      "organic rules",
    ])
      expect([always, place(steps, always)]).not.toEqual([always, -1]);
  });
});

const catching: readonly Lesion[] = [
  "interdigital dermatitis",
  "footrot",
  "contagious ovine digital dermatitis",
  "orf or strawberry footrot",
  "other",
];

describe("steps against infection", () => {
  it.each(lesions)("stand with %s only if it passes from sheep to sheep, or may", (lesion) => {
    for (const words of ["cull", "Disinfect", "Keep her apart until she is sound"])
      expect([words, place(plan(lesion), words) >= 0]).toEqual([words, catching.includes(lesion)]);
    const whole = plan(lesion).map(({ what, why }) => `${what} ${why}`);
    expect(whole.join("\n").includes("keep the infection")).toBe(catching.includes(lesion));
  });
});

describe("a disease that must be reported", () => {
  // Lameness is the main sign of foot-and-mouth disease in sheep, sudden and spreading; blisters on the hoof are small;
  // whoever suspects it must tell the authority at once: GOV.UK and gov.scot, read.
  it.each<Lesion>([...catching, "no lesion found"])("is thought of first with %s", (lesion) => {
    for (const found of allFindings) {
      const step = carePlan(lesion, found)[0];
      expect(step?.what).toMatch(/Blisters.*suddenly lame.*move and treat none, and ring your vet or the authority/);
      expect(step?.why).toContain("by law");
      expect(step?.caution).toContain("gloves");
    }
  });
});

describe("a finding in doubt", () => {
  const asked = (words: string, found: Partial<Findings> = {}) =>
    carePlan(namedLesion(words), { ...nothingKnown, ...found });

  it("is made sure of before anything is given, and may be reportable and catching", () => {
    for (const lesion of lesions) {
      const steps = asked(`${lesion}?`);
      expect(steps[0]?.what).toContain("Blisters");
      expect(steps[1]?.what).toContain("not sure what it is");
      expect(steps[1]?.what).toContain("ask your vet before anything is given");
      expect(place(steps, "Disinfect")).toBeGreaterThan(0);
      expect(texts(steps)).toEqual(expect.arrayContaining(texts(plan(lesion)).slice(0, 2)));
    }
  });

  it("says what a slip of the hand was read as", () => {
    expect(asked("abcess")[0]?.what).toContain('read as "abscess"');
    expect(texts(asked("abcess")).slice(1)).toEqual(texts(plan("white line abscess")));
  });

  it("gets the graver's plan of two, names the other, and the steps that either needs", () => {
    const steps = asked("white line abscess + scald");
    expect(place(steps, "Ask for the other's too: interdigital dermatitis.")).toBe(1);
    expect(steps[0]?.what).toContain("Blisters");
    expect(place(steps, "Let the pus out")).toBeGreaterThan(0);
    expect(place(steps, "Disinfect")).toBeGreaterThan(0);
  });
});

describe("footrot", () => {
  it("is treated at once, on all four feet, without trimming", () => {
    const steps = plan("footrot");
    expect(steps[1]?.what).toContain("at most within 3 days");
    const order = [
      "long-acting antibiotic",
      "as many sites as",
      "all four feet",
      "trim",
      "Look at her again",
      "Disinfect",
    ];
    const places = order.map((words) => place(steps, words));
    expect(places[0]).toBeGreaterThan(0);
    expect(places).toEqual([...new Set(places)].sort((one, other) => one - other));
    expect(text(steps)).not.toContain("loose or bent horn");
  });

  it("leaves route, place and sites to the data sheet and the vet", () => {
    const site = plan("footrot").find(({ what }) => what.includes("sites"));
    expect(site?.what).toContain("as the data sheet or your vet says");
    expect(site?.what).toContain("Draw back");
    expect(site?.caution).toContain("away from major nerves");
    expect(site?.why).not.toMatch(/absorb|taken up/);
  });

  it("puts no antibiotic into a footbath without the vet, as the other bathed infections", () => {
    for (const lesion of ["interdigital dermatitis", "footrot", "contagious ovine digital dermatitis"] as const)
      for (const found of allFindings)
        expect(text(carePlan(lesion, found))).toContain("No antibiotic in a footbath unless your vet has prescribed");
  });

  it("leaves loose horn until a second look when severe", () => {
    const look = plan("footrot", { severe: true }).find(({ what }) => what.includes("in 7 days"));
    expect(look?.what).toContain("Only then decide whether loose or bent horn must come away");
  });
});

describe("interdigital dermatitis", () => {
  it("is treated as footrot where the flock has it, but for lambs as the vet says", () => {
    const steps = plan("interdigital dermatitis", { flockHasFootrot: true });
    expect(steps[1]?.what).toContain("Lambs with scald alone: a footbath or a spray may do, as your vet says");
    expect(steps[1]?.caution).toContain("as your vet prescribed");
    expect(steps[2]?.what).toContain("Any other sheep: treat it as footrot");
    expect(texts(steps).slice(3)).toEqual(texts(plan("footrot", { flockHasFootrot: true })).slice(1));
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
    expect(steps[1]?.what).toContain("vet confirm");
    expect(text(steps)).toContain("Do not trim the loose horn");
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
    const horn = place(steps, "loose horn that traps the dirt. Do not pack the pocket");
    expect(place(steps, "Clear the dirt")).toBeLessThan(horn);
    expect(steps[horn]?.why).toContain("may shut infection in");
    expect(steps[horn]?.caution).toContain("Never into sensitive tissue");
  });

  it.each<Lesion>(["toe granuloma", "joint infection", "other", "no lesion found"])("sends %s to the vet", (lesion) => {
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

  it.each<Lesion>(["white line abscess", "foreign body"])("asks about tetanus with %s", (lesion) => {
    for (const found of allFindings) expect(text(carePlan(lesion, found))).toContain("covered against tetanus");
  });

  // Orf infects people, and its virus lives on in dry scabs: NADIS and Virginia Tech, read.
  it("keeps hands and scabs apart with orf, and gives nothing before the vet has seen it", () => {
    const steps = plan("orf or strawberry footrot");
    expect(steps[1]?.what).toContain("vet look at it before anything is given");
    expect(steps.find(({ what }) => what.includes("scabs"))?.caution).toMatch(/Gloves.*doctor/);
  });

  // Overgrown horn follows lameness and mends itself: Smith and others 2014, abstract read.
  it("leaves an overgrown hoof alone unless she is lame on it", () => {
    expect(text(plan("overgrown hoof"))).toContain("Not lame: leave the horn alone");
  });

  it("takes a shelly hoof that hurts for an abscess", () => {
    const abscess = "follow the plan for a white line abscess";
    expect(text(plan("shelly hoof"))).toContain(`Lame, hot or with pus: ${abscess}`);
  });
});
