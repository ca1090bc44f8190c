import Big from "big.js";
import { Problem } from "../../cells/problem.ts";

export const bathProducts = ["powder", "liquid"] as const;
export type BathProduct = (typeof bathProducts)[number];

export interface BathMix {
  /** kg of a powder, litres of a liquid, as bought. */
  readonly product: number;
  /** Litres of water: to add to a liquid, to fill up to with a powder. */
  readonly water: number;
}

interface Limit {
  /** The most per cent of the product as bought. */
  readonly percent: number;
  readonly reason: string;
  readonly mend: string;
}

// Common practice; that formalin above 3 % harms feet was read about.
const limits: Readonly<Record<BathProduct, Limit>> = {
  liquid: {
    percent: 3,
    reason: "formalin harms the feet when stronger, and its fumes harm people",
    mend: "enter a weaker bath; with another liquid follow its data sheet, and ask your vet",
  },
  powder: {
    percent: 10,
    reason: "a stronger powder bath can burn the skin between the claws",
    mend: "enter a weaker bath, or ask your vet",
  },
};

/**
 * What goes into a footbath: weight by volume for a powder (10 % is 10 kg in 100 litres of bath), volume by volume for
 * a liquid (3 % is 3 litres in 100 litres of bath).
 *
 * @param litres - of bath, ready for use
 * @param targetPercent - 3 for 3 %
 * @param productPercent - 100 when the target means the product as bought; else how much of what the target means is in
 * the product, in per cent
 * @throws Problem when the bath would be stronger than common practice calls safe, counted in product as bought
 * @example
 * bathMix(54, 3, "liquid", 100) // → { product: 1.62, water: 52.38 }
 * bathMix(100, 10, "powder", 100) // → { product: 10, water: 100 }
 */
export function bathMix(litres: number, targetPercent: number, kind: BathProduct, productPercent: number): BathMix {
  const asBought = new Big(targetPercent).times(100).div(productPercent);
  const { percent, reason, mend } = limits[kind];
  // Rounded up in words, so that what is too strong never reads as the limit itself.
  if (asBought.gt(percent))
    throw new Problem(
      `the bath would hold ${asBought.round(2, Big.roundUp)} % of the product as bought, and more than ${percent} % of a ${kind} is refused here: ${reason}; ${mend}`,
      { argument: "target_percent" },
    );
  const product = asBought.times(litres).div(100);
  const water = kind === "liquid" ? new Big(litres).minus(product) : new Big(litres);
  return { product: product.toNumber(), water: water.toNumber() };
}
