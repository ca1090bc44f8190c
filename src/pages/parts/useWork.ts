import { useRef, useState } from "preact/hooks";

/** Something under way that the person waits for. */
export interface Work {
  readonly busy: boolean;
  /** Why it failed, in words. */
  readonly fault: string | undefined;
  /** Starts work; while other work is under way nothing starts. */
  readonly start: (work: () => Promise<void>) => void;
}

/** One piece of work at a time, with its failure in words. */
export function useWork(inWords: (error: unknown) => string): Work {
  const [state, setState] = useState<{ readonly busy: boolean; readonly fault: string | undefined }>({
    busy: false,
    fault: undefined,
  });
  const running = useRef(false);
  const start = (work: () => Promise<void>): void => {
    if (running.current) return;
    running.current = true;
    setState({ busy: true, fault: undefined });
    void work()
      .then(() => undefined, inWords)
      .then((fault) => {
        running.current = false;
        setState({ busy: false, fault });
      });
  };
  return { ...state, start };
}
