import { useEffect, useRef, useState } from "preact/hooks";

export interface Unsaved {
  /** Something was typed that is in no file. */
  readonly unsaved: boolean;
  readonly isUnsaved: () => boolean;
  readonly changed: () => void;
  /** How often something was changed until now; to be handed to `saved` once it is in a file. */
  readonly count: () => number;
  readonly saved: (count: number) => void;
}

/** Knows whether the work is in a file, and has the browser ask before the page is left while it is not. */
export function useUnsaved(): Unsaved {
  const changes = useRef(0);
  const inFile = useRef(0);
  const [unsaved, setUnsaved] = useState(false);
  const isUnsaved = (): boolean => changes.current !== inFile.current;
  // biome-ignore lint/correctness/useExhaustiveDependencies: it reads what is there at the time
  useEffect(() => {
    const ask = (event: BeforeUnloadEvent) => {
      if (isUnsaved()) event.preventDefault();
    };
    addEventListener("beforeunload", ask);
    return () => removeEventListener("beforeunload", ask);
  }, []);
  return {
    unsaved,
    isUnsaved,
    changed() {
      changes.current += 1;
      setUnsaved(true);
    },
    count: () => changes.current,
    saved(count) {
      inFile.current = count;
      setUnsaved(isUnsaved());
    },
  };
}
