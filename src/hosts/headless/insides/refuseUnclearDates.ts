import { isUnclearDate } from "../isUnclearDate.ts";
import type { UniverParts } from "../univerParts.ts";

type Formula = UniverParts["formula"];
/** The engine's functions with their names, as it lists them. */
type Makers = readonly (readonly unknown[])[];

type Calculate = (this: unknown, ...given: Value[]) => unknown;

interface WorksheetFunction {
  readonly prototype: { calculate: Calculate };
}

type Value = ReturnType<Formula["ValueObjectFactory"]["create"]>;

const mended = new WeakSet<Formula["ValueObjectFactory"]>();

/**
 * Lets a text such as 03/04/2026 stay a text, so that reckoning with it is `#VALUE!`.
 *
 * The engine reads the month first, wherever the workbook comes from: a formula that adds 28 days to the text would, on
 * a farm that means 3 April, give a day a month too early. These are the engine's own classes: look at them again when
 * its version changes.
 */
export function refuseUnclearDates({ core, formula }: UniverParts): void {
  const {
    ErrorValueObject,
    ErrorType,
    StringValueObject,
    ValueObjectFactory,
    functionDate,
    functionMath,
    functionStatistical,
    functionText,
  } = formula;
  if (mended.has(ValueObjectFactory)) return;
  mended.add(ValueObjectFactory);
  const isUnclear = (value: unknown): boolean => typeof value === "string" && isUnclearDate(value, core.numfmt);

  const noNumber = () => ErrorValueObject.create(ErrorType.VALUE);

  const text = StringValueObject.prototype;
  const { convertToNumberObjectValue } = text;
  text.convertToNumberObjectValue = function () {
    return isUnclear(this.getValue()) ? noNumber() : convertToNumberObjectValue.call(this);
  };
  const create = ValueObjectFactory.create.bind(ValueObjectFactory);
  // A text in a formula comes with its quotes.
  ValueObjectFactory.create = (raw, isText) =>
    create(raw, isText || isUnclear(typeof raw === "string" ? raw.replace(/^"(.*)"$/s, "$1") : raw));

  const isText = (value: Value, isRefused: (text: string) => boolean): boolean =>
    value instanceof StringValueObject && isRefused(value.getValue());
  const wrap = (makers: Makers, wrapped: (calculate: Calculate) => Calculate): void => {
    for (const [made] of makers) {
      const own = (made as unknown as WorksheetFunction).prototype;
      own.calculate = wrapped(own.calculate);
    }
  };

  // The functions of dates, and TEXT, make a date of a text themselves.
  const refused = (value: Value): Value => {
    if (value.isArray()) return value.mapValue(refused);
    return isText(value, isUnclear) ? noNumber() : value;
  };
  wrap(
    [...functionDate, ...functionText.filter(([, name]) => name === "TEXT")],
    (calculate) =>
      function (...given) {
        return calculate.apply(this, given.map(refused));
      },
  );

  // A criterion such as >=01/03/2026 would be held against texts, and no date would fit it.
  const isUnclearCriterion = (text: string): boolean => isUnclear(/^\s*[<>]=?\s*(.+)$/s.exec(text)?.[1]);
  wrap(
    [...functionMath, ...functionStatistical].filter(([, name]) => /IFS?$/.test(String(name))),
    (calculate) =>
      function (...given) {
        return given.some((value) => isText(value, isUnclearCriterion)) ? noNumber() : calculate.apply(this, given);
      },
  );
}
