import { Problem } from "../../cells/problem.ts";
import { flockRank } from "../../core/benchmarking/flockRank.ts";
import { type FunnelFlock, funnel } from "../../core/benchmarking/funnel.ts";
import type { ShrunkFlock } from "../../core/benchmarking/shrunkPrevalence.ts";
import { prevalenceChange } from "../../core/counting/prevalenceChange.ts";
import { prevalenceRange } from "../../core/counting/prevalenceRange.ts";
import { targetCheck } from "../../core/counting/targetCheck.ts";
import { mgPerPcu } from "../../core/medicines/mgPerPcu.ts";
import { type Collated, type CollatedFlock, leftOutWords } from "../collate/collateBooks.ts";
import type { ComparisonContent, FlockYear } from "../comparison/comparisonContent.ts";
import { settledFigures } from "../comparison/settledFigures.ts";
import { careLines } from "./careLines.ts";
import type { FlockPageContent, PageLine } from "./flockPageContent.ts";

const confidence = 0.95;

/** A flock of which sheep were counted. */
interface Counted {
  readonly lame: number;
  readonly seen: number;
  readonly year: FlockYear;
}

interface Round {
  readonly content: ComparisonContent;
  /** In the order of the ranks. */
  readonly inTurn: readonly ShrunkFlock[];
  readonly compared: number;
  readonly lame: number;
  readonly seen: number;
  /** mg/PCU of each flock of which it is known. */
  readonly mgPcus: readonly number[];
}

/** A page for each flock of a comparison, in the order of its flocks: all figures are those of the comparison. */
export function flockPages({ content, flocks, year }: Collated): readonly FlockPageContent[] {
  const { places = [], turns = [], inTurn = [] } = settledFigures(content) ?? {};
  const counted = content.flocks.flatMap((flock, row) =>
    places[row] === undefined ? [] : [{ lame: flock.lame ?? 0, seen: flock.lookedAt ?? 0, year: flock }],
  );
  const round: Round = {
    content,
    inTurn,
    compared: counted.length,
    lame: counted.reduce((sum, { lame }) => sum + lame, 0),
    seen: counted.reduce((sum, { seen }) => sum + seen, 0),
    mgPcus: counted.flatMap(({ year: flock }) => mgPcuOf(flock) ?? []),
  };
  const funnels = funnelOf(counted);
  // What each flock that is ranked goes by on the pages of the others.
  const letters: string[] = [];
  places.forEach((place, row) => {
    const turn = place === undefined ? undefined : turns[place - 1];
    if (turn !== undefined) letters[turn - 1] = flocks[row]?.letter ?? "";
  });
  return flocks.map((flock, row) => {
    const place = places[row];
    const turn = place === undefined ? undefined : turns[place - 1];
    const own = place === undefined ? undefined : counted[place - 1];
    const figures = content.flocks[row] as FlockYear;
    return {
      made: content.made,
      year,
      flock: flock.flock,
      compared: round.compared,
      target: figures.target ?? content.target,
      standing: [
        ...(own === undefined || place === undefined
          ? [line("Share lame", `not counted: ${whyNot(figures)}`)]
          : standingOf(
              own,
              round,
              typeof funnels === "string" ? funnels : funnels[place - 1],
              turn === undefined ? undefined : inTurn[turn - 1],
            )),
        ...(flock.record.leftOut.length > 0 ? [line("Left out of these", leftOutWords(flock.record.leftOut))] : []),
      ],
      done: [...careLines(flock.record, year), antibiotics(figures, flock, round)],
      ranked: inTurn.map(({ steadied, low, high }, step) => {
        const isOwn = step + 1 === turn;
        return { called: isOwn ? flock.flock : (letters[step] ?? ""), own: isOwn, steadied, low, high };
      }),
    };
  });
}

const line = (label: string, words: string): PageLine => ({ label, value: undefined, look: "besidePercent", words });

const whyNot = ({ lookedAt }: FlockYear): string =>
  lookedAt === 0 ? "no sheep were looked at" : "its name stands twice in the comparison";

function funnelOf(counted: readonly Counted[]): readonly FunnelFlock[] | string {
  try {
    return funnel(
      counted.map(({ year: { flock } }) => flock),
      counted.map(({ lame }) => lame),
      counted.map(({ seen }) => seen),
    );
  } catch (error) {
    if (error instanceof Problem) return error.message;
    throw error;
  }
}

function standingOf(
  { lame, seen, year }: Counted,
  { content, inTurn, compared, lame: allLame, seen: allSeen }: Round,
  inFunnel: FunnelFlock | string | undefined,
  steadied: ShrunkFlock | undefined,
): readonly PageLine[] {
  const look = "besidePercent";
  const target = year.target ?? content.target;
  const { low, high } = prevalenceRange([lame], [seen], { confidence });
  const alone = typeof inFunnel === "string" ? `not compared: ${inFunnel}` : "not compared";
  return [
    {
      label: "Share lame",
      value: lame / seen,
      low,
      high,
      look,
      words: `${lame} lame of ${seen} looked at, all gathers together`,
    },
    line(`Against the target of ${rounded(100 * target)} %`, targetCheck([lame], [seen], { target, confidence })),
    changeLine(year, { lame, seen }),
    typeof inFunnel === "object"
      ? {
          label: "All flocks, limits of chance",
          value: allLame / allSeen,
          low: inFunnel.low95,
          high: inFunnel.high95,
          look,
          words: `this flock is ${inFunnel.word} for so many sheep`,
        }
      : line("All flocks, limits of chance", alone),
    ...(steadied === undefined
      ? [line("Steadied share", alone)]
      : [
          {
            label: "Steadied share",
            value: steadied.steadied,
            low: steadied.low,
            high: steadied.high,
            look,
            words: "drawn towards the other flocks, the more the fewer were looked at",
          } as const,
          {
            label: "Rank by it, 1 the lowest",
            value: steadied.rank,
            low: steadied.lowRank,
            high: steadied.highRank,
            look: "besideCount",
            words: `of ${compared} flocks: ${steadied.word}`,
          } as const,
          {
            label: "Better than",
            value: flockRank(
              steadied.steadied,
              inTurn.flatMap((other) => (other === steadied ? [] : other.steadied)),
              true,
            ),
            look,
            words: "of the other flocks, by the steadied share",
          } as const,
        ]),
  ];
}

const since = "Since the year before";

function changeLine(
  { lameBefore, lookedAtBefore }: FlockYear,
  { lame, seen }: Pick<Counted, "lame" | "seen">,
): PageLine {
  if (lameBefore === undefined || lookedAtBefore === undefined)
    return line(since, "not known: no gathers of the year before");
  if (lookedAtBefore === 0) return line(since, "not known: no sheep were looked at in the year before");
  const before = { lame: [lameBefore], seen: [lookedAtBefore] };
  const { change, low, high } = prevalenceChange(before, { lame: [lame], seen: [seen] }, confidence);
  const side = change < 0 ? "fewer" : "more";
  return {
    label: since,
    value: change,
    low,
    high,
    look: "besidePercent",
    words:
      change === 0
        ? `as many as then (${lameBefore} lame of ${lookedAtBefore})`
        : `${side} lame than then (${lameBefore} of ${lookedAtBefore})${low * high > 0 ? "" : "; chance alone may do as much"}`,
  };
}

const used = "Antibiotics, mg/PCU";

function mgPcuOf({ antibioticMg, breedingSheep, slaughterLambs }: FlockYear): number | undefined {
  if (antibioticMg === undefined || breedingSheep === undefined || slaughterLambs === undefined) return undefined;
  if (breedingSheep + slaughterLambs === 0) return undefined;
  return mgPerPcu(antibioticMg, breedingSheep, slaughterLambs);
}

function antibiotics(year: FlockYear, { record }: CollatedFlock, { content, mgPcus }: Round): PageLine {
  const value = mgPcuOf(year);
  if (value === undefined) return line(used, `not counted: ${whyNoMgPcu(year, record, content.year)}`);
  const words =
    mgPcus.length < 2
      ? "it is known of no other flock"
      : `half of the flocks used less than ${rounded(median(mgPcus))}`;
  return { label: used, value, look: "besideRate", words };
}

function whyNoMgPcu(
  { breedingSheep, slaughterLambs }: FlockYear,
  { coursesWithoutDay, years }: CollatedFlock["record"],
  year: number | undefined,
): string {
  const { coursesWithoutMg = 0 } = (year === undefined ? undefined : years.get(year)) ?? {};
  const reasons = [
    coursesWithoutDay > 0 && `${treatments(coursesWithoutDay)} without a day`,
    coursesWithoutMg > 0 && `${treatments(coursesWithoutMg)} without ml, or with a medicine without mg per ml`,
    breedingSheep === undefined && "breeding sheep are missing in the settings",
    slaughterLambs === undefined && "lambs sold are missing in the settings",
    breedingSheep === 0 && slaughterLambs === 0 && "no breeding sheep and no lambs sold in the settings",
  ].filter((reason) => reason !== false);
  return reasons.join("; ");
}

const treatments = (count: number): string => `${count} ${count === 1 ? "treatment" : "treatments"}`;

const rounded = (value: number): string => `${Number(value.toFixed(2))}`;

function median(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other);
  const [low, high] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]];
  return ((low ?? Number.NaN) + (high ?? Number.NaN)) / 2;
}
