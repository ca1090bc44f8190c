import type { ChartTickLabelPositionType, ChartType, LineDashType, LineType } from "excelize-wasm";

/**
 * The library's numbers for what a chart can be. It hands them out only once it is loaded, and a plan is made before;
 * `authorWorkbook` holds them against the library.
 */
export const chartKinds = {
  Line: 41 as ChartType.Line,
  Col: 21 as ChartType.Col,
  ColStacked: 22 as ChartType.ColStacked,
  Bar: 6 as ChartType.Bar,
  Scatter: 48 as ChartType.Scatter,
  LineSolid: 1 as LineType.LineSolid,
  LineNone: 2 as LineType.LineNone,
  LineDashSolid: 1 as LineDashType.LineDashSolid,
  LineDashSysDot: 9 as LineDashType.LineDashSysDot,
  LineDashDash: 3 as LineDashType.LineDashDash,
  ChartTickLabelLow: 2 as ChartTickLabelPositionType.ChartTickLabelLow,
} as const;
