import type { Work } from "../../parts/useWork.ts";
import { words } from "../../words.ts";

interface Props {
  readonly work: Work;
  /** What was done, with a tick. */
  readonly done?: string | undefined;
  /** What came of it, where a tick would be too much praise. */
  readonly told?: string | undefined;
}

/** That work is under way, that it is done, or why it failed; read out as it changes. */
export const WorkNotes = ({ work, done, told }: Props) => (
  <>
    <p role="status" class={work.busy || told ? "told" : done ? "done" : "unseen"}>
      {work.busy ? words.pane.working : (told ?? done ?? "")}
    </p>
    {work.fault && (
      <p role="alert" class="fault">
        {work.fault}
      </p>
    )}
  </>
);
