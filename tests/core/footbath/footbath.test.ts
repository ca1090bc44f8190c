import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bathLitres } from "../../../src/core/footbath/bathLitres.ts";
import { bathMix } from "../../../src/core/footbath/bathMix.ts";
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
    expect(bathMix(100, 10, "powder", 100)).toEqual({ product: 10, water: 100 });
    expect(bathMix(100, 3, "liquid", 100)).toEqual({ product: 3, water: 97 });
    expect(bathMix(54, 3, "liquid", 100)).toEqual({ product: 1.62, water: 52.38 });
  });

  // 3 L of formalin as bought (37 to 40 %) in 100 L hold about 1.1 to 1.2 % formaldehyde.
  it("tells 3 % formalin from 3 % formaldehyde", () => {
    expect(bathMix(100, 1.11, "liquid", 37).product).toBe(3);
    expect(() => bathMix(100, 3, "liquid", 40)).toThrow("7.5 % of the product as bought");
  });

  it("refuses only what is over the limit", () => {
    expect(bathMix(100, 3, "liquid", 100).product).toBe(3);
    expect(() => bathMix(100, 3.01, "liquid", 100)).toThrow("target_percent: the bath would hold 3.01 %");
    expect(() => bathMix(100, 3.001, "liquid", 100)).toThrow("target_percent: the bath would hold 3.01 %");
    expect(() => bathMix(100, 10.01, "powder", 100)).toThrow("more than 10 % of a powder is refused here");
    expect(() => bathMix(100, 10, "powder", 50)).toThrow("20 % of the product as bought");
  });

  it("keeps to the litres and never passes the limit", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 5, max: 100 }),
        fc.integer({ min: 1, max: 100 }),
        fc.constantFrom("powder" as const, "liquid" as const),
        (litres, tenths, strength, kind) => {
          const limit = kind === "liquid" ? 3 : 10;
          // target/10 · 100/strength > limit, in whole numbers
          const tooStrong = tenths * 10 > limit * strength;
          if (tooStrong) expect(() => bathMix(litres, tenths / 10, kind, strength)).toThrow("ask your vet");
          else {
            const { product, water } = bathMix(litres, tenths / 10, kind, strength);
            expectNear(product, (litres * tenths) / 10 / strength, 1e-12);
            expectNear(kind === "liquid" ? product + water : water, litres, 1e-12);
          }
        },
      ),
    );
  });
});
