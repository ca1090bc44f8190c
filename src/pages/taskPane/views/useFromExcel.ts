import { useEffect, useState } from "preact/hooks";
import type { Connection } from "../connection.ts";

/** Something that is asked of Excel once it is there; undefined until it answers, and where there is no Excel. */
export function useFromExcel<T>(connection: Connection, ask: () => Promise<T>): T | undefined {
  const [answer, setAnswer] = useState<T>();
  useEffect(() => {
    if (connection !== "excel") return;
    let wanted = true;
    void ask().then((given) => {
      if (wanted) setAnswer(given);
    });
    return () => {
      wanted = false;
    };
  }, [connection, ask]);
  return answer;
}
