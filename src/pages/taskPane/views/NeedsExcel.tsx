import { words } from "../../words.ts";
import type { Connection } from "../connection.ts";

/** Says why a part does not work where there is no spreadsheet. */
export const NeedsExcel = ({ connection }: { readonly connection: Exclude<Connection, "excel"> }) => (
  <p class="needs">{words.pane.needs[connection]}</p>
);
