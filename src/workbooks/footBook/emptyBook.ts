import { usualTarget } from "../usualTarget.ts";
import type { BookContent } from "./bookContent.ts";

interface Wanted {
  readonly farm?: string | undefined;
  readonly groups?: readonly string[];
  readonly made: string;
}

/** A Flock foot book to be filled: no records, and no medicines, which a farm types from its own data sheets. */
export const emptyBook = ({ farm, groups = [], made }: Wanted): BookContent => ({
  farm,
  made,
  invented: false,
  target: usualTarget,
  groups: groups.map((group) => ({ group })),
  medicines: [],
  givenBy: [],
  gathers: [],
  cases: [],
  saleTags: [],
});
