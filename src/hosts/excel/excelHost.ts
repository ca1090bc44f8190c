/** What an Excel can do that changes how answers are given. */
export interface ExcelHost {
  /** Numbers may bring their own format, so that a date arrives as a date. */
  readonly formattedNumbers: boolean;
  /** How the workbook counts days. */
  readonly dateSystem: 1900 | 1904;
}

/** The part of the vendor's script that is used; typed here because its own types also describe all the other programs. */
export interface OfficeScript {
  readonly onReady: () => Promise<{ readonly host: unknown }>;
  readonly context?: {
    readonly requirements?: { readonly isSetSupported: (name: string, version: string) => boolean };
  };
}

export interface ExcelScript {
  readonly run: <T>(
    batch: (context: {
      readonly workbook: {
        readonly functions: {
          readonly date: (
            year: number,
            month: number,
            day: number,
          ) => {
            readonly value: unknown;
            readonly load: (names: string) => unknown;
          };
        };
      };
      readonly sync: () => Promise<unknown>;
    }) => Promise<T>,
  ) => Promise<T>;
}

const plain: ExcelHost = { formattedNumbers: false, dateSystem: 1900 };

/**
 * Asks the vendor's script what this Excel can do. Where the script is missing, blocked or slow, the plain answer
 * stands, which every Excel understands.
 *
 * @param patience - milliseconds until the plain answer stands
 */
export async function excelHost(
  office: OfficeScript | undefined,
  excel: () => ExcelScript | undefined,
  patience = 2000,
): Promise<ExcelHost> {
  if (office === undefined) return plain;
  const ready = await within(patience, office.onReady(), undefined);
  if (!ready?.host) return plain;
  return {
    // "Requirement set 1.4 includes custom functions integration with data types" (the vendor's page on custom functions requirement sets, read).
    formattedNumbers: office.context?.requirements?.isSetSupported("CustomFunctionsRuntime", "1.4") ?? false,
    dateSystem: await within(patience, askDateSystem(excel()), plain.dateSystem),
  };
}

// No property of a workbook tells its date system, but the sheet's own DATE counts in it: 1 Jan 1904 is 0 there, else 1462.
async function askDateSystem(excel: ExcelScript | undefined): Promise<1900 | 1904> {
  if (excel === undefined) return plain.dateSystem;
  return excel.run(async (context) => {
    const first = context.workbook.functions.date(1904, 1, 1);
    first.load("value");
    await context.sync();
    return first.value === 0 ? 1904 : 1900;
  });
}

async function within<T>(patience: number, work: Promise<T>, otherwise: T): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<T>((resolve) => {
    timer = setTimeout(() => resolve(otherwise), patience);
  });
  try {
    return await Promise.race([work.catch(() => otherwise), late]);
  } finally {
    clearTimeout(timer);
  }
}
