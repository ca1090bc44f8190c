import Big from "big.js";

// Standard atomic weights, abridged, in g/mol (IUPAC; from memory).
const [zinc, sulphur, oxygen, hydrogen] = [65.38, 32.06, 15.999, 1.008].map((weight) => new Big(weight)) as [
  Big,
  Big,
  Big,
  Big,
];
const water = hydrogen.times(2).plus(oxygen);

/**
 * Weight of one mole of zinc sulphate with its water of crystals, in g.
 *
 * @param waters - 7 for the heptahydrate, 1 for the monohydrate
 * @example
 * zincSulphate(7).toNumber() // → 287.541
 * zincSulphate(1).toNumber() // → 179.451
 */
export const zincSulphate = (waters: number): Big => zinc.plus(sulphur).plus(oxygen.times(4)).plus(water.times(waters));
