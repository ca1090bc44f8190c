import * as core from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import * as formula from "@univerjs/engine-formula";
import { CalculationMode, UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import texts from "@univerjs/preset-sheets-core/locales/en-US";
import { greenTheme } from "@univerjs/themes";
import type { AnyFunction } from "../../../definition/defineFunction.ts";
import { bridge, type Listener } from "../../../hosts/headless/bridge.ts";
import { compareEachCell } from "../../../hosts/headless/insides/compareEachCell.ts";
import { eachValueOnce } from "../../../hosts/headless/insides/eachValueOnce.ts";
import { keepEmptyTexts } from "../../../hosts/headless/insides/emptyTexts.ts";
import { fitToCells } from "../../../hosts/headless/insides/fitToCells.ts";
import { lengthOfNumbers } from "../../../hosts/headless/insides/lengthOfNumbers.ts";
import { matchOfMany } from "../../../hosts/headless/insides/matchOfMany.ts";
import { mendReader } from "../../../hosts/headless/insides/mendReader.ts";
import { mergeInPlace } from "../../../hosts/headless/insides/mergeInPlace.ts";
import { partsOfDates } from "../../../hosts/headless/insides/partsOfDates.ts";
import { refuseUnclearDates } from "../../../hosts/headless/insides/refuseUnclearDates.ts";
import { roomForArrays } from "../../../hosts/headless/insides/roomForArrays.ts";
import { servicesOf } from "../../../hosts/headless/insides/servicesOf.ts";
import { sortOfACopy } from "../../../hosts/headless/insides/sortOfACopy.ts";
import { spilledRange } from "../../../hosts/headless/insides/spilledRange.ts";
import { todayAndNow } from "../../../hosts/headless/insides/todayAndNow.ts";
import { undoInWhole } from "../../../hosts/headless/insides/undoInWhole.ts";
import { workOutOnce } from "../../../hosts/headless/insides/workOutOnce.ts";
import type { UniverParts } from "../../../hosts/headless/univerParts.ts";
import type { Clock } from "../../../hosts/localClock.ts";
import { functionTips } from "./functionTips.ts";

/** The packages of the embedded spreadsheet, for those who work out a workbook without showing it. */
export const univerInPage: UniverParts = { core, formula };

/** The embedded spreadsheet with its services. */
export interface Started {
  readonly univer: core.Univer;
  readonly api: FUniver;
  readonly injector: core.Injector;
}

// A plugin that is registered only for talking to servers, which this page never does.
const notNeeded = new Set(["UNIVER_NETWORK_PLUGIN"]);

/** Starts the embedded spreadsheet in an element, with every worksheet function. */
export function startUniver(
  container: HTMLElement,
  catalogue: readonly AnyFunction[],
  clock: Clock,
  listener: Listener,
  darkMode: boolean,
): Started {
  const univer = new core.Univer({
    locale: core.LocaleType.EN_US,
    locales: { [core.LocaleType.EN_US]: texts },
    theme: greenTheme,
    darkMode,
    logLevel: core.LogLevel.SILENT,
    override: undoInWhole(univerInPage),
  });
  const injector = servicesOf(univer);
  compareEachCell(univerInPage);
  refuseUnclearDates(univerInPage);
  const { plugins } = UniverSheetsCorePreset({
    container,
    header: true,
    toolbar: false,
    contextMenu: false,
    formulaBar: true,
    footer: {
      sheetBar: true,
      statisticBar: false,
      menus: false,
      zoomSlider: false,
      addSheetButtonConfig: { show: false },
    },
    formula: {
      function: [
        ...catalogue.map((definition) => bridge(definition, univerInPage, listener)),
        fitToCells(univerInPage),
        sortOfACopy(univerInPage),
        matchOfMany(univerInPage),
        ...eachValueOnce(univerInPage),
        spilledRange(
          univerInPage,
          () => injector.get(formula.IFormulaRuntimeService),
          () => injector.get(formula.FormulaDataModel),
        ),
        ...todayAndNow(univerInPage, clock),
        ...partsOfDates(univerInPage),
        lengthOfNumbers(univerInPage),
      ] as never,
      description: functionTips(catalogue),
      // The values in the file are shown until something changes.
      initialFormulaComputing: CalculationMode.NO_CALCULATION,
    },
    // The line below the sheet says more of a text that could be a number.
    sheets: { disableForceStringAlert: true },
    disableTextFormatAlert: true,
    disableTextFormatMark: true,
  });
  for (const entry of plugins) {
    const [plugin, config] = Array.isArray(entry) ? entry : [entry, undefined];
    if (notNeeded.has((plugin as { pluginName: string }).pluginName)) continue;
    univer.registerPlugin(plugin as never, config as never);
  }
  const api = FUniver.newAPI(univer);
  keepEmptyTexts(injector.get(formula.IFormulaRuntimeService));
  roomForArrays(univerInPage, injector.get(formula.IFormulaRuntimeService));
  mendReader(injector.get(formula.LexerTreeBuilder));
  mergeInPlace(injector.get(formula.FormulaDataModel));
  workOutOnce(univerInPage, injector);
  return { univer, api, injector };
}
