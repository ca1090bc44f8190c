import type { Work } from "../../parts/useWork.ts";
import { words } from "../../words.ts";

/** That work is under way, that it is done, or why it failed; read out as it changes. */
export const WorkNotes = ({ work, done }: { readonly work: Work; readonly done?: string | undefined }) => (
  <>
    <p role="status" class={work.busy ? "told" : done ? "done" : "unseen"}>
      {work.busy ? words.pane.working : (done ?? "")}
    </p>
    {work.fault && (
      <p role="alert" class="fault">
        {work.fault}
      </p>
    )}
  </>
);
