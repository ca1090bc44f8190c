/** What unpacks and packs single parts, where something faster is at hand than the library. */
export interface Packing {
  /**
   * @param size - its length unpacked, as the file states it
   * @throws Error when it unpacks to more, or cannot be unpacked
   */
  readonly inflate: (packed: Uint8Array, size: number) => Uint8Array;
  /** @param level - 0 takes no time and saves none, 6 is the usual */
  readonly deflate: (bytes: Uint8Array, level: 0 | 6) => Uint8Array<ArrayBuffer>;
  /** The CRC-32. */
  readonly checksum: (bytes: Uint8Array) => number;
}
