/** Where the page finds itself. */
export type Connection = "waiting" | "excel" | "browser" | "blocked";

const patience = 2500;

/**
 * Waits for the vendor's script, which is slow, blocked or absent in some places and then never answers.
 *
 * @param page - where the script leaves its name
 * @returns where the page finds itself, within 2.5 seconds
 */
export async function connection(page: { readonly Office?: OfficeOnReady }): Promise<Exclude<Connection, "waiting">> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<"blocked">((resolve) => {
    timer = setTimeout(() => resolve("blocked"), patience);
  });
  try {
    return await Promise.race([answer(page), late]);
  } finally {
    clearTimeout(timer);
  }
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
