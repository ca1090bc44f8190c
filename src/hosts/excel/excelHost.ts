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
 * stands, which every Excel understands. What Excel says later still is put into the same object.
 *
 * @param patience - milliseconds until the plain answer stands
 */
export async function excelHost(
  office: OfficeScript | undefined,
  excel: () => ExcelScript | undefined,
  patience = 2000,
): Promise<ExcelHost> {
  const host = { ...plain };
  if (office === undefined) return host;
  const ready = office.onReady().then(({ host: program }) => {
    // "Requirement set 1.4 includes custom functions integration with data types" (the vendor's page on custom functions requirement sets, read).
    host.formattedNumbers =
      Boolean(program) && (office.context?.requirements?.isSetSupported("CustomFunctionsRuntime", "1.4") ?? false);
    return program;
  });
  const counted = ready
    .then(async (program) => {
      if (program) host.dateSystem = await askDateSystem(excel());
    })
    .catch(() => undefined);
  if (await inTime(patience, ready)) await inTime(patience, counted);
  return host;
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

/** @returns whether the work came to an end, be it a failure, before patience did */
async function inTime(patience: number, work: Promise<unknown>): Promise<boolean> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(() => resolve(false), patience);
  });
  const ended = work.then(
    () => true,
    () => true,
  );
  try {
    return await Promise.race([ended, late]);
  } finally {
    clearTimeout(timer);
  }
}
