import type { Compiler } from "webpack";
import { singlePage } from "./singlePage.ts";

/** Adds the page that is one file to what webpack writes, made of all the rest. */
export class EmitSinglePage {
  apply(compiler: Compiler): void {
    const { Compilation, sources } = compiler.webpack;
    compiler.hooks.thisCompilation.tap("EmitSinglePage", (compilation) => {
      compilation.hooks.processAssets.tap(
        { name: "EmitSinglePage", stage: Compilation.PROCESS_ASSETS_STAGE_REPORT },
        (assets) => {
          const files = Object.entries(assets).map(([name, source]) => [name, source.source()] as const);
          compilation.emitAsset("soundfold.html", new sources.RawSource(singlePage(new Map(files))));
        },
      );
    });
  }
}
