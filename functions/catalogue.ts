import type { AnyFunction, ListedFunction } from "../src/definition/defineFunction.ts";
import type { Topic } from "../src/definition/topics.ts";
import { caseNumberFunction } from "./animals/caseNumber.ts";
import { caseTableFunction } from "./animals/caseTable.ts";
import { keepApartFunction } from "./animals/keepApart.ts";
import { notSoundFunction } from "./animals/notSound.ts";
import { repeatAnimalsFunction } from "./animals/repeatAnimals.ts";
import { soundByFunction } from "./animals/soundBy.ts";
import { soundCurveFunction } from "./animals/soundCurve.ts";
import { treatLagFunction } from "./animals/treatLag.ts";
import { flockRankFunction } from "./benchmarking/flockRank.ts";
import { flockSpreadFunction } from "./benchmarking/flockSpread.ts";
import { funnelFunction } from "./benchmarking/funnel.ts";
import { shrunkPrevalenceFunction } from "./benchmarking/shrunkPrevalence.ts";
import { flockPrevalenceFunction } from "./counting/flockPrevalence.ts";
import { lesionMixFunction } from "./counting/lesionMix.ts";
import { lookAgreementFunction } from "./counting/lookAgreement.ts";
import { pairedChangeFunction } from "./counting/pairedChange.ts";
import { prevalenceByGroupFunction } from "./counting/prevalenceByGroup.ts";
import { prevalenceChangeFunction } from "./counting/prevalenceChange.ts";
import { prevalenceRangeFunction } from "./counting/prevalenceRange.ts";
import { prevalenceTrendFunction } from "./counting/prevalenceTrend.ts";
import { scorePrevalenceFunction } from "./counting/scorePrevalence.ts";
import { standardPrevalenceFunction } from "./counting/standardPrevalence.ts";
import { targetCheckFunction } from "./counting/targetCheck.ts";
import { truePrevalenceFunction } from "./counting/truePrevalence.ts";
import { weightedPrevalenceFunction } from "./counting/weightedPrevalence.ts";
import { animalClearFunction } from "./dates/animalClear.ts";
import { cascadeDaysFunction } from "./dates/cascadeDays.ts";
import { clearDateFunction } from "./dates/clearDate.ts";
import { doseCalendarFunction } from "./dates/doseCalendar.ts";
import { dueListFunction } from "./dates/dueList.ts";
import { notClearFunction } from "./dates/notClear.ts";
import { quarantineEndFunction } from "./dates/quarantineEnd.ts";
import { recheckDueFunction } from "./dates/recheckDue.ts";
import { recheckStateFunction } from "./dates/recheckState.ts";
import { saleCheckFunction } from "./dates/saleCheck.ts";
import { medicineUseFunction } from "./medicines/medicineUse.ts";
import { mgPerPcuFunction } from "./medicines/mgPerPcu.ts";
import { detectChanceFunction } from "./planning/detectChance.ts";
import { freedomFunction } from "./planning/freedom.ts";
import { lameCostFunction } from "./planning/lameCost.ts";
import { sampleToCompareFunction } from "./planning/sampleToCompare.ts";
import { sampleToEstimateFunction } from "./planning/sampleToEstimate.ts";
import { sampleToFindFunction } from "./planning/sampleToFind.ts";
import { aboutFunction } from "./records/about.ts";
import { cautionListFunction } from "./records/cautionList.ts";
import { hostCheckFunction } from "./records/hostCheck.ts";
import { lesionNameFunction } from "./records/lesionName.ts";
import { recordCheckFunction } from "./records/recordCheck.ts";
import { tagCheckFunction } from "./records/tagCheck.ts";
import { tagKeyFunction } from "./records/tagKey.ts";
import { batchMlFunction } from "./treatment/batchMl.ts";
import { bathLitresFunction } from "./treatment/bathLitres.ts";
import { bathMixFunction } from "./treatment/bathMix.ts";
import { bathSheepFunction } from "./treatment/bathSheep.ts";
import { carePlanFunction } from "./treatment/carePlan.ts";
import { doseMlFunction } from "./treatment/doseMl.ts";
import { siteMlFunction } from "./treatment/siteMl.ts";
import { driftWatchFunction } from "./watching/driftWatch.ts";
import { lameWatchFunction } from "./watching/lameWatch.ts";
import { newCaseRateFunction } from "./watching/newCaseRate.ts";
import { rateChangeFunction } from "./watching/rateChange.ts";
import { sheepDaysFunction } from "./watching/sheepDays.ts";

/** Every worksheet function by its topic, in the order in which lists show them. */
const byTopic: Readonly<Record<Topic, readonly AnyFunction[]>> = {
  counting: [
    flockPrevalenceFunction,
    prevalenceRangeFunction,
    scorePrevalenceFunction,
    targetCheckFunction,
    prevalenceByGroupFunction,
    weightedPrevalenceFunction,
    standardPrevalenceFunction,
    truePrevalenceFunction,
    lesionMixFunction,
    prevalenceChangeFunction,
    pairedChangeFunction,
    prevalenceTrendFunction,
    lookAgreementFunction,
  ],
  watching: [lameWatchFunction, driftWatchFunction, sheepDaysFunction, newCaseRateFunction, rateChangeFunction],
  animals: [
    caseTableFunction,
    caseNumberFunction,
    repeatAnimalsFunction,
    notSoundFunction,
    treatLagFunction,
    soundByFunction,
    soundCurveFunction,
    keepApartFunction,
  ],
  dates: [
    clearDateFunction,
    cascadeDaysFunction,
    animalClearFunction,
    saleCheckFunction,
    notClearFunction,
    recheckDueFunction,
    recheckStateFunction,
    dueListFunction,
    quarantineEndFunction,
    doseCalendarFunction,
  ],
  treatment: [
    carePlanFunction,
    doseMlFunction,
    siteMlFunction,
    batchMlFunction,
    bathLitresFunction,
    bathMixFunction,
    bathSheepFunction,
  ],
  medicines: [mgPerPcuFunction, medicineUseFunction],
  planning: [
    sampleToEstimateFunction,
    sampleToCompareFunction,
    sampleToFindFunction,
    detectChanceFunction,
    freedomFunction,
    lameCostFunction,
  ],
  benchmarking: [flockRankFunction, funnelFunction, shrunkPrevalenceFunction, flockSpreadFunction],
  records: [
    tagKeyFunction,
    tagCheckFunction,
    lesionNameFunction,
    recordCheckFunction,
    hostCheckFunction,
    cautionListFunction,
    aboutFunction,
  ],
};

/** Every worksheet function, in the order in which lists show them. */
export const catalogue: readonly ListedFunction[] = (Object.keys(byTopic) as Topic[]).flatMap((topic) =>
  byTopic[topic].map((definition) => ({ ...definition, topic })),
);
