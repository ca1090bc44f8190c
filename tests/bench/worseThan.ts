/**
 * The figures of a table that are larger than those of the same row and column before: ratios by more than a tenth, times
 * and sizes, which depend on what else the machine does, by more than half.
 *
 * @param before - a section of the page in Markdown
 * @param now - the same section, written anew
 * @returns a line a figure
 */
export function worseThan(before: string, now: string): readonly string[] {
  const old = new Map(cellsOf(before).map((cell) => [cell.name, cell]));
  return cellsOf(now).flatMap(({ name, text, size, isRatio }) => {
    const was = old.get(name);
    if (was === undefined || size === undefined || was.size === undefined) return [];
    return size > was.size * (isRatio ? 1.1 : 1.5) ? [`${name} ${text}, before ${was.text}`] : [];
  });
}

interface Figure {
  /** Row and column. */
  readonly name: string;
  readonly text: string;
  /** In one unit for all times, and one for all sizes; undefined for what is no figure. */
  readonly size: number | undefined;
  readonly isRatio: boolean;
}

function cellsOf(section: string): readonly Figure[] {
  const [headings = [], , ...rows] = section
    .split("\n")
    .filter((line) => line.startsWith("| "))
    .map((line) => line.slice(2, -2).split(" | "));
  return rows.flatMap((cells) =>
    cells.slice(1).map((text, at) => {
      const heading = headings[at + 1] ?? "";
      const isRatio = /= 1|ratio|exponent/.test(heading);
      return { name: `${cells[0]}, ${heading},`, text, size: sizeOf(text), isRatio };
    }),
  );
}

const units: Readonly<Record<string, number>> = { "": 1, µs: 1, ms: 1e3, s: 1e6, B: 1, kB: 1e3, MB: 1e6 };

function sizeOf(text: string): number | undefined {
  const [, digits, unit = ""] = /^(\d[\d.]*) ?(µs|ms|s|kB|MB|)$/.exec(text) ?? [];
  return digits === undefined ? undefined : Number(digits) * (units[unit] as number);
}
