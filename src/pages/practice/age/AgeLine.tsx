import { ageWords } from "./ageWords.ts";

interface Props {
  readonly old: keyof typeof ageWords.old | undefined;
  readonly busy: boolean;
  readonly onWorkOut: () => void;
}

/** Stands above the sheet for as long as it shows answers that may be old, with the way to new ones. */
export const AgeLine = ({ old, busy, onWorkOut }: Props) => (
  <div role="status">
    {old && (
      <p class="age">
        {ageWords.old[old]}{" "}
        <button type="button" aria-disabled={busy} onClick={onWorkOut}>
          {ageWords.workOut}
        </button>
      </p>
    )}
  </div>
);
