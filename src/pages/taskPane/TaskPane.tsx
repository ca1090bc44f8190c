import { useEffect, useRef, useState } from "preact/hooks";
import { nothingAsked } from "../parts/FunctionFinder.tsx";
import { words } from "../words.ts";
import { type Connection, followConnection } from "./connection.ts";
import { Later } from "./Later.tsx";
import { fetchAhead, laterViews } from "./laterParts.ts";
import { addressOf, placeOf, viewNames } from "./place.ts";
import { wearTheme } from "./theme.ts";
import { FindView } from "./views/FindView.tsx";

/** The pane beside the workbook. */
export function TaskPane() {
  const [connection, setConnection] = useState<Connection>("waiting");
  const [asked, setAsked] = useState(nothingAsked);
  const { view, name } = usePlace();
  const main = useRef<HTMLElement>(null);
  useEffect(() => followConnection(globalThis, setConnection), []);
  useEffect(fetchAhead, []);
  useEffect(
    () => (connection === "excel" ? wearTheme(document.documentElement, () => Office.context) : undefined),
    [connection],
  );

  // The reader of a screen reader is led to what has changed; at first the page itself is read.
  const shown = `${view} ${name ?? ""}`;
  const before = useRef(shown);
  useEffect(() => {
    if (before.current === shown) return;
    before.current = shown;
    scrollTo(0, 0);
    main.current?.querySelector<HTMLElement>("h2")?.focus();
  }, [shown]);

  return (
    <>
      <header>
        <div class="brand">
          <img src="icons/icon-64.png" alt="" width="32" height="32" />
          <div>
            <h1>{words.pane.name}</h1>
            <p>{words.pane.about}</p>
          </div>
        </div>
        <p class={`connection ${connection}`} role="status">
          {words.pane.status[connection]}
        </p>
      </header>
      <nav aria-label={words.pane.navigation}>
        {viewNames.map((known) => (
          <a key={known} href={addressOf(known)} aria-current={known === view ? "page" : undefined}>
            {words.pane.views[known]}
          </a>
        ))}
      </nav>
      <main ref={main}>
        {view === "find" ? (
          <FindView connection={connection} name={name} asked={asked} onAsk={setAsked} />
        ) : (
          <>
            <h2 tabIndex={-1}>{words[view].title}</h2>
            <Later key={view} load={laterViews[view]} given={{ connection }} />
          </>
        )}
      </main>
    </>
  );
}

function usePlace() {
  const [hash, setHash] = useState(location.hash);
  useEffect(() => {
    const follow = () => setHash(location.hash);
    addEventListener("hashchange", follow);
    return () => removeEventListener("hashchange", follow);
  }, []);
  return placeOf(hash);
}
