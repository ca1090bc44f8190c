import type { Selected } from "./grid/gridEvents.ts";
import type { ArgumentHint } from "./help/argumentHint.ts";
import { sheetWords } from "./sheetWords.ts";

interface Props {
  readonly selected: Selected | undefined;
  /** What is to be typed where the caret stands in a formula; comes before all else. */
  readonly typing: ArgumentHint | undefined;
  readonly calculating: boolean;
  readonly onGo: (place: string) => void;
}

/** The selected cell in words: the sheet itself is a picture that no screen reader can read. */
export const StatusLine = ({ selected, typing, calculating, onGo }: Props) => (
  <div class="status">
    <p class="said" role="status" aria-label={sheetWords.statusLabel}>
      {typing && <ArgumentWords hint={typing} />}
      {selected && !typing && (
        <>
          <strong>
            {selected.sheet} {selected.address}
          </strong>{" "}
          {selected.shown === "" ? sheetWords.empty : selected.shown}
          {selected.message !== undefined && <span class="fault"> {selected.message}</span>}
          {selected.wanted !== undefined && <span class="told"> {selected.wanted}</span>}
          {selected.choices.length > 0 && <span class="told keys"> {sheetWords.choicesKey}</span>}
          {selected.formula !== undefined && <code>{selected.formula}</code>}
        </>
      )}
      {calculating && <span class="told"> {sheetWords.calculating}</span>}
    </p>
    {selected?.link && <LinkButton link={selected.link} onGo={onGo} />}
  </div>
);

const ArgumentWords = ({ hint: { functionName, argument, sentence, example } }: { readonly hint: ArgumentHint }) => (
  <>
    <strong>{argument === "" ? functionName : sheetWords.argument(functionName, argument)}</strong> {sentence} {example}
  </>
);

const LinkButton = ({ link, onGo }: { readonly link: NonNullable<Selected["link"]>; readonly onGo: Props["onGo"] }) =>
  "place" in link ? (
    <button type="button" onClick={() => onGo(link.place)}>
      {sheetWords.go(link.place.replaceAll("'", ""))}
    </button>
  ) : (
    <a href={link.address} target="_blank" rel="noreferrer">
      {sheetWords.follow} {link.address}
    </a>
  );
