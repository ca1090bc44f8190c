import { usualTarget } from "../usualTarget.ts";
import type { VisitContent } from "./visitContent.ts";

interface Wanted {
  readonly farm?: string | undefined;
  readonly groups?: readonly string[];
  readonly made: string;
}

/** A visit sheet to be filled. */
export const emptyVisit = ({ farm, groups = [], made }: Wanted): VisitContent => ({
  farm,
  made,
  invented: false,
  target: usualTarget,
  groups: groups.map((group) => ({ group })),
  found: [],
  otherMedicines: [],
  weighed: [],
  agreed: [],
});
