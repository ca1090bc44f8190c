type Attributes = Readonly<Record<string, string>>;

interface ElementNames {
  /** The name of an element; each must be told of in turn, with the place just after its opening tag. */
  readonly open: (written: string, attributes: Attributes, end: number) => string;
  readonly close: (written: string) => string;
}

/**
 * The names of a part's elements: those of its own namespace, which is that of its root, without a prefix, since writers
 * differ in the prefix they choose; those of another as they are written, or after a bare colon where they have no
 * prefix, so that `<x15:workbookPr>` is not taken for a `<workbookPr>`.
 */
export function elementNames(text: string): ElementNames {
  // By prefix, the namespace in force last. A prefix that nobody declares stands for itself.
  const bound = new Map<string, string[]>();
  const declared: { readonly depth: number; readonly prefixes: readonly string[] }[] = [];
  let names = new Map<string, string>();
  let own: string | undefined;
  let depth = 0;
  let nextDeclaration = placeOf("xmlns", text, 0);

  const nameOf = (written: string): string => {
    const known = names.get(written);
    if (known !== undefined) return known;
    const colon = written.indexOf(":");
    const prefix = written.slice(0, Math.max(colon, 0));
    const namespace = bound.get(prefix)?.at(-1) ?? prefix;
    own ??= namespace;
    const name = namespace === own ? written.slice(colon + 1) : colon < 0 ? `:${written}` : written;
    names.set(written, name);
    return name;
  };

  const declare = (key: string, namespace: string): string => {
    const prefix = key.slice("xmlns:".length);
    const namespaces = bound.get(prefix);
    if (namespaces) namespaces.push(namespace);
    else bound.set(prefix, [namespace]);
    return prefix;
  };

  return {
    open(written, attributes, end) {
      depth += 1;
      // Going through the attributes of every cell would cost as much as a fifth of reading it.
      if (nextDeclaration < end) {
        nextDeclaration = placeOf("xmlns", text, end);
        const prefixes = Object.keys(attributes)
          .filter(isDeclaration)
          .map((key) => declare(key, attributes[key] ?? ""));
        declared.push({ depth, prefixes });
        names = new Map();
      }
      return nameOf(written);
    },
    close(written) {
      const name = nameOf(written);
      if (declared.at(-1)?.depth === depth) {
        for (const prefix of declared.pop()?.prefixes ?? []) bound.get(prefix)?.pop();
        names = new Map();
      }
      depth -= 1;
      return name;
    },
  };
}

const placeOf = (what: string, text: string, from: number): number => {
  const index = text.indexOf(what, from);
  return index < 0 ? Number.POSITIVE_INFINITY : index;
};

const isDeclaration = (key: string): boolean => key === "xmlns" || key.startsWith("xmlns:");
