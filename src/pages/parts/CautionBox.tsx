import { words } from "../words.ts";

/** A caution, marked by words and a border, not by colour alone. */
export const CautionBox = ({ children }: { readonly children: string }) => (
  <p class="caution">
    <strong>{words.detail.takeCare}</strong> {children}
  </p>
);
