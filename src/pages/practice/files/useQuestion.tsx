import type { JSX } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";

interface Question<Answer extends string> {
  readonly text: string;
  /** What can be answered, by what is then done; the first is what most people want. */
  readonly answers: readonly (readonly [Answer, string])[];
}

/**
 * Asks before work is lost.
 *
 * @returns the asking, which answers `undefined` when the person goes back, and the box to be put into the page
 */
export function useQuestion<Answer extends string>(
  back: string,
): {
  readonly ask: (question: Question<Answer>) => Promise<Answer | undefined>;
  readonly box: JSX.Element | null;
} {
  const dialog = useRef<HTMLDialogElement>(null);
  const [question, setQuestion] = useState<Question<Answer>>();
  const settle = useRef<(answer: Answer | undefined) => void>(() => {});
  const cameFrom = useRef<Element | null>(null);
  const answer = (given: Answer | undefined): void => {
    setQuestion(undefined);
    settle.current(given);
    // Once the box is gone. Whoever goes on is led on by what is then opened.
    if (given === undefined) setTimeout(() => (cameFrom.current as HTMLElement | null)?.focus());
  };
  // Before it is painted, or a key pressed at its sight would go to the sheet below.
  useLayoutEffect(() => {
    if (question) dialog.current?.showModal();
  }, [question]);
  return {
    ask: (asked) =>
      new Promise((resolve) => {
        settle.current(undefined);
        settle.current = resolve;
        cameFrom.current = document.activeElement;
        setQuestion(asked);
      }),
    box: question ? (
      <dialog
        ref={dialog}
        class="question"
        aria-labelledby="question"
        onCancel={(event) => {
          event.preventDefault();
          answer(undefined);
        }}
        // A browser may close it without asking when Escape is pressed twice.
        onClose={() => answer(undefined)}
      >
        <p id="question">{question.text}</p>
        <div class="buttons">
          {question.answers.map(([given, text], index) => (
            <button key={given} type="button" class={index === 0 ? "main" : ""} onClick={() => answer(given)}>
              {text}
            </button>
          ))}
          <button type="button" onClick={() => answer(undefined)}>
            {back}
          </button>
        </div>
      </dialog>
    ) : null,
  };
}
