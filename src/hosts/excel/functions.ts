import { catalogue } from "../../../functions/catalogue.ts";
import { type ExcelScript, excelHost, type OfficeScript } from "./excelHost.ts";
import { type Refusal, refusal } from "./refusal.ts";
import { type Runtime, register } from "./register.ts";

// What the bundle of functions does when Excel loads it. In a plain browser, or with the vendor's script blocked, the
// page around it is still of use, so nothing is thrown.
const vendor = globalThis as {
  CustomFunctions?: Runtime;
  Office?: OfficeScript;
  Excel?: ExcelScript;
  soundfoldRefusal?: Refusal;
};

// The pane stands in the same page and has no computation of its own.
vendor.soundfoldRefusal = refusal(catalogue);

if (vendor.CustomFunctions) {
  register(
    catalogue,
    vendor.CustomFunctions,
    excelHost(vendor.Office, () => vendor.Excel),
  );
}
