import type { PrevalenceChange } from "../../core/counting/prevalenceChange.ts";
import { type Collated, leftOutWords } from "../collate/collateBooks.ts";
import { several } from "../collate/doneFigure.ts";
import type { FlockDone } from "../collate/flockDone.ts";
import { type ComparedFlock, type ComparedFlocks, comparedFlocks } from "../comparison/comparedFlocks.ts";
import type { ComparisonContent, FlockYear } from "../comparison/comparisonContent.ts";
import { careLines } from "./careLines.ts";
import type { FlockPageContent, PageLine } from "./flockPageContent.ts";

interface Round {
  readonly content: ComparisonContent;
  readonly compared: ComparedFlocks;
  /** mg/PCU of each flock of which it is known. */
  readonly mgPcus: readonly number[];
}

/** A flock of a round, with what only its own page may say. */
export interface PageFlock {
  readonly flock: string;
  /** By which the pages of the others call it. */
  readonly letter: string;
  /** What was left out, in words; empty where nothing was. */
  readonly leftOut: string;
  /** Why nothing is known of its share; left out where the figures say why. */
  readonly noShare?: string | undefined;
  /** What is done, where that is not known as it is in a foot book. */
  readonly done?: readonly PageLine[] | undefined;
}

/** A page for each flock of a comparison, in the order of its flocks: all figures are those of the comparison. */
export const flockPages = ({ content, flocks, year }: Collated): readonly FlockPageContent[] =>
  pagesOfRound(
    content,
    flocks.map(({ flock, letter, record }) => ({ flock, letter, leftOut: leftOutWords(record.leftOut) })),
    year,
  );

/**
 * The same for flocks from anywhere.
 *
 * @param flocks - as many as the content has, in the same order
 * @param wanted - the places of those that get a page; left out for all
 */
export function pagesOfRound(
  content: ComparisonContent,
  flocks: readonly PageFlock[],
  year: number,
  wanted?: ReadonlySet<number>,
): readonly FlockPageContent[] {
  const compared = comparedFlocks(content, wanted);
  const { places, turns, inTurn } = compared;
  const done = content.done ?? [];
  // Of flocks that count, as the page of one flock in the comparison has it.
  const mgPcus = done.flatMap(({ mgPcu }, row) => (places[row] === undefined ? [] : (mgPcu.value ?? [])));
  const round: Round = { content, compared, mgPcus };
  // What each flock that is ranked goes by on the pages of the others.
  const letters: string[] = [];
  places.forEach((place, row) => {
    const turn = place === undefined ? undefined : turns[place - 1];
    if (turn !== undefined) letters[turn - 1] = flocks[row]?.letter ?? "";
  });
  return flocks.flatMap((flock, row): readonly FlockPageContent[] => {
    if (wanted?.has(row) === false) return [];
    const own = compared.flocks[row] ?? "";
    const turn = typeof own === "string" ? undefined : own.turn;
    const figures = content.flocks[row] as FlockYear;
    const care = done[row];
    const page = {
      made: content.made,
      year,
      flock: flock.flock,
      compared: compared.counted,
      target: figures.target ?? content.target,
      standing: [
        ...(typeof own === "string"
          ? [line("Share lame", `not counted: ${flock.noShare ?? own}`)]
          : standingOf(own, figures, round)),
        ...(flock.leftOut === "" ? [] : [line("Left out of these", flock.leftOut)]),
      ],
      done: flock.done ?? (care === undefined ? [] : [...careLines(care), antibiotics(care, round)]),
      ranked: drawnSteps(inTurn.length, turn).flatMap((step) => {
        const { steadied, low, high } = inTurn[step] ?? {};
        if (steadied === undefined || low === undefined || high === undefined) return [];
        const isOwn = step + 1 === turn;
        const called = isOwn ? shortened(flock.flock) : (letters[step] ?? "");
        return [{ called, own: isOwn, steadied, low, high }];
      }),
    };
    return [page];
  });
}

/** As many flocks as a chart across a page can tell apart. */
const mostDrawn = 60;

/** The flocks that are drawn, by their places in the order of ranks: of many some at even steps, and its own. */
function drawnSteps(flocks: number, turn: number | undefined): readonly number[] {
  if (flocks <= mostDrawn) return Array.from({ length: flocks }, (_, step) => step);
  const others = turn === undefined ? mostDrawn : mostDrawn - 1;
  const steps = Array.from({ length: others }, (_, step) => Math.round((step * (flocks - 1)) / (others - 1)));
  const all = turn === undefined ? steps : [...steps, turn - 1];
  return [...new Set(all)].sort((one, other) => one - other);
}

/** A name that leaves a chart its room. */
const shortened = (name: string): string => (name.length > 22 ? `${name.slice(0, 20).trim()} …` : name);

const line = (label: string, words: string): PageLine => ({ label, value: undefined, look: "besidePercent", words });

function standingOf(
  { lame, seen, gathers, share, range, funnel: inFunnel, steadied, better, change, against }: ComparedFlock,
  year: FlockYear,
  { content, compared }: Round,
): readonly PageLine[] {
  const look = "besidePercent";
  const target = year.target ?? content.target;
  const alone = typeof compared.funnel === "string" ? `not compared: ${compared.funnel}` : "not compared";
  return [
    {
      label: "Share lame",
      value: share,
      ...range,
      look,
      words: `${lame} lame of ${seen} looked at, ${typeof gathers === "number" ? several(gathers, "gather") : "all gathers"} together`,
    },
    line(`Against the target of ${rounded(100 * target)} %`, against),
    changeLine(year, change),
    inFunnel !== undefined
      ? {
          label: "All flocks, with limits",
          value: compared.lame / compared.seen,
          low: inFunnel.low95,
          high: inFunnel.high95,
          look,
          words: `among flocks that differ as these do, this one is ${inFunnel.word} for so many sheep`,
        }
      : line("All flocks, with limits", alone),
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
            words: `of ${compared.counted} flocks: ${steadied.word}`,
          } as const,
          { label: "Better than", value: better, look, words: "of the other flocks, by the steadied share" } as const,
        ]),
  ];
}

const since = "Since the year before";

function changeLine({ lameBefore, lookedAtBefore }: FlockYear, change: PrevalenceChange | undefined): PageLine {
  if (lameBefore === undefined || lookedAtBefore === undefined)
    return line(since, "not known: no gathers of the year before");
  if (change === undefined) return line(since, "not known: no sheep were looked at in the year before");
  const { low, high } = change;
  const side = change.change < 0 ? "fewer" : "more";
  return {
    label: since,
    value: change.change,
    low,
    high,
    look: "besidePercent",
    words:
      change.change === 0
        ? `as many as then (${lameBefore} lame of ${lookedAtBefore})`
        : `${side} lame than then (${lameBefore} of ${lookedAtBefore})${low * high > 0 ? "" : "; chance alone may do as much"}`,
  };
}

const used = "Antibiotics, mg/PCU";

function antibiotics({ mgPcu: { value, words } }: FlockDone, { mgPcus }: Round): PageLine {
  if (value === undefined) return line(used, `not counted: ${words}`);
  const others =
    mgPcus.length < 2
      ? "it is known of no other flock"
      : `half of the flocks used less than ${rounded(median(mgPcus))}`;
  return { label: used, value, look: "besideRate", words: others };
}

const rounded = (value: number): string => `${Number(value.toFixed(2))}`;

function median(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other);
  const [low, high] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]];
  return ((low ?? Number.NaN) + (high ?? Number.NaN)) / 2;
}
