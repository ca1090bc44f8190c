interface VendorScript {
  readonly onReady: () => Promise<{ readonly host: unknown }>;
}

const patience = 3000;
const between = 100;

/**
 * Waits for the vendor's script, which is slow, blocked or absent in some places and then never answers.
 *
 * @returns where the page finds itself, in words
 */
export async function connection(): Promise<string> {
  const host = await Promise.race([hostOnceReady(), later(patience).then(() => undefined)]);
  if (host === undefined)
    return "The script that connects this page to Excel did not load. The list below works without it.";
  return host === null
    ? "This page is open in a browser. In Excel, type =FOOT. in a cell and the functions drop down."
    : "Connected to Excel. Type =FOOT. in a cell and the functions drop down.";
}

async function hostOnceReady(): Promise<unknown> {
  const page = globalThis as { Office?: VendorScript };
  for (let waited = 0; waited < patience; waited += between) {
    if (page.Office) return (await page.Office.onReady()).host ?? null;
    await later(between);
  }
  return undefined;
}

const later = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));
