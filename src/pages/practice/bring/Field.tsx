import type { ComponentChildren } from "preact";

interface Props {
  /** Of the control inside. */
  readonly id: string;
  readonly label: string;
  /** Said below it; the control names it by `hintId(id)`. */
  readonly hint?: string;
  readonly children: ComponentChildren;
}

export const hintId = (id: string): string => `${id}-hint`;

/** A control of a form with its label, and what there is to know of it. */
export const Field = ({ id, label, hint, children }: Props) => (
  <div class="field">
    <label for={id}>{label}</label>
    {children}
    {hint !== undefined && (
      <p class="hint" id={hintId(id)}>
        {hint}
      </p>
    )}
  </div>
);
