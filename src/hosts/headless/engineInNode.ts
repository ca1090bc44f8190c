import { catalogue } from "../../../functions/catalogue.ts";
import type { Engine } from "../../workbook/engine.ts";
import { type Clock, localClock } from "../localClock.ts";
import { createEngine } from "./createEngine.ts";
import { univerInNode } from "./univerInNode.ts";

/** The embedded engine with every worksheet function, for the command line and the tests. */
export const engineInNode = (clock: Clock = localClock): Engine => createEngine(catalogue, univerInNode(), clock);
