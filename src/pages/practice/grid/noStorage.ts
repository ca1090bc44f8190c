/** Stands in the page for the browser's storage, which the embedded spreadsheet would use: nothing is kept. */
export default {
  getItem: async () => null,
  setItem: async (_: string, value: unknown) => value,
  removeItem: async () => undefined,
  clear: async () => undefined,
  key: async () => null,
  keys: async () => [],
  iterate: async () => undefined,
};
