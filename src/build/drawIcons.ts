import { encode } from "fast-png";

/** Red, green, blue and opacity, each 0 to 1. */
type Colour = readonly [red: number, green: number, blue: number, opacity: number];

/** The sizes the manifest and the ribbon ask for. */
export const iconSizes = [16, 32, 64, 80] as const;

const meadow: Colour = [0.16, 0.4, 0.25, 1];
const fold: Colour = [0.58, 0.77, 0.55, 1];
const print: Colour = [1, 1, 1, 1];
const nothing: Colour = [0, 0, 0, 0];

// Everything is drawn in a square of side 1 with its origin at the top left.
const corner = 0.18;
const folded = 0.3;

/**
 * The project's icon, a sheep's foot-print on a sheet with a folded corner, drawn for one size.
 *
 * @param size - pixels along a side
 * @returns a PNG file
 */
export function drawIcon(size: number): Uint8Array {
  const places = Array.from({ length: size }, (_, index) => index);
  const data = places.flatMap((row) => places.flatMap((column) => blend(size, column, row)));
  return encode({
    width: size,
    height: size,
    channels: 4,
    data: Uint8Array.from(data, (part) => Math.round(part * 255)),
  });
}

// Edges are smoothed by looking at a grid of points inside each pixel.
const points = 8;

function blend(size: number, column: number, row: number): Colour {
  let [red, green, blue, opacity] = [0, 0, 0, 0];
  for (let i = 0; i < points; i++) {
    for (let j = 0; j < points; j++) {
      const colour = colourOf((column + (i + 0.5) / points) / size, (row + (j + 0.5) / points) / size);
      red += colour[0] * colour[3];
      green += colour[1] * colour[3];
      blue += colour[2] * colour[3];
      opacity += colour[3];
    }
  }
  return opacity === 0 ? nothing : [red / opacity, green / opacity, blue / opacity, opacity / points ** 2];
}

function colourOf(x: number, y: number): Colour {
  if (x - y > 1 - folded || !onSheet(x, y)) return nothing;
  if (x > 1 - folded && y < folded) return fold;
  return onClaw(x, y) || onClaw(1 - x, y) ? print : meadow;
}

function onSheet(x: number, y: number): boolean {
  const beyond = (index: number) => Math.max(corner - index, index - (1 - corner), 0);
  return Math.hypot(beyond(x), beyond(y)) <= corner;
}

// The left claw: narrow at the tip, broad at the heel, its tip leaning towards the other claw.
const tip = { x: 0.385, y: 0.18 };
const heel = { x: 0.29, y: 0.86 };
const breadth = 0.235;

function onClaw(x: number, y: number): boolean {
  const [alongX, alongY] = [heel.x - tip.x, heel.y - tip.y];
  const length = Math.hypot(alongX, alongY);
  const along = ((x - tip.x) * alongX + (y - tip.y) * alongY) / length ** 2;
  const aside = ((x - tip.x) * alongY - (y - tip.y) * alongX) / length;
  if (along <= 0 || along >= 1) return false;
  return Math.abs(aside) <= breadth * along ** 0.65 * (1 - along) ** 0.35;
}
