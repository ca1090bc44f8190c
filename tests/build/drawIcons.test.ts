import { decode } from "fast-png";
import { describe, expect, it } from "vitest";
import { drawIcon, iconSizes } from "../../src/build/drawIcons.ts";

describe.each(iconSizes)("the icon at %i pixels", (size) => {
  const icon = decode(drawIcon(size));
  const at = (x: number, y: number) => [
    ...icon.data.subarray((Math.floor(y * size) * size + Math.floor(x * size)) * 4).subarray(0, 4),
  ];

  it("is a PNG of that size with opacity", () => {
    expect([icon.width, icon.height, icon.channels, icon.depth]).toEqual([size, size, 4, 8]);
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
