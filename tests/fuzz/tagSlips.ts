import { catalogue } from "../../functions/catalogue.ts";
import type { Cell, Cells } from "../../src/cells/cell.ts";
import { days1904 } from "../../src/cells/day.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import { evaluate, type Outcome } from "../../src/definition/evaluate.ts";
import type { Argument } from "../../src/reading/readArguments.ts";
import { type SeededRandom, seededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";

/** A way of numbering sheep, as flocks do. Common practice, no source; country 999 and letters ZZ, which no animal has. */
type Style = (animal: number, random: SeededRandom) => string;

const mark = "123456";
const styles: readonly Style[] = [
  (animal) => `ZZ 0 ${mark} ${String(animal).padStart(5, "0")}`,
  (animal) => `ZZ ${mark} ${animal}`,
  (animal) => `9990${mark}${String(animal).padStart(5, "0")}`,
  (animal) => `0 ${mark} ${String(animal).padStart(5, "0")}`,
  (animal) => String(animal).padStart(4, "0"),
  (animal) => String(animal),
  (animal) => `Blue ${animal}`,
  (animal) => `R${String(animal).padStart(3, "0")}`,
  (animal) => `${1 + (animal % 7)}-${1 + Math.floor(animal / 7)}`,
  (animal) => `${1 + (animal % 7)}/${String(1 + Math.floor(animal / 7)).padStart(2, "0")}`,
];

/** A slip of the hand or the sheet; undefined where the tag has nothing to slip on. */
type Slip = (tag: string, random: SeededRandom) => Cell | undefined;

const looks: Readonly<Record<string, readonly string[]>> = {
  "0": ["O", "o"],
  "1": ["I", "l"],
  "2": ["Z"],
  "5": ["S", "s"],
  "8": ["B"],
  "6": ["G"],
};

const changedIn = (tag: string, changed: string): string | undefined => (changed === tag ? undefined : changed);

const slips: Readonly<Record<string, Slip>> = {
  "zeros lost": (tag) => changedIn(tag, tag.replace(/(?<!\d)0+(?=\d)/g, "")),
  "zeros lost by a number": (tag) => (/^0\d+$/.test(tag) && tag.length < 15 ? Number(tag) : undefined),
  "a letter for a digit": (tag, random) => {
    const places = [...tag].flatMap((digit, index) => (looks[digit] === undefined ? [] : [index]));
    if (places.length === 0) return undefined;
    const index = random.pick(places);
    const letter = random.pick(looks[tag[index] as string] as readonly string[]);
    return tag.slice(0, index) + letter + tag.slice(index + 1);
  },
  "own number alone": (tag, random) => {
    const own = /\d{5}$/.exec(tag)?.[0] ?? /^ZZ \d{6} (\d+)$/.exec(tag)?.[1];
    if (own === undefined || tag.length < 11) return undefined;
    const bare = String(Number(own));
    return random.pick([bare, own, bare.padStart(3, "0"), Number(own)]);
  },
  "country left out": (tag) => (tag.startsWith("ZZ ") ? tag.slice(3) : undefined),
  "words behind": (tag, random) => tag + random.pick([" ewe", " R", " ewe, lame", "R", " (left)", "-ram", " old ewe"]),
  "separators left out": (tag) => changedIn(tag, tag.replace(/[ /-]/g, "")),
  "case and spaces": (tag, random) => random.pick([` ${tag.toLowerCase()}`, tag.replaceAll(" ", "  "), `${tag} `]),
};

const named = (name: string): AnyFunction => catalogue.find((one) => one.name === name) as AnyFunction;
const down = (cells: readonly Cell[]): Cells => cells.map((cell) => [cell]);

export interface SlipReport {
  readonly rounds: number;
  /** How often each slip was made. */
  readonly made: ReadonlyMap<string, number>;
  readonly breaches: readonly string[];
}

/**
 * Rounds in which one animal of a flock is in withdrawal, or lame, and its tag is slipped once: in the records, or where it
 * is asked for. It is never let go unnamed.
 */
export function runSlips(rounds: number, seed: number): SlipReport {
  const made = new Map(Object.keys(slips).map((slip) => [slip, 0]));
  const breaches: string[] = [];
  let done = 0;
  for (let round = 0; done < rounds; round++) {
    const random = seededRandom(Math.imul(round + 1, 0x9e3779b1) ^ seed);
    const [slip, make] = random.pick(Object.entries(slips));
    const style = random.pick(styles);
    const numbers = Array.from({ length: random.whole(1, 8) }, () => random.whole(1, 900));
    const tags = [...new Set(numbers)].map((animal) => style(animal, random));
    const right = tags[0] as string;
    const wrong = make(right, random);
    if (wrong === undefined) continue;
    done++;
    made.set(slip, (made.get(slip) ?? 0) + 1);
    const breach = firstBreach({ right, wrong, others: tags.slice(1), random });
    if (breach !== undefined && breaches.length < 100)
      breaches.push(`round ${round}: ${slip}, ${right} as ${JSON.stringify(wrong)}: ${breach}`);
  }
  return { rounds: done, made, breaches };
}

interface Round {
  readonly right: string;
  readonly wrong: Cell;
  readonly others: readonly string[];
  readonly random: SeededRandom;
}

function firstBreach({ right, wrong, others, random }: Round): string | undefined {
  const dateSystem = random.happens(0.5) ? 1904 : 1900;
  const serial = (day: number): number => (dateSystem === 1904 ? day - days1904 : day);
  const call = (name: string, ...given: Argument[]): Outcome => evaluate(named(name), given, { dateSystem });
  const day = 46_000;
  const inRecords = random.happens(0.5);
  const [recorded, asked] = inRecords ? [wrong, right] : [right, wrong];
  // The right tag may have been treated too, long ago.
  const before = inRecords && random.happens(0.5) ? [right] : [];
  const tags = down([...others, recorded, ...before]);
  const treated = down([
    ...others.map(() => serial(day - 90)),
    serial(day - random.whole(0, 27)),
    ...before.map(() => serial(day - 100)),
  ]);
  const days = down([...others.map(() => 5), random.happens(0.1) ? null : 28, ...before.map(() => 5)]);
  const today = serial(day);

  const sale = call("SALECHECK", down([asked]), today, tags, treated, days);
  if (!sale.ok) return `SALECHECK refused: ${sale.message}`;
  if (sale.cells[1]?.[1] !== "hold") return `SALECHECK says ${sale.cells[1]?.[1]}`;
  if (sale.cells[1]?.[2] === "") return "SALECHECK holds without a word";
  const clear = call("ANIMALCLEAR", asked, tags, treated, days);
  const until = clear.ok ? clear.cells[0]?.[0] : undefined;
  if (clear.ok && !(typeof until === "number" && until > today)) return `ANIMALCLEAR says ${until}`;
  const waiting = call("NOTCLEAR", today, tags, treated, days);
  const listed = waiting.ok ? waiting.cells.slice(1).map(([tag]) => tag) : [];
  const mustStand = before.length > 0 ? [String(recorded).trim(), right] : [String(recorded).trim()];
  if (
    !listed.includes("every animal") &&
    !mustStand.every((tag) => listed.some((one) => isSame(one as Cell, tag, call)))
  )
    return `NOTCLEAR lists ${JSON.stringify(listed)}`;

  // Lame under one tag; and, before or since, sound under the other.
  const dates = down([...others.map(() => serial(day - 90)), serial(day - 3), serial(day - random.pick([1, 40]))]);
  const states = down([...others.map(() => "sound"), "lame", "sound"]);
  const apart = call("KEEPAPART", today, down([...others, recorded, asked]), dates, states);
  const kept = apart.ok ? apart.cells.slice(1).map(([tag]) => tag) : [];
  const isAnimal = inSheet(recorded) === inSheet(asked);
  if (!kept.includes("any animal") && !isAnimal && !kept.includes(inSheet(asked)) && !isSame(recorded, asked, call))
    return `KEEPAPART lists ${JSON.stringify(kept)}`;
  return undefined;
}

const inSheet = (cell: Cell): string => String(cell).trim();

/** Two spellings of one tag are one animal, whose later sound record stands. */
const isSame = (one: Cell, other: Cell, call: (name: string, ...given: Argument[]) => Outcome): boolean => {
  const [a, b] = [call("TAGKEY", one), call("TAGKEY", other)];
  return a.ok && b.ok && a.cells[0]?.[0] === b.cells[0]?.[0];
};
