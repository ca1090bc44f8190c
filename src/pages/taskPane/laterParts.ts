import type { ComponentType } from "preact";
import type { FormulaForm } from "../parts/FormulaForm.tsx";
import type { Connection } from "./connection.ts";
import type { ViewName } from "./place.ts";

/** A part of the page whose code is a file of its own, and not in the way of the first look at the functions. */
export type Loading<Props> = () => Promise<ComponentType<Props>>;

type LaterView = Loading<{ readonly connection: Connection }>;

/** The views behind the first one. */
export const laterViews: Readonly<Record<Exclude<ViewName, "find">, LaterView>> = {
  explain: async () => (await import(/* webpackChunkName: "explain" */ "./views/ExplainView.tsx")).ExplainView,
  records: async () => (await import(/* webpackChunkName: "records" */ "./views/RecordsView.tsx")).RecordsView,
  workbooks: async () => (await import(/* webpackChunkName: "workbooks" */ "./views/WorkbooksView.tsx")).WorkbooksView,
  health: async () => (await import(/* webpackChunkName: "health" */ "./views/HealthView.tsx")).HealthView,
  cautions: async () => (await import(/* webpackChunkName: "cautions" */ "./views/CautionsView.tsx")).CautionsView,
};

export const laterForm: Loading<Parameters<typeof FormulaForm>[0]> = async () =>
  (await import(/* webpackChunkName: "formula" */ "../parts/FormulaForm.tsx")).FormulaForm;

/**
 * Fetches every part ahead once the page itself is there: a pane stays open for days, and by then its files may have
 * been replaced by those of another version.
 */
export function fetchAhead(): void {
  // A part that fails here is fetched again, and its failure said, when it is asked for.
  const fetchAll = () => {
    for (const load of [...Object.values(laterViews), laterForm]) void load().catch(() => undefined);
  };
  if (document.readyState === "complete") fetchAll();
  else addEventListener("load", fetchAll, { once: true });
}
