import type { Clock } from "../../localClock.ts";
import type { Registration } from "../bridge.ts";
import type { UniverParts } from "../univerParts.ts";

/**
 * TODAY and NOW by the clock that is handed in. The engine's own TODAY is the day in Greenwich: west of it the list of
 * animals not clear today would be tomorrow's from the evening on, and an animal would be let go a day too early.
 */
export function todayAndNow({ formula }: UniverParts, clock: Clock): readonly Registration[] {
  const { BaseFunction, NumberValueObject } = formula;

  class Today extends BaseFunction {
    override minParams = 0;
    override maxParams = 0;

    override calculate() {
      return NumberValueObject.create(Math.floor(clock()), "yyyy-mm-dd");
    }
  }
  class Now extends BaseFunction {
    override minParams = 0;
    override maxParams = 0;

    override calculate() {
      return NumberValueObject.create(clock(), "yyyy-mm-dd hh:mm");
    }
  }
  return [
    [Today, "TODAY"],
    [Now, "NOW"],
  ];
}
