import type { Compiler } from "webpack";

/** Adds files that are not bundled to what webpack writes. */
export class EmitFiles {
  readonly #files: () => ReadonlyMap<string, string | Uint8Array>;

  constructor(files: () => ReadonlyMap<string, string | Uint8Array>) {
    this.#files = files;
  }

  apply(compiler: Compiler): void {
    const { Compilation, sources } = compiler.webpack;
    compiler.hooks.thisCompilation.tap("EmitFiles", (compilation) => {
      compilation.hooks.processAssets.tap(
        { name: "EmitFiles", stage: Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL },
        () => {
          for (const [name, content] of this.#files())
            compilation.emitAsset(
              name,
              new sources.RawSource(typeof content === "string" ? content : Buffer.from(content)),
            );
        },
      );
    });
  }
}
