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
  day: undefined,
  adviser: undefined,
  target: 0.02,
  plan: undefined,
  flockHas: undefined,
  groups: groups.map((group) => ({ group })),
  found: [],
  medicine: undefined,
  otherMedicines: [],
  weighed: [],
  bath: undefined,
  quarantine: undefined,
  agreed: [],
});
