import Big from "big.js";
import { Problem } from "../../cells/problem.ts";
import { zincSulphate } from "./zincSulphate.ts";

export const bathProducts = [
  "zinc sulphate heptahydrate",
  "zinc sulphate monohydrate",
  "copper sulphate",
  "formalin",
  "liquid",
] as const;
export type BathProduct = (typeof bathProducts)[number];

export interface BathMix {
  /** kg of a powder, litres of a liquid, as bought. */
  readonly product: number;
  /** Litres of water: to add to a liquid, to fill up to with a powder. */
  readonly water: number;
}

interface Rule {
  /** How the sentences name it. */
  readonly name: string;
  readonly liquid?: true;
  /** The most per cent of the product as bought, counted as the target is. */
  readonly percent: number;
  readonly reason: string;
  readonly mend: string;
  /** The part of the weight that is needed of it, where the target means another form; 1 when left out. */
  readonly part?: Big;
}

const zinc = {
  percent: 10,
  reason: "a stronger zinc bath can burn the skin between the claws",
  mend: "enter a weaker bath, or ask your vet",
};
const formalin = {
  liquid: true,
  percent: 3,
  reason: "formalin harms the feet when stronger, and its fumes harm people",
} as const;

// Common practice; that formalin above 3 % harms feet was read about. 10 % zinc sulphate is published as heptahydrate
// (read). Copper sulphate: published at up to 5 % (from memory), which killed sheep that drank it (read).
const rules: Readonly<Record<BathProduct, Rule>> = {
  "zinc sulphate heptahydrate": { ...zinc, name: "zinc sulphate" },
  "zinc sulphate monohydrate": {
    ...zinc,
    name: "zinc sulphate, counted as heptahydrate,",
    part: zincSulphate(1).div(zincSulphate(7)),
  },
  "copper sulphate": {
    name: "copper sulphate",
    percent: 5,
    reason: "it is not published for sheep any stronger, and copper poisons sheep that drink it",
    mend: "ask your vet for another product, or enter a weaker bath",
  },
  formalin: { ...formalin, name: "formalin", mend: "enter a weaker bath, or ask your vet" },
  liquid: {
    ...formalin,
    name: "a liquid",
    mend: "enter a weaker bath; with another liquid follow its data sheet, and ask your vet",
  },
};

/**
 * What goes into a footbath: weight by volume for a powder (10 % is 10 kg in 100 litres of bath), volume by volume for
 * a liquid (3 % is 3 litres in 100 litres of bath).
 *
 * The strength of a zinc bath is that of the heptahydrate, as it is published. The monohydrate holds less water, so
 * 179.451 / 287.541 of its weight does; that is rounded down to the gram.
 *
 * @param litres - of bath, ready for use
 * @param targetPercent - 3 for 3 %
 * @param productPercent - 100 when the target means the product as bought; else how much of what the target means is in
 * the product, in per cent
 * @throws Problem when the bath would be stronger than common practice calls safe, counted in product as bought
 * @example
 * bathMix(54, 3, "formalin", 100) // → { product: 1.62, water: 52.38 }
 * bathMix(100, 10, "zinc sulphate heptahydrate", 100) // → { product: 10, water: 100 }
 * bathMix(100, 10, "zinc sulphate monohydrate", 100) // → { product: 6.24, water: 100 }
 */
export function bathMix(litres: number, targetPercent: number, kind: BathProduct, productPercent: number): BathMix {
  const asBought = new Big(targetPercent).times(100).div(productPercent);
  const { name, percent, reason, mend, part, liquid } = rules[kind];
  // Rounded up in words, so that what is too strong never reads as the limit itself.
  if (asBought.gt(percent))
    throw new Problem(
      `the bath would hold ${asBought.round(2, Big.roundUp)} % of the product as bought, and more than ${percent} % of ${name} is refused here: ${reason}; ${mend}`,
      { argument: "target_percent" },
    );
  const whole = asBought.times(litres).div(100);
  const product = part === undefined ? whole : whole.times(part).round(3, Big.roundDown);
  const water = liquid ? new Big(litres).minus(product) : new Big(litres);
  return { product: product.toNumber(), water: water.toNumber() };
}
