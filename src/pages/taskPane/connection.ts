/** Where the page finds itself. */
export type Connection = "waiting" | "excel" | "browser" | "blocked";

const patience = 2500;

/**
 * Waits for the vendor's script, which is slow, blocked or absent in some places and then never answers.
 *
 * @param page - where the script leaves its name
 * @param tell - told where the page finds itself: within 2.5 seconds, and again when the answer comes later
 */
export function followConnection(page: { readonly Office?: OfficeOnReady }, tell: (found: Connection) => void): void {
  const late = setTimeout(() => tell("blocked"), patience);
  void answer(page)
    .catch(() => "blocked" as const)
    .then((found) => {
      clearTimeout(late);
      tell(found);
    });
}

interface OfficeOnReady {
  readonly onReady: () => Promise<{ readonly host: unknown }>;
}

async function answer(page: { readonly Office?: OfficeOnReady }): Promise<"excel" | "browser" | "blocked"> {
  // Scripts put off until the page is there have run, or failed, by then.
  if (document.readyState !== "complete" && page.Office === undefined)
    await new Promise((resolve) => document.addEventListener("DOMContentLoaded", resolve, { once: true }));
  if (page.Office === undefined) return "blocked";
  const { host } = await page.Office.onReady();
  return host === "Excel" ? "excel" : "browser";
}
