import type { AnyFunction } from "../../definition/defineFunction.ts";
import { storedFootName } from "../../workbook/formula/functionName.ts";

/** The UNO service under which Calc finds the functions; saved .ods files carry it, so it never changes. */
export const serviceName = "soundfold.Foot";

/** The UNO interface of the service, without its module. */
export const interfaceName = "XFoot";

/** The method of the interface that answers a worksheet function; saved .ods files carry it, so it never changes. */
export const methodName = (definition: AnyFunction): string => definition.name.toLowerCase();

/** How Excel stores a call in an .xlsx file. */
export const storedName = (definition: AnyFunction): string => storedFootName(definition.name);

// UNO identifiers take no underscore, and some plain words ("in", "any", "sequence") mean something to the parser.
export const argumentName = (index: number): string => `argument${index + 1}`;
