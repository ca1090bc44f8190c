import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { words } from "../words.ts";
import type { Loading } from "./laterParts.ts";

interface Props<Given> {
  readonly load: Loading<Given>;
  /** What the part is given once it is there. */
  readonly given: Given;
}

/** A part of the page that is fetched when it is first shown; says so while it comes, and why where it does not. */
export function Later<Given extends object>({ load, given }: Props<Given>) {
  const [come, setCome] = useState<{ readonly Part?: ComponentType<Given>; readonly failed?: true }>({});
  const [tries, setTries] = useState(1);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each try fetches once more
  useEffect(() => {
    let wanted = true;
    setCome({});
    load().then(
      (Part) => wanted && setCome({ Part }),
      () => wanted && setCome({ failed: true }),
    );
    return () => {
      wanted = false;
    };
  }, [load, tries]);
  const { Part, failed } = come;
  if (Part) return <Part {...given} />;
  if (!failed) return <p role="status">{words.pane.working}</p>;
  return (
    <>
      <p role="alert" class="fault">
        {words.pane.notFetched}
      </p>
      <p class="buttons">
        <button type="button" onClick={() => setTries(tries + 1)}>
          {words.pane.fetchAgain}
        </button>
      </p>
    </>
  );
}
