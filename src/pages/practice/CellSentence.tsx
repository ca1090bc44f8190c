import type { Box } from "./grid/cellBox.ts";

interface Props {
  readonly box: Box;
  readonly sentence: string;
}

/**
 * What is to be said of a cell, below it: of the one under the pointer, or of the selected one. It is read out from the
 * line below the sheet, which says the same of the selected cell, and so not a second time from here.
 */
export const CellSentence = ({ box, sentence }: Props) => {
  const isLow = box.top + box.height + 120 > innerHeight;
  return (
    <p
      class="sentence"
      aria-hidden="true"
      style={{
        left: `${Math.max(8, Math.min(box.left, innerWidth - 360))}px`,
        ...(isLow ? { bottom: `${innerHeight - box.top + 4}px` } : { top: `${box.top + box.height + 4}px` }),
      }}
    >
      {sentence}
    </p>
  );
};
