/** What a build gave, before anything is written. */
export interface Built {
  /** Contents by path inside the folder or archive they belong to. */
  readonly files: ReadonlyMap<string, string | Uint8Array>;
  /** Absolute paths of the source files whose code is in them. */
  readonly modules: readonly string[];
}
