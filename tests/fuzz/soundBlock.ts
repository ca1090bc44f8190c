import type { Cell, Cells } from "../../src/cells/cell.ts";
import { recordFields } from "../../src/core/records/recordFields.ts";
import type { SeededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";
import { hostileCell } from "./hostileCell.ts";
import { firstRecord } from "./soundCell.ts";

/** Cells of a record with all the slips that a hand makes, and some that none does. */
const recordCell = (random: SeededRandom): Cell =>
  random.happens(0.2)
    ? hostileCell(random)
    : random.pick([
        `T${random.whole(1, 9)}`,
        firstRecord + random.whole(0, 60),
        random.whole(0, 80),
        "footrot",
        "LF",
        null,
        "2026-03-14",
        "12",
      ]);

const columns = 6;
const line = (cell: () => Cell): readonly Cell[] => Array.from({ length: columns }, cell);

const blocks: Readonly<Record<string, (random: SeededRandom) => Cells>> = {
  headings: (random) => [line(() => random.pick([...recordFields, "Tag", "Treated", "Withdrawal", "Notes", null]))],
  rows: (random) => Array.from({ length: random.whole(1, 12) }, () => line(() => recordCell(random))),
  blank_cell: (random) => Array.from({ length: random.whole(1, 3) }, () => [random.pick([null, "", 0])]),
  date_cell: (random) => [[firstRecord + random.whole(0, 99)]],
};

/** A rectangle for a parameter that takes cells as they are. */
export function soundBlock(name: string, random: SeededRandom): Cells {
  const make = blocks[name];
  if (!make) throw new Error(`there is no block for ${name}`);
  return make(random);
}
