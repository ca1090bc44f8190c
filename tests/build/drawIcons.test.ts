import { inflateSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { drawIcon, iconSizes } from "../../src/build/drawIcons.ts";

/** Takes a picture apart again: the chunks by name, and the colour of a pixel. */
function opened(file: Uint8Array) {
  const bytes = Buffer.from(file);
  const chunks = new Map<string, Buffer>();
  for (let at = 8; at < bytes.length; at += 12 + bytes.readUInt32BE(at))
    chunks.set(bytes.toString("latin1", at + 4, at + 8), bytes.subarray(at + 8, at + 8 + bytes.readUInt32BE(at)));
  const header = chunks.get("IHDR") as Buffer;
  const width = header.readUInt32BE(0);
  const lines = inflateSync(chunks.get("IDAT") as Buffer);
  const pixel = (x: number, y: number) => [...lines.subarray(y * (1 + width * 4) + 1 + x * 4).subarray(0, 4)];
  return {
    names: [...chunks.keys()],
    width,
    height: header.readUInt32BE(4),
    depth: [...header.subarray(8)],
    lines,
    pixel,
  };
}

describe.each(iconSizes)("the icon at %i pixels", (size) => {
  const icon = opened(drawIcon(size));
  const at = (x: number, y: number) => icon.pixel(Math.floor(x * size), Math.floor(y * size));

  it("is a PNG of that size with opacity", () => {
    expect(icon.names).toEqual(["IHDR", "IDAT", "IEND"]);
    expect([icon.width, icon.height]).toEqual([size, size]);
    expect(icon.depth).toEqual([8, 6, 0, 0, 0]);
    expect(icon.lines).toHaveLength(size * (1 + size * 4));
  });

  it("shows two claws with a gap between them on a sheet whose corner is folded", () => {
    const white = [255, 255, 255, 255];
    expect(at(0.3, 0.65)).toEqual(white);
    expect(at(0.69, 0.65)).toEqual(white);
    const [red = 255, green = 255, blue = 255] = at(0.5, 0.9);
    expect(green).toBeGreaterThan(red + 40);
    expect(green).toBeGreaterThan(blue + 20);
    expect(at(0.5, 0.65)[0]).toBeLessThan(160);
    expect(at(0.99, 0.01)[3]).toBe(0);
    expect(at(0.73, 0.2)[1]).toBeGreaterThan(150);
    expect(at(0.73, 0.2)[1]).toBeLessThan(230);
  });
});
