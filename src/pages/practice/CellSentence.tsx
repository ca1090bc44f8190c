import type { Box } from "./grid/cellBox.ts";

interface Props {
  readonly box: Box;
  readonly sentence: string;
}

/** What is to be said of the cell under the pointer. The line below the sheet says the same of the selected cell. */
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
