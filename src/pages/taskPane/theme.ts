/** The part of the vendor's script that tells the look of the program. */
interface Themed {
  readonly officeTheme?: { readonly bodyBackgroundColor?: string };
}

/**
 * The look to wear beside a program: dark where its ground is.
 *
 * @returns undefined where the program does not say, as in a browser
 * @see relative luminance as in WCAG 2.2, of which 0.18 is as far from black as from white in contrast
 * @example
 * themeOf({ officeTheme: { bodyBackgroundColor: "#262626" } }) // → "dark"
 */
export function themeOf({ officeTheme }: Themed): "dark" | "light" | undefined {
  const parts = /^#([\da-f]{2})([\da-f]{2})([\da-f]{2})/i.exec(officeTheme?.bodyBackgroundColor ?? "");
  if (!parts) return undefined;
  const [red = 0, green = 0, blue = 0] = parts.slice(1).map((part) => linear(Number.parseInt(part, 16) / 255));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue < 0.18 ? "dark" : "light";
}

const linear = (part: number): number => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);

/** Wears the program's look now and whenever the pane is turned to again; programs tell of a change late or not at all. */
export function wearTheme(root: HTMLElement, context: () => Themed): () => void {
  const wear = (): void => {
    const theme = themeOf(context());
    if (theme === undefined) delete root.dataset.theme;
    else root.dataset.theme = theme;
  };
  wear();
  addEventListener("focus", wear);
  return () => removeEventListener("focus", wear);
}
