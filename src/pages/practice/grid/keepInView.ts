import type { ShownCell } from "./cellBox.ts";

// A bar to scroll with lies over the lower and the right edge.
const bar = 12;

/** Moves the sheet as little as it takes to have the whole cell in sight, beside and below frozen headings. */
export function keepInView({ cell, pane, scroll }: ShownCell): void {
  const right = overshoot(cell.left, cell.width, pane.left, pane.width - bar);
  const down = overshoot(cell.top, cell.height, pane.top, pane.height - bar);
  if (right !== 0 || down !== 0) scroll(right, down);
}

/** How far a stretch reaches out of another: below 0 at its start, above 0 at its end. */
function overshoot(start: number, length: number, paneStart: number, paneLength: number): number {
  if (start < paneStart || length > paneLength) return start - paneStart;
  return Math.max(0, start + length - (paneStart + paneLength));
}
