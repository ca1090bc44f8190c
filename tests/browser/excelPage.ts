import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import type { Browser, Page } from "playwright-core";
import type { ErrorCode } from "../../src/cells/cell.ts";

/** What the page is told about the Excel around it. */
export interface ExcelAround {
  /** The requirement sets this Excel has, e.g. "CustomFunctionsRuntime 1.4". */
  readonly sets: readonly string[];
  readonly dateSystem: 1900 | 1904;
}

/** One call as Excel sends it: the id in the metadata, and every parameter, null where one was left out. */
export interface Call {
  readonly id: string;
  readonly parameters: readonly unknown[];
  /** Bits of the vendor's message: 4 = errors are handed over, 8 = data types are. */
  readonly flags?: number;
}

/** What reached Excel: a value, or an error with its message. */
export type Arrived = { readonly value: unknown } | { readonly code: ErrorCode; readonly message: string };

export interface ExcelPage {
  readonly page: Page;
  readonly registered: () => Promise<readonly string[]>;
  readonly call: (calls: readonly Call[]) => Promise<readonly Arrived[]>;
  /** Addresses the page asked for and did not get. */
  readonly refused: readonly string[];
}

const address = "https://add-in.invalid";
const office = dirname(createRequire(import.meta.url).resolve("@microsoft/office-js/package.json"));

/** Opens the built functions in the vendor's own runtime, with a bridge in the place of Excel. */
export async function openExcel(
  browser: Pick<Browser, "newPage">,
  functions: Buffer,
  around?: ExcelAround,
): Promise<ExcelPage> {
  const page = await browser.newPage();
  const refused: string[] = [];
  const served: Readonly<Record<string, string | Buffer>> = {
    "/": `<!doctype html><script src="/custom-functions-runtime.js"></script><script src="/around.js"></script><script src="/functions.js"></script>`,
    "/custom-functions-runtime.js": readFileSync(join(office, "dist", "custom-functions-runtime.js")),
    "/around.js": around ? `(${standIn})(${JSON.stringify(around)})` : "",
    "/functions.js": functions,
  };
  await page.route("**/*", (route) => {
    const url = new URL(route.request().url());
    const body = url.origin === address ? served[url.pathname] : undefined;
    if (body === undefined) {
      refused.push(url.href);
      return route.abort();
    }
    return route.fulfill({ body, contentType: url.pathname === "/" ? "text/html" : "text/javascript" });
  });
  await page.addInitScript(bridge);
  await page.goto(`${address}/`);
  return {
    page,
    refused,
    registered: () =>
      page.evaluate(() => Object.keys((window as unknown as Vendor).CustomFunctions._association.mappings)),
    call: async (calls) => (await page.evaluate(send, calls)).map(arrived),
  };
}

interface Vendor {
  readonly CustomFunctions: { readonly _association: { readonly mappings: object } };
}

interface Action {
  readonly Id: number;
  readonly Name: string;
  readonly ArgumentInfo: { readonly Arguments: readonly unknown[] };
}

interface Bridge {
  onMessageFromHost: (text: string) => void;
  sendMessageToHost: (text: string) => void;
  /** Results by the id of the call: success, value, error code. */
  readonly results: Map<number, readonly [boolean, unknown, number | undefined]>;
  told: () => void;
  last: number;
}

// Runs in the page, before the vendor's script: Excel's end of the line.
function bridge(): void {
  const made: Bridge = {
    results: new Map(),
    last: 0,
    told: () => {},
    onMessageFromHost: () => {},
    sendMessageToHost(text) {
      const { id, message } = JSON.parse(text) as { id: number; message: { body: { Actions: Action[] } } };
      const { Actions } = message.body;
      for (const action of Actions) {
        if (action.Name !== "SetInvocationArrayResults") continue;
        for (const [call, ok, value, code] of action.ArgumentInfo.Arguments[0] as [number, boolean, unknown, unknown][])
          made.results.set(call, [ok, value, typeof code === "number" ? code : undefined]);
      }
      const body = { Results: Actions.map(({ Id }) => ({ ActionId: Id, Value: null })) };
      setTimeout(() => {
        made.onMessageFromHost(
          JSON.stringify({ id, type: 2, flags: 0, message: { statusCode: 200, headers: {}, body } }),
        );
        made.told();
      });
    },
  };
  (globalThis as unknown as { _richApiNativeBridge: Bridge })._richApiNativeBridge = made;
}

// Runs in the page, after the vendor's script: what Excel would have told it.
function standIn({ sets, dateSystem }: ExcelAround): void {
  const vendor = globalThis as unknown as Record<string, unknown>;
  const requirements = {
    isSetSupported: (name: string, version: string) =>
      name !== "CustomFunctionsRuntime" || sets.includes(`${name} ${version}`),
  };
  vendor.Office = { onReady: () => Promise.resolve({ host: "Excel", platform: "PC" }), context: { requirements } };
  const first = { value: dateSystem === 1904 ? 0 : 1462, load: () => {} };
  const context = { workbook: { functions: { date: () => first } }, sync: () => Promise.resolve() };
  vendor.Excel = { run: (batch: (given: typeof context) => unknown) => Promise.resolve(batch(context)) };
}

// Runs in the page: one message to the runtime with every call, then waits for every answer.
async function send(calls: readonly Call[]): Promise<readonly (readonly [boolean, unknown, number | undefined])[]> {
  const line = (globalThis as unknown as { _richApiNativeBridge: Bridge })._richApiNativeBridge;
  const entries = calls.map(({ id, parameters, flags = 12 }) => ({
    messageCategory: 1,
    messageType: 1000,
    message: [++line.last, id, parameters, "Sheet1!A1", flags],
  }));
  const ids = entries.map(({ message }) => message[0] as number);
  const all = new Promise<void>((resolve) => {
    line.told = () => {
      if (ids.every((id) => line.results.has(id))) resolve();
    };
  });
  line.onMessageFromHost(JSON.stringify({ type: 3, message: { entries } }));
  await all;
  return ids.map((id) => line.results.get(id) as readonly [boolean, unknown, number | undefined]);
}

// The numbers of the vendor's runtime (custom-functions-runtime.js, _getCustomFunctionResultErrorCodeFromErrorCode).
const codes: Readonly<Record<number, ErrorCode>> = { 1: "#N/A", 5: "#DIV/0!", 6: "#NUM!", 7: "#VALUE!", 8: "#NULL!" };

function arrived([ok, value, code]: readonly [boolean, unknown, number | undefined]): Arrived {
  if (ok) return { value };
  const shown = codes[code ?? Number.NaN];
  if (shown === undefined) throw new Error(`the runtime failed with ${code}: ${String(value)}`);
  return { code: shown, message: String(value) };
}
