import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bathLitres } from "../../../src/core/treatment/bathLitres.ts";
import { bathMix, bathProducts } from "../../../src/core/treatment/bathMix.ts";
import { bathSheep } from "../../../src/core/treatment/bathSheep.ts";
import { zincSulphate } from "../../../src/core/treatment/zincSulphate.ts";
import { expectNear } from "../near.ts";

describe("bathLitres", () => {
  // Worked by hand: 3 × 0.3 × 0.06 m = 54 L; (0.6 + 0.4) / 2 × 0.15 × 3 m = 225 L.
  it("measures straight and slanting sides", () => {
    expect(bathLitres({ lengthCm: 300, topWidthCm: 30, depthCm: 6, baseWidthCm: undefined })).toBe(54);
    expect(bathLitres({ lengthCm: 300, topWidthCm: 60, depthCm: 15, baseWidthCm: 40 })).toBe(225);
  });

  it("is what thin layers of water add up to", () => {
    const width = fc.integer({ min: 5, max: 500 });
    fc.assert(
      fc.property(width, width, fc.integer({ min: 1, max: 150 }), (topWidthCm, baseWidthCm, depthCm) => {
        const layers = 1000;
        let cm3 = 0;
        for (let layer = 0; layer < layers; layer++) {
          const up = (layer + 0.5) / layers;
          cm3 += (baseWidthCm + (topWidthCm - baseWidthCm) * up) * (depthCm / layers) * 300;
        }
        expectNear(bathLitres({ lengthCm: 300, topWidthCm, depthCm, baseWidthCm }), cm3 / 1000, 1e-9);
      }),
    );
  });
});

describe("bathMix", () => {
  // Published mixes, read about: 10 % powder is 10 kg in 100 L; 3 % formalin is 3 L of formalin as bought in 100 L.
  it("mixes by weight and by volume", () => {
    expect(bathMix(100, 10, "zinc sulphate heptahydrate", 100)).toEqual({ product: 10, water: 100 });
    expect(bathMix(100, 5, "copper sulphate", 100)).toEqual({ product: 5, water: 100 });
    for (const liquid of ["formalin", "liquid"] as const) {
      expect(bathMix(100, 3, liquid, 100)).toEqual({ product: 3, water: 97 });
      expect(bathMix(54, 3, liquid, 100)).toEqual({ product: 1.62, water: 52.38 });
    }
  });

  // Molar masses printed by mf-parser 3.9.3, a library of chemistry: new MF("ZnSO4(H2O)7").getInfo().mass. Farmers are told
  // to take two thirds of the heptahydrate's weight, roughly: facial eczema information of Ruakura, 1991, read.
  it("tells the two salts of zinc sulphate apart: the same zinc, 1.6 times the strength", () => {
    expectNear(zincSulphate(7).toNumber(), 287.547194659934, 3e-5);
    expectNear(zincSulphate(1).toNumber(), 179.455476065355, 3e-5);
    const seven = bathMix(1000, 10, "zinc sulphate heptahydrate", 100).product;
    const one = bathMix(1000, 10, "zinc sulphate monohydrate", 100).product;
    const zincIn = (kg: number, gramsAMole: number) => (kg * 65.38) / gramsAMole;
    expectNear(zincIn(one, 179.451), zincIn(seven, 287.541), 2e-5);
    expectNear(seven / one, 287.547194659934 / 179.455476065355, 3e-5);
    expect(Math.abs(one / seven - 2 / 3)).toBeLessThan(0.05);
    expect(one).toBe(62.408);
  });

  // 3 L of formalin as bought (37 to 40 %) in 100 L hold about 1.1 to 1.2 % formaldehyde.
  it("tells 3 % formalin from 3 % formaldehyde", () => {
    expect(bathMix(100, 1.11, "formalin", 37).product).toBe(3);
    expect(() => bathMix(100, 3, "formalin", 40)).toThrow("7.5 % of the product as bought");
  });

  // A 5 % bath of copper sulphate that was drunk killed 12 of 27: Veterinary and Human Toxicology 2004 46:315, abstract
  // read; 5 % as the top of what is published: from memory.
  it("refuses only what is over the limit", () => {
    expect(bathMix(100, 3, "formalin", 100).product).toBe(3);
    expect(() => bathMix(100, 3.01, "formalin", 100)).toThrow("target_percent: the bath would hold 3.01 %");
    expect(() => bathMix(100, 3.001, "liquid", 100)).toThrow("target_percent: the bath would hold 3.01 %");
    for (const salt of ["zinc sulphate heptahydrate", "zinc sulphate monohydrate"] as const) {
      expect(() => bathMix(100, 10.01, salt, 100)).toThrow("more than 10 % of zinc sulphate");
      expect(() => bathMix(100, 10, salt, 50)).toThrow("20 % of the product as bought");
    }
    expect(() => bathMix(100, 5.01, "copper sulphate", 100)).toThrow(
      "more than 5 % of copper sulphate is refused here",
    );
  });

  it("keeps to the litres and never passes the limit", () => {
    const limits = {
      "zinc sulphate heptahydrate": 10,
      "zinc sulphate monohydrate": 10,
      "copper sulphate": 5,
      formalin: 3,
      liquid: 3,
    } as const;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 5, max: 100 }),
        fc.integer({ min: 1, max: 100 }),
        fc.constantFrom(...bathProducts),
        (litres, tenths, strength, kind) => {
          // target/10 · 100/strength > limit, in whole numbers
          const tooStrong = tenths * 10 > limits[kind] * strength;
          if (tooStrong) return void expect(() => bathMix(litres, tenths / 10, kind, strength)).toThrow("ask your vet");
          const { product, water } = bathMix(litres, tenths / 10, kind, strength);
          const asMeant = (litres * tenths) / 10 / strength;
          if (kind === "zinc sulphate monohydrate") {
            const exact = (asMeant * 179.451) / 287.541;
            expect(product).toBeLessThanOrEqual(exact + 1e-9);
            expect(product).toBeGreaterThan(exact - 0.001 - 1e-9);
          } else expectNear(product, asMeant, 1e-12);
          expectNear(kind === "formalin" || kind === "liquid" ? product + water : water, litres, 1e-12);
        },
      ),
    );
  });
});

describe("bathSheep", () => {
  it("serves every sheep, none of them in a bath that is used up", () => {
    const count = fc.integer({ min: 1, max: 3000 });
    fc.assert(
      fc.property(
        count,
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 1, max: 60 }),
        (sheep, sheepAFill, atOnce) => {
          // Sheep let in one group after the other, by hand: a group ends when the bath is full, used up or nobody is left.
          let [left, inFill, fills, rounds] = [sheep, 0, 1, 0];
          while (left > 0) {
            if (inFill === sheepAFill) [inFill, fills] = [0, fills + 1];
            const group = Math.min(atOnce, sheepAFill - inFill, left);
            [left, inFill, rounds] = [left - group, inFill + group, rounds + 1];
          }
          const run = { sheep, sheepAFill, atOnce, minutes: 3, litres: 200 };
          expect(bathSheep(run)).toEqual({ fills, rounds, minutes: 3 * rounds, litres: 200 * fills });
        },
      ),
    );
  });

  it("leaves out what the data sheet does not ask, and refuses half of it", () => {
    const walked = { sheep: 450, sheepAFill: 200, minutes: undefined, atOnce: undefined, litres: undefined };
    expect(bathSheep(walked)).toEqual({ fills: 3, rounds: undefined, minutes: undefined, litres: undefined });
    expect(() => bathSheep({ ...walked, minutes: 3 })).toThrow("at_once: it is blank");
    expect(() => bathSheep({ ...walked, atOnce: 30 })).toThrow("stand_minutes: it is blank");
  });
});
