import { crc32, deflateSync } from "node:zlib";

/** Red, green, blue and opacity, each 0 to 1. */
export type Colour = readonly [red: number, green: number, blue: number, opacity: number];

const signature = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);

/**
 * A square picture as a PNG file (8 bits a channel, with opacity; PNG specification, ISO/IEC 15948, chunks IHDR, IDAT, IEND).
 *
 * @param size - pixels along a side
 * @param colourAt - the colour of the pixel in a column and a row, both counted from the top left
 */
export function png(size: number, colourAt: (column: number, row: number) => Colour): Uint8Array {
  const lines = new Uint8Array(size * (1 + size * 4));
  let at = 0;
  for (let row = 0; row < size; row++) {
    // Each line starts with its filter; 0 leaves it as it is.
    lines[at++] = 0;
    for (let column = 0; column < size; column++)
      for (const channel of colourAt(column, row)) lines[at++] = Math.round(channel * 255);
  }
  return Buffer.concat([
    signature,
    chunk("IHDR", header(size)),
    chunk("IDAT", deflateSync(lines, { level: 9 })),
    chunk("IEND", new Uint8Array()),
  ]);
}

function header(size: number): Uint8Array {
  const bytes = Buffer.alloc(13);
  bytes.writeUInt32BE(size, 0);
  bytes.writeUInt32BE(size, 4);
  bytes.set([8, 6, 0, 0, 0], 8);
  return bytes;
}

function chunk(name: string, data: Uint8Array): Uint8Array {
  const named = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, check]);
}
