import type { AnyFunction } from "../src/definition/defineFunction.ts";
import { caseNumberFunction } from "./animals/caseNumber.ts";
import { caseTableFunction } from "./animals/caseTable.ts";
import { keepApartFunction } from "./animals/keepApart.ts";
import { repeatAnimalsFunction } from "./animals/repeatAnimals.ts";
import { soundByFunction } from "./animals/soundBy.ts";
import { soundCurveFunction } from "./animals/soundCurve.ts";
import { treatLagFunction } from "./animals/treatLag.ts";
import { flockPrevalenceFunction } from "./counting/flockPrevalence.ts";
import { lesionMixFunction } from "./counting/lesionMix.ts";
import { prevalenceByGroupFunction } from "./counting/prevalenceByGroup.ts";
import { prevalenceRangeFunction } from "./counting/prevalenceRange.ts";
import { scorePrevalenceFunction } from "./counting/scorePrevalence.ts";
import { targetCheckFunction } from "./counting/targetCheck.ts";
import { animalClearFunction } from "./dates/animalClear.ts";
import { clearDateFunction } from "./dates/clearDate.ts";
import { dueListFunction } from "./dates/dueList.ts";
import { recheckDueFunction } from "./dates/recheckDue.ts";
import { recheckStateFunction } from "./dates/recheckState.ts";
import { saleCheckFunction } from "./dates/saleCheck.ts";
import { aboutFunction } from "./records/about.ts";
import { lesionNameFunction } from "./records/lesionName.ts";
import { tagKeyFunction } from "./records/tagKey.ts";

/** Every worksheet function, in the order in which lists show them. */
export const catalogue: readonly AnyFunction[] = [
  flockPrevalenceFunction,
  prevalenceRangeFunction,
  scorePrevalenceFunction,
  targetCheckFunction,
  prevalenceByGroupFunction,
  lesionMixFunction,
  caseTableFunction,
  caseNumberFunction,
  repeatAnimalsFunction,
  treatLagFunction,
  soundByFunction,
  soundCurveFunction,
  keepApartFunction,
  clearDateFunction,
  animalClearFunction,
  saleCheckFunction,
  recheckDueFunction,
  recheckStateFunction,
  dueListFunction,
  tagKeyFunction,
  lesionNameFunction,
  aboutFunction,
];
