import { funnelFunction } from "../../../functions/benchmarking/funnel.ts";
import { shrunkPrevalenceFunction } from "../../../functions/benchmarking/shrunkPrevalence.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import { columnOf, sheetNames } from "./comparisonTables.ts";

/** The row of the headings on the sheet Figures, counted from 0. */
export const figuresHeading = 4;
export const figuresTop = figuresHeading + 1;

/** Flock sizes at which the limits of the funnel are drawn. */
export const gridSizes = 25;

const width = ({ result }: AnyFunction): number => result.formats.length + 1;
const funnel = 5;
const steadied = funnel + width(funnelFunction);
const grid = steadied + width(shrunkPrevalenceFunction);
const limits = grid + 4;
const ranked = limits + width(funnelFunction);

/** The first column of each part of the sheet Figures. */
export const parts = { counted: 0, funnel, steadied, grid, limits, ranked } as const;

/** Columns of what the ranked charts are drawn from. */
export const rankedColumns = [
  "name",
  "letter",
  "low",
  "high",
  "range",
  "steadied share",
  "range of this flock",
  "range of the others",
  "share as seen",
  "all",
  "target",
] as const;

type Heading<F extends AnyFunction> = F["result"]["headings"][number];

/** A column of a list on the sheet Figures, under its headings. */
export function listColumn<F extends AnyFunction>(gives: F, left: number, heading: Heading<F>, rows: number): string {
  const step = gives.result.headings.indexOf(heading);
  if (step < 0) throw new RangeError(`${gives.name} has no column ${heading}`);
  return columnOf(sheetNames.figures, left + step, figuresTop, rows);
}

export const funnelColumn = (heading: string, rows: number): string =>
  listColumn(funnelFunction, parts.funnel, heading, rows);
export const steadiedColumn = (heading: string, rows: number): string =>
  listColumn(shrunkPrevalenceFunction, parts.steadied, heading, rows);
export const rankedColumn = (name: (typeof rankedColumns)[number], rows: number): string =>
  columnOf(sheetNames.figures, parts.ranked + rankedColumns.indexOf(name), figuresTop, rows);
