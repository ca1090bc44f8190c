import { fileURLToPath } from "node:url";

/** The bundlers add a little code of their own to what they make, so their licences belong to it too. */
export const packagesOfTools = {
  webpack: fileURLToPath(import.meta.resolve("webpack")),
  esbuild: fileURLToPath(import.meta.resolve("esbuild")),
} as const;
