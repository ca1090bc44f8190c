import { practiceBundle } from "../practice/practiceBundle.ts";
import type { Built } from "./built.ts";
import { builtByWebpack } from "./builtByWebpack.ts";

/** The folder of the practice sheet, as `npm run build:practice` makes it. */
export const practiceSheet = (): Promise<Built> => builtByWebpack(practiceBundle);
