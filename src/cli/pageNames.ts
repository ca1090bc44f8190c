const longest = 60;

/**
 * The names of files for pages of so many flocks: what no system takes in a name becomes a dash, and no two are the same
 * whatever their capitals.
 *
 * @example
 * pageNames(["Hill", "hill", "Low/Moor"]) // → ["Flock page Hill.xlsx", "Flock page hill (2).xlsx", "Flock page Low-Moor.xlsx"]
 */
export function pageNames(flocks: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return flocks.map((flock) => {
    const plain = [...flock.replace(/[\p{C}<>:"/\\|?*]/gu, "-")].slice(0, longest).join("").trim();
    for (let turn = 1; ; turn++) {
      const name = `Flock page ${plain}${turn === 1 ? "" : ` (${turn})`}.xlsx`;
      const key = name.normalize("NFC").toLowerCase();
      if (taken.has(key)) continue;
      taken.add(key);
      return name;
    }
  });
}
