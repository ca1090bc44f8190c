import type { Injector } from "@univerjs/core";
import { IEditorBridgeService } from "@univerjs/preset-sheets-core";

/** Whether a cell is open for typing: then the keys are its own, and what changes the sheet takes what was typed so far. */
export const isTypedInto = (injector: Injector): boolean => injector.get(IEditorBridgeService).isVisible().visible;
