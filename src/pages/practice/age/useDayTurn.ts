import { useEffect, useRef } from "preact/hooks";
import type { Day } from "../../../cells/day.ts";
import type { Clock } from "../../../hosts/localClock.ts";

const minute = 60_000;

/**
 * Tells once of another day than that of the answers in view, at the latest when the page is looked at again.
 *
 * @returns the day of the answers in view, to be set when they are worked out
 */
export function useDayTurn(clock: Clock, onTurn: () => void): { current: Day } {
  const day = useRef(Math.floor(clock()));
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is handed in reads what is there at the time
  useEffect(() => {
    const look = () => {
      const now = Math.floor(clock());
      if (now === day.current) return;
      day.current = now;
      onTurn();
    };
    const timer = setInterval(look, minute);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, []);
  return day;
}
