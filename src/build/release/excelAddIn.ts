import { addInBundles } from "../webpack.config.ts";
import type { Built } from "./built.ts";
import { builtByWebpack } from "./builtByWebpack.ts";

/** The folder of the Excel add-in for a web address, as `npm run build` makes it. */
export const excelAddIn = (baseUrl: string): Promise<Built> =>
  builtByWebpack((folder) => addInBundles(baseUrl, folder));
