import { catalogue } from "../../../functions/catalogue.ts";
import type { Engine } from "../../workbook/engine.ts";
import { createEngine } from "./createEngine.ts";
import { univerInNode } from "./univerInNode.ts";

/** The embedded engine with every worksheet function, for the command line and the tests. */
export const engineInNode = (): Engine => createEngine(catalogue, univerInNode());
