import type { Fault } from "../../src/cells/fault.ts";
import { type BathMix, type BathProduct, bathMix, bathProducts } from "../../src/core/treatment/bathMix.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { between, positive } from "../../src/reading/numbers.ts";
import { one, oneOr } from "../../src/reading/parameter.ts";
import { choiceOr } from "../../src/reading/words.ts";
import { row } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";

const whichPowder: Fault = {
  what: "does not say which",
  mend: 'look at the bag and enter "zinc sulphate heptahydrate", "zinc sulphate monohydrate" (1.6 times as strong) or "copper sulphate"; with another powder follow its data sheet',
};
const whichZinc: Fault = {
  what: "does not say which salt",
  mend: 'look at the bag and enter "zinc sulphate heptahydrate" or "zinc sulphate monohydrate", which is 1.6 times as strong',
};
const isCalled = (product: BathProduct): Fault => ({ what: "has another name here", mend: `enter "${product}"` });
const whichProduct: Readonly<Record<string, Fault>> = {
  bluestone: isCalled("copper sulphate"),
  copper: isCalled("copper sulphate"),
  "copper sulfate": isCalled("copper sulphate"),
  "zinc sulfate heptahydrate": isCalled("zinc sulphate heptahydrate"),
  "zinc sulfate monohydrate": isCalled("zinc sulphate monohydrate"),
  formaldehyde: {
    what: "is bought as formalin",
    mend: 'enter "formalin"; if the target means formaldehyde, give the strength of the formalin as product_percent',
  },
  powder: whichPowder,
  "zinc sulphate": whichZinc,
  "zinc sulfate": whichZinc,
  zinc: whichZinc,
};

export const bathMixFunction = defineFunction({
  name: "BATHMIX",
  summary: "How much product and water make a footbath of a given strength.",
  questions: ["how to mix a 3 % footbath", "how many kg of powder in the footbath", "how strong may a footbath be"],
  notes: [
    "A powder is weight by volume: 10 % is 10 kg of the powder as bought in 100 litres of bath. The answer is kg of powder, and the litres to fill up to.",
    "A liquid is volume by volume: 3 % is 3 litres of the liquid as bought in 100 litres of bath. The answer is litres of liquid, and litres of water to add it to.",
    "Zinc sulphate is sold as heptahydrate and as monohydrate; look at the bag. Its strength is counted as heptahydrate, as 10 % is published. The monohydrate holds less water and is 1.6 times as strong: 6.24 kg of it do what 10 kg of the heptahydrate do (molar masses 179.451 and 287.541 g). Its kg are rounded down to the gram. Where a data sheet names kg of its own product, take those.",
    "Percentages are typed as 3 for 3 %, not as 3%, which a cell holds as 0.03.",
    "product_percent is 100 when the target means the product as bought, as footbath advice mostly does: 3 % formalin is 3 litres of formalin as bought in 100 litres, not 3 % formaldehyde. Give the product's own strength only when the target means the pure substance.",
    "Counted in product as bought, more than 3 % of formalin or another liquid, 10 % of zinc sulphate and 5 % of copper sulphate are refused. A data sheet that asks for more: ask your vet. Copper sulphate only as your vet says: sheep have died of a 5 % bath that they drank.",
    "The same 10 % is also published as 1 kg with 9 litres of water, which is weight by weight and a little stronger; this is not used here.",
  ],
  parameters: {
    litres: one(positive("litres of bath"), "Litres of bath, ready for use; see BATHLITRES"),
    target_percent: one(between(0.5, 100, "a percentage, 3 for 3 %,"), "Strength of the bath, 3 for 3 %"),
    kind: one(
      choiceOr(bathProducts, (typed) => (Object.hasOwn(whichProduct, typed) ? whichProduct[typed] : undefined)),
      bathProducts.map((product) => `"${product}"`).join(", "),
    ),
    product_percent: oneOr(
      between(1, 100, "a percentage, 40 for 40 %,"),
      100,
      "Strength of the product, 40 for 40 %; 100 when the target means the product as bought",
    ),
  },
  result: row<BathMix>(
    ["product (kg of powder, litres of liquid)", "number", ({ product }) => product],
    ["litres of water (liquid), or litres to fill up to (powder)", "number", ({ water }) => water],
  ),
  caution: cautions.footbath,
  sources: [
    sources.footbathMixes,
    sources.footbathHazards,
    sources.zincHeptahydrate,
    sources.zincSalts,
    sources.copperBath2004,
    sources.copperRange,
    sources.practice,
  ],
  compute: ({ litres, target_percent, kind, product_percent }) =>
    bathMix(litres, target_percent, kind, product_percent),
  examples: [
    { shows: "54 litres with 3 % of formalin", call: [54, 3, "formalin"], gives: [[1.62, 52.38]] },
    {
      shows: "100 litres with 10 % of zinc sulphate, from the heptahydrate",
      call: [100, 10, "zinc sulphate heptahydrate"],
      gives: [[10, 100]],
    },
    {
      shows: "The same strength from the monohydrate",
      call: [100, 10, "zinc sulphate monohydrate"],
      gives: [[6.24, 100]],
    },
    {
      shows: "1 % of the pure substance, from a liquid that holds 40 %",
      call: [100, 1, "liquid", 40],
      gives: [[2.5, 97.5]],
    },
    {
      shows: "Zinc sulphate of which the salt is not said",
      call: [100, 10, "zinc sulphate"],
      gives: problem(
        'kind: "zinc sulphate" does not say which salt; look at the bag and enter "zinc sulphate heptahydrate" or "zinc sulphate monohydrate", which is 1.6 times as strong',
      ),
    },
    {
      call: [100, 10, "powder"],
      gives: problem(
        'kind: "powder" does not say which; look at the bag and enter "zinc sulphate heptahydrate", "zinc sulphate monohydrate" (1.6 times as strong) or "copper sulphate"; with another powder follow its data sheet',
      ),
    },
    {
      call: [54, 5, "formalin"],
      gives: problem(
        "target_percent: the bath would hold 5 % of the product as bought, and more than 3 % of formalin is refused here: formalin harms the feet when stronger, and its fumes harm people; enter a weaker bath, or ask your vet",
      ),
    },
    {
      shows: "3 % formaldehyde in the place of 3 % formalin",
      call: [54, 3, "liquid", 40],
      gives: problem(
        "target_percent: the bath would hold 7.5 % of the product as bought, and more than 3 % of a liquid is refused here: formalin harms the feet when stronger, and its fumes harm people; enter a weaker bath; with another liquid follow its data sheet, and ask your vet",
      ),
    },
    {
      call: [54, 12, "zinc sulphate heptahydrate"],
      gives: problem(
        "target_percent: the bath would hold 12 % of the product as bought, and more than 10 % of zinc sulphate is refused here: a stronger zinc bath can burn the skin between the claws; enter a weaker bath, or ask your vet",
      ),
    },
    {
      call: [54, 10, "copper sulphate"],
      gives: problem(
        "target_percent: the bath would hold 10 % of the product as bought, and more than 5 % of copper sulphate is refused here: it is not published for sheep any stronger, and copper poisons sheep that drink it; ask your vet for another product, or enter a weaker bath",
      ),
    },
    {
      shows: "A cell that shows 3%",
      call: [54, 0.03, "formalin"],
      gives: problem("target_percent: 0.03 is below 0.5; enter a percentage, 3 for 3 %, from 0.5 to 100"),
    },
    {
      call: [54, 3, "gel"],
      gives: problem(
        'kind: "gel" is not a choice here; enter one of: "zinc sulphate heptahydrate", "zinc sulphate monohydrate", "copper sulphate", "formalin", "liquid"',
      ),
    },
  ],
});
