import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Box } from "./grid/cellBox.ts";
import { sheetWords } from "./sheetWords.ts";

interface Props {
  /** The cell, with its address. */
  readonly address: string;
  readonly choices: readonly string[];
  /** Where the cell is, once that is known: until then the list that is asked for waits. */
  readonly box: Box | undefined;
  readonly onChoose: (choice: string) => void;
  /** Lets the keys go back to the cell. */
  readonly onClose: () => void;
}

/** What can be picked for the selected cell: a button at its edge, and the list it opens. Alt+Down opens it too. */
export function Choices({ address, choices, box, onChoose, onClose }: Props) {
  const [open, setOpen] = useState(false);
  const [at, setAt] = useState(0);
  const list = useRef<HTMLDivElement>(null);
  // Whoever reads of the list may ask for it at once.
  useLayoutEffect(() => {
    const follow = (event: KeyboardEvent) => {
      if (event.key !== "ArrowDown" || !event.altKey || event.ctrlKey || event.metaKey) return;
      event.preventDefault();
      event.stopPropagation();
      setAt(0);
      setOpen(true);
    };
    addEventListener("keydown", follow, { capture: true });
    return () => removeEventListener("keydown", follow, { capture: true });
  }, []);
  const isInView = open && box !== undefined;
  // At once: the next key is meant for the list.
  useLayoutEffect(() => {
    if (isInView) list.current?.focus();
  }, [isInView]);
  useEffect(() => {
    list.current?.children[at]?.scrollIntoView({ block: "nearest" });
  }, [at]);

  const close = (): void => {
    setOpen(false);
    onClose();
  };
  const choose = (choice: string): void => {
    onChoose(choice);
    close();
  };
  const follow = (event: KeyboardEvent): void => {
    // What is typed here is none of the spreadsheet's business.
    event.stopPropagation();
    const to = movedTo(event.key, at, choices);
    if (event.key === "Tab" || event.key === "Escape") close();
    else if (event.key === "Enter" || event.key === " ") choose(choices[at] ?? "");
    else if (to === undefined) return;
    else setAt(to);
    event.preventDefault();
  };
  if (!box) return null;
  const below = box.top + box.height;
  const upwards = below + 160 > innerHeight;
  return (
    <>
      <button
        type="button"
        class="pick"
        // The keys reach the list from the cell itself.
        tabIndex={-1}
        aria-label={sheetWords.choicesFor(address)}
        aria-haspopup="listbox"
        aria-expanded={open}
        style={{ left: `${box.left + box.width}px`, top: `${box.top}px`, height: `${box.height}px` }}
        onMouseDown={(event) => event.preventDefault()}
        onClick={() => {
          setAt(0);
          setOpen(!open);
        }}
      >
        <span aria-hidden="true">▾</span>
      </button>
      {open && (
        <div
          ref={list}
          class="choices"
          role="listbox"
          tabIndex={0}
          aria-label={sheetWords.choicesFor(address)}
          aria-activedescendant={`choice${at}`}
          style={{
            left: `${box.left}px`,
            minWidth: `${box.width}px`,
            ...(upwards ? { bottom: `${innerHeight - box.top}px` } : { top: `${below}px` }),
          }}
          onKeyDown={follow}
          onBlur={() => setOpen(false)}
        >
          {choices.map((choice, index) => (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the keys go to the list, which has the focus
            <div
              key={index}
              id={`choice${index}`}
              role="option"
              tabIndex={-1}
              aria-selected={index === at}
              onMouseDown={(event) => event.preventDefault()}
              onClick={() => choose(choice)}
            >
              {choice}
            </div>
          ))}
        </div>
      )}
    </>
  );
}

/** Where a key leads in the list, if anywhere; a letter leads to the next choice that begins with it. */
function movedTo(key: string, at: number, choices: readonly string[]): number | undefined {
  const last = choices.length - 1;
  if (key === "ArrowDown") return Math.min(last, at + 1);
  if (key === "ArrowUp") return Math.max(0, at - 1);
  if (key === "Home") return 0;
  if (key === "End") return last;
  if (key.length !== 1) return undefined;
  const begins = (choice: string) => choice.toLowerCase().startsWith(key.toLowerCase());
  const after = choices.findIndex((choice, index) => index > at && begins(choice));
  return after >= 0 ? after : Math.max(at, choices.findIndex(begins));
}
