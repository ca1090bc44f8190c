import { catalogue } from "../../../functions/catalogue.ts";
import { type ExcelScript, excelHost, type OfficeScript } from "./excelHost.ts";
import { type Runtime, register } from "./register.ts";

// What the bundle of functions does when Excel loads it. In a plain browser, or with the vendor's script blocked, the
// page around it is still of use, so nothing is thrown.
const vendor = globalThis as { CustomFunctions?: Runtime; Office?: OfficeScript; Excel?: ExcelScript };

if (vendor.CustomFunctions) {
  register(
    catalogue,
    vendor.CustomFunctions,
    excelHost(vendor.Office, () => vendor.Excel),
  );
}
