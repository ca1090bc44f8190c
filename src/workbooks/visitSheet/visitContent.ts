import type { Day } from "../../cells/day.ts";
import type { BathProduct } from "../../core/treatment/bathMix.ts";
import type { RecordOf } from "../tables/defineTable.ts";
import type { agreed, found, otherMedicines, visitGroups, weighed } from "../tables/visitTables.ts";

/** The medicine of the day. A vet and a data sheet give these numbers; there are none to start from. */
interface VisitMedicine {
  readonly name: string;
  readonly mgPerKg: number;
  readonly mgPerMl: number;
  readonly mostPerSite: number;
  readonly bottleMl: number;
  readonly route: string;
  readonly withdrawalDays: number;
}

interface VisitBath {
  readonly lengthCm: number;
  readonly topWidthCm: number;
  readonly depthCm: number;
  readonly percent: number;
  readonly kind: BathProduct;
}

/** Sheep that were bought in. */
interface VisitQuarantine {
  readonly arrived: Day;
  readonly sheep: number;
  readonly lastNewCase?: Day;
  readonly baths: number;
  readonly bathEvery: number;
  readonly vaccine?: Day;
  readonly vaccineAfter?: number;
}

/** What a visit sheet holds when it is made. */
export interface VisitContent {
  readonly farm?: string | undefined;
  /** The day the file says it was made, as 2026-10-31. */
  readonly made: string;
  readonly invented: boolean;
  readonly day?: Day | undefined;
  readonly adviser?: string | undefined;
  readonly target: number;
  /** Typed for each visit: the share expected, the margin, and the smallest share that matters. */
  readonly plan?: { readonly expected: number; readonly margin: number; readonly design: number } | undefined;
  readonly flockHas?: { readonly footrot: boolean; readonly codd: boolean } | undefined;
  readonly groups: readonly RecordOf<typeof visitGroups>[];
  readonly found: readonly RecordOf<typeof found>[];
  readonly medicine?: VisitMedicine | undefined;
  readonly weighed: readonly RecordOf<typeof weighed>[];
  readonly otherMedicines: readonly RecordOf<typeof otherMedicines>[];
  readonly bath?: VisitBath | undefined;
  readonly quarantine?: VisitQuarantine | undefined;
  readonly agreed: readonly RecordOf<typeof agreed>[];
}
