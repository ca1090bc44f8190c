/** What came of opening protected sheets. */
export interface Opened {
  /** Those whose protection has a password. */
  readonly shut: ReadonlySet<Excel.Worksheet>;
  /** Protects the others again as they were. */
  readonly close: () => Promise<void>;
}

/** Lifts the protections that have no password. They must have been loaded. */
export async function openSheets(context: Excel.RequestContext, sheets: Iterable<Excel.Worksheet>): Promise<Opened> {
  const closed = [...sheets]
    .filter(({ protection }) => protection.protected)
    .map((sheet) => ({ sheet, options: sheet.protection.options }));
  const shut = await lift(
    context,
    closed.map(({ sheet }) => sheet),
  );
  const close = async (): Promise<void> => {
    const opened = closed.filter(({ sheet }) => !shut.has(sheet));
    for (const { sheet, options } of opened) sheet.protection.protect(options);
    if (opened.length > 0) await context.sync();
  };
  return { shut, close };
}

/** All at once; only where a password is in the way one by one. @returns those that stay shut */
async function lift(
  context: Excel.RequestContext,
  sheets: readonly Excel.Worksheet[],
): Promise<ReadonlySet<Excel.Worksheet>> {
  if (sheets.length === 0) return new Set();
  try {
    for (const { protection } of sheets) protection.unprotect();
    await context.sync();
    return new Set();
  } catch {
    if (sheets.length === 1) return new Set(sheets);
  }
  // Those before the one that failed are open.
  for (const { protection } of sheets) protection.load("protected");
  await context.sync();
  const shut = new Set<Excel.Worksheet>();
  for (const sheet of sheets.filter(({ protection }) => protection.protected))
    for (const one of await lift(context, [sheet])) shut.add(one);
  return shut;
}
